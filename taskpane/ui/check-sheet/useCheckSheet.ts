/** The state of Check this sheet: looked at anew whenever the workbook has changed, so that the count falls. */
import { useCallback, useEffect, useRef, useState } from "react";
import { checkSheet, type CheckSurvey } from "../../actions/check-sheet";
import type { Wish } from "../../actions/list/interface";
import { ownList } from "../../texts/own-list";
import type { Overview, Place, Workbook } from "../../workbook/port";
import { useReveal } from "../parts/useReveal";

export interface CheckState {
  readonly survey: CheckSurvey | null;
  /** Why the sheet could not be read. */
  readonly fault: string | null;
  look(wish?: Wish): Promise<void>;
  reveal(place: Place): void;
}

export function useCheckSheet(
  workbook: Workbook | null,
  overview: Overview | null,
  today: number,
  isShown: boolean,
): CheckState {
  const reveal = useReveal(workbook);
  const [survey, setSurvey] = useState<CheckSurvey | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const looks = useRef(0);
  const wished = useRef<Wish>({});

  const look = useCallback(
    async (wish: Wish) => {
      if (!workbook) return;
      const mine = ++looks.current;
      wished.current = wish;
      try {
        const fresh = await checkSheet(workbook, { today, ...wish });
        if (mine !== looks.current) return;
        setFault(null);
        setSurvey(fresh);
      } catch (error) {
        if (mine === looks.current) setFault(ownList.lookFailed(String(error)));
      }
    },
    [today, workbook],
  );

  /* A cell that is put right tells of itself; going to a cell does so too, and finds the same list. */
  useEffect(() => {
    if (isShown && overview) void look(wished.current);
  }, [isShown, look, overview]);

  const list = survey?.list?.key;
  return {
    survey,
    fault,
    look: (wish) => look(wish ?? {}),
    reveal: (place) => {
      if (list !== undefined && wished.current.list === undefined) wished.current = { list };
      reveal(place);
    },
  };
}
