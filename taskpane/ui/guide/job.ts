import { fetched, type Job } from "../pane/define-job";

export const guide: Job = {
  key: "guide",
  label: "All functions",
  lead: "What each worksheet function is for, with worked examples and their sources.",
  Content: fetched(async () => (await import(/* webpackChunkName: "guide" */ "./Guide")).Guide),
};
