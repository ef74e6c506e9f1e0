import { fetched, type Job } from "../pane/define-job";

export const today: Job = {
  key: "today",
  label: "Today",
  lead: "What to do, and what to write down.",
  Content: fetched(async () => (await import(/* webpackChunkName: "now" */ "./Today")).Today),
};
