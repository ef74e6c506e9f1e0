/** The state of Mend: what was found, what was chosen, and what became of it. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { Problem } from "../../actions/action";
import type { Wish } from "../../actions/list/interface";
import { choicesFor, mend, readingOf } from "../../actions/mend";
import type { MendChoices, MendPlan, MendReading, MendSurvey } from "../../actions/mend/interface";
import { mend as words } from "../../texts/mend";
import { ownList } from "../../texts/own-list";
import { contains } from "../../workbook/area";
import type { Overview, Place, Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { useApply, type Applying } from "../parts/useApply";
import { useReveal } from "../parts/useReveal";

export interface MendState {
  readonly applying: Applying;
  readonly survey: MendSurvey | null;
  readonly choices: MendChoices | null;
  readonly reading: MendReading | null;
  readonly plan: MendPlan | Problem | null;
  /** Why the sheet could not be read. */
  readonly fault: string | null;
  choose(change: Partial<MendChoices>): void;
  /** Another column, or the same one as something else: what was said of the one before is not said of it. */
  chooseColumn(what: MendChoices["what"]): void;
  look(wish?: Wish): Promise<void>;
  carryOut(): Promise<void>;
  backToChoices(): void;
  reveal(place: Place): void;
}

/** What makes a look at the sheet out of date; of the selection only in which list it stands. */
function signatureOf({ title, sheets, tables, selection }: Overview, withSelection: boolean): string {
  if (!selection || !withSelection) return JSON.stringify([title, sheets, tables]);
  const { sheet, area } = selection;
  const table = tables.find((one) => one.sheet === sheet && contains(one.area, area.top, area.left));
  return JSON.stringify([title, sheets, tables, sheet, table?.name]);
}

/** A list is the same as long as its columns are; what was said of it still holds. */
const identityOf = ({ list }: MendSurvey): string =>
  JSON.stringify([list?.key, list?.columns.map(({ header }) => header)]);

interface Found {
  readonly survey: MendSurvey;
  readonly choices: MendChoices;
  /** Somebody has chosen something: the selection counts no more. */
  readonly isTouched: boolean;
}

/** @param isKept what was chosen is to stay, as long as it is about the same list */
function afterLook(before: Found | null, fresh: MendSurvey, isKept: boolean): Found {
  return before && isKept && identityOf(before.survey) === identityOf(fresh)
    ? { ...before, survey: fresh }
    : { survey: fresh, choices: fresh.proposal, isTouched: false };
}

export function useMend(
  workbook: Workbook | null,
  overview: Overview | null,
  today: number,
  isShown: boolean,
): MendState {
  const announce = useAnnounce();
  const applying = useApply(workbook);
  const reveal = useReveal(workbook);
  const [found, setFound] = useState<Found | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const seen = useRef<string | null>(null);
  const looks = useRef(0);
  const wished = useRef<Wish>({});

  const look = useCallback(
    async (wish: Wish, keep: boolean) => {
      if (!workbook) return;
      const mine = ++looks.current;
      wished.current = wish;
      try {
        const fresh = await mend.survey(workbook, { today, ...wish });
        if (mine !== looks.current) return;
        setFault(null);
        setFound((before) => afterLook(before, fresh, keep));
      } catch (error) {
        if (mine === looks.current) setFault(ownList.lookFailed(String(error)));
      }
    },
    [today, workbook],
  );

  const { survey = null, choices = null, isTouched = false } = found ?? {};
  const isChoosing = applying.phase.is === "choosing";
  const signature = overview ? signatureOf(overview, !isTouched) : null;
  useEffect(() => {
    if (!isShown || !isChoosing || signature === null || signature === seen.current) return;
    seen.current = signature;
    void look(isTouched ? wished.current : {}, isTouched);
  }, [isChoosing, isShown, isTouched, look, signature]);

  const reading = useMemo(() => (survey && choices ? readingOf(survey, choices) : null), [choices, survey]);
  const plan = useMemo(() => (survey && choices ? mend.plan(survey, choices) : null), [choices, survey]);

  async function carryOut() {
    if (plan?.outcome !== "planned") return;
    announce(words.working);
    await applying.apply(plan.change, (receipt) => mend.afterwards(plan, receipt));
  }

  return {
    applying,
    survey,
    choices,
    reading,
    plan,
    fault,
    choose: (change) =>
      setFound((before) => before && { ...before, isTouched: true, choices: { ...before.choices, ...change } }),
    chooseColumn: (what) =>
      setFound(
        (before) =>
          before && {
            ...before,
            isTouched: true,
            choices: { ...choicesFor(before.survey.list, what), put: before.choices.put },
          },
      ),
    look: (wish) => look(wish ?? {}, false),
    carryOut,
    backToChoices: () => {
      seen.current = signature;
      applying.backToChoices();
      void look(wished.current, false);
    },
    reveal: (place) => {
      /* Going to a cell selects it: that is no other list. */
      setFound((before) => before && { ...before, isTouched: true });
      reveal(place);
    },
  };
}
