import { fetched, type Job } from "../pane/define-job";

export const addColumns: Job = {
  key: "addColumns",
  label: "Add columns",
  lead: "Columns beside your list, such as the day of the next change. Nothing is overwritten.",
  Content: fetched(async () => (await import(/* webpackChunkName: "add-columns" */ "./AddColumns")).AddColumns),
};
