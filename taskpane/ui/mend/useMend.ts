/** The state of Mend: what was found, what was chosen, and what became of it. */
import { useMemo } from "react";
import type { Problem } from "../../actions/action";
import { choicesFor, mend, readingOf } from "../../actions/mend";
import type { MendChoices, MendPlan, MendReading, MendSurvey } from "../../actions/mend/interface";
import { mend as words } from "../../texts/mend";
import { useAnnounce } from "../parts/announce";
import { useListJob, type ListJob, type Standing } from "../parts/useListJob";

export interface MendState extends ListJob<MendSurvey, MendChoices> {
  readonly reading: MendReading | null;
  readonly plan: MendPlan | Problem | null;
  /** Another column, or the same one as something else: what was said of the one before is not said of it. */
  chooseColumn(what: MendChoices["what"]): void;
  carryOut(): Promise<void>;
}

export function useMend(standing: Standing): MendState {
  const announce = useAnnounce();
  const job = useListJob<MendSurvey, MendChoices>(standing, mend);
  const { survey, choices } = job;
  const reading = useMemo(() => (survey && choices ? readingOf(survey, choices) : null), [choices, survey]);
  const plan = useMemo(() => (survey && choices ? mend.plan(survey, choices) : null), [choices, survey]);
  return {
    ...job,
    reading,
    plan,
    chooseColumn: (what) => job.chooseFrom(({ list }, { put }) => ({ ...choicesFor(list, what), put })),
    carryOut: async () => {
      if (plan?.outcome !== "planned") return;
      announce(words.working);
      await job.applying.apply(plan.change, (receipt) => mend.afterwards(plan, receipt));
    },
    reveal: (place) => {
      /* Going to a cell selects it: that is no other list. */
      job.touch();
      job.reveal(place);
    },
  };
}
