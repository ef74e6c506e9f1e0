import { fetched, type Job } from "../pane/define-job";

export const setUp: Job = {
  key: "setUp",
  label: "Set up a caseload",
  lead: "Ready-made sheets for a whole caseload, with invented people to look at.",
  Content: fetched(async () => (await import(/* webpackChunkName: "set-up" */ "./SetUp")).SetUp),
};
