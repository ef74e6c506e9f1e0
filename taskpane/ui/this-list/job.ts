import { fetched, type Job } from "../pane/define-job";

export const thisList: Job = {
  key: "thisList",
  label: "This list",
  lead: "What its columns and words are, said once and kept in the workbook.",
  Content: fetched(async () => (await import(/* webpackChunkName: "this-list" */ "./ThisList")).ThisList),
};
