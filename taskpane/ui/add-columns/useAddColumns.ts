/** The state of Add columns: what was found, what was chosen, and what became of it. */
import { useMemo } from "react";
import { addColumns } from "../../actions/add-columns";
import type { AddColumnsPlan, Choices, Survey } from "../../actions/add-columns/interface";
import type { Problem } from "../../actions/action";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import type { Overview, Receipt } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { listStoodIn, useListJob, type ListJob, type Standing } from "../parts/useListJob";

export interface AddColumnsState extends ListJob<Survey, Choices> {
  readonly plan: AddColumnsPlan | Problem | null;
  add(): Promise<void>;
}

/** Names are settings, and columns are worked out by them. */
const ways = {
  survey: addColumns.survey,
  alsoSeen: (overview: Overview, withSelection: boolean): unknown => [
    overview.names,
    withSelection ? listStoodIn(overview) : [],
  ],
  keepsChoices: true,
};

/** "Columns added", "Columns written anew", or what became of it instead. */
export function titleOf(outcome: Receipt["outcome"], { done }: Receipt): string {
  const { title, refreshed } = addColumnsTexts.result;
  return outcome === "done" && !done.some(({ step }) => step.kind === "addColumns") ? refreshed : title[outcome];
}

export function useAddColumns(standing: Standing): AddColumnsState {
  const announce = useAnnounce();
  const job = useListJob<Survey, Choices>(standing, ways);
  const { survey, choices, applying } = job;
  const plan = useMemo(
    () => (survey?.list && choices && choices.recipes.length > 0 ? addColumns.plan(survey, choices) : null),
    [choices, survey],
  );
  return {
    ...job,
    plan,
    add: async () => {
      if (plan?.outcome !== "planned") return;
      announce(addColumnsTexts.working.title);
      const carried = await applying.apply(plan.change, (done) => addColumns.afterwards(plan, done));
      if (!carried) return;
      const { receipt, words } = carried;
      announce([`${titleOf(words.outcome, receipt)}.`, ...words.sentences].join(" "));
      if (receipt.outcome === "done") job.propose({ recipes: [] });
    },
  };
}
