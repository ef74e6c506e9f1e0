import { fetched, type Job } from "../pane/define-job";

export const mend: Job = {
  key: "mend",
  label: "Mend",
  lead: "Dates, sizes and kinds that many people typed, put right once by wording.",
  Content: fetched(async () => (await import(/* webpackChunkName: "mend" */ "./Mend")).Mend),
};
