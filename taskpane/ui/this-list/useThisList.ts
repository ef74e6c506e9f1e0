/** The state of This list: what was found, what was said, what became of it. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { Problem } from "../../actions/action";
import type { Wish } from "../../actions/list/interface";
import { afterForgetting, afterKeeping, planForgetting, planThisList, surveyThisList } from "../../actions/this-list";
import type { ThisListChoices, ThisListPlan, ThisListSurvey } from "../../actions/this-list/interface";
import { ownList } from "../../texts/own-list";
import type { Change, Overview, Place, Workbook } from "../../workbook/port";
import { useApply, type Applying } from "../parts/useApply";
import { useReveal } from "../parts/useReveal";

export interface ThisListState {
  readonly applying: Applying;
  readonly survey: ThisListSurvey | null;
  readonly choices: ThisListChoices | null;
  readonly plan: ThisListPlan | Problem | null;
  readonly forgetting: Change | null;
  /** Why the sheet could not be read. */
  readonly fault: string | null;
  choose(change: Partial<ThisListChoices>): void;
  look(wish?: Wish): Promise<void>;
  keep(): Promise<void>;
  forget(): Promise<void>;
  backToChoices(): void;
  reveal(place: Place): void;
}

interface Found {
  readonly survey: ThisListSurvey;
  readonly choices: ThisListChoices;
}

const identityOf = ({ list, memory }: ThisListSurvey): string =>
  JSON.stringify([list?.key, list?.columns.map(({ header }) => header), memory.rows]);

export function useThisList(
  workbook: Workbook | null,
  overview: Overview | null,
  today: number,
  isShown: boolean,
): ThisListState {
  const applying = useApply(workbook);
  const reveal = useReveal(workbook);
  const [found, setFound] = useState<Found | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const looks = useRef(0);
  const wished = useRef<Wish>({});

  const look = useCallback(
    async (wish: Wish) => {
      if (!workbook) return;
      const mine = ++looks.current;
      wished.current = wish;
      try {
        const survey = await surveyThisList(workbook, { today, ...wish });
        if (mine !== looks.current) return;
        setFault(null);
        setFound((before) =>
          before && identityOf(before.survey) === identityOf(survey)
            ? { ...before, survey }
            : { survey, choices: survey.proposal },
        );
      } catch (error) {
        if (mine === looks.current) setFault(ownList.lookFailed(String(error)));
      }
    },
    [today, workbook],
  );

  const isChoosing = applying.phase.is === "choosing";
  useEffect(() => {
    if (isShown && isChoosing && overview) void look(wished.current);
  }, [isChoosing, isShown, look, overview]);

  const { survey = null, choices = null } = found ?? {};
  const plan = useMemo(() => (survey && choices ? planThisList(survey, choices) : null), [choices, survey]);
  const forgetting = useMemo(() => (survey ? planForgetting(survey) : null), [survey]);
  return {
    applying,
    survey,
    choices,
    plan,
    forgetting,
    fault,
    choose: (change) => setFound((before) => before && { ...before, choices: { ...before.choices, ...change } }),
    look: (wish) => look(wish ?? {}),
    keep: async () => {
      if (plan?.outcome === "planned") await applying.apply(plan.change, afterKeeping(plan.lines));
    },
    forget: async () => {
      if (forgetting) await applying.apply(forgetting, afterForgetting);
    },
    backToChoices: applying.backToChoices,
    reveal,
  };
}
