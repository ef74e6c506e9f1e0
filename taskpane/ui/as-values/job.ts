import { fetched, type Job } from "../pane/define-job";

export const asValues: Job = {
  key: "asValues",
  label: "As values",
  lead: "Added columns kept as what they say now, and back again.",
  Content: fetched(async () => (await import(/* webpackChunkName: "as-values" */ "./AsValues")).AsValues),
};
