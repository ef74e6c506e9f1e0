import { fetched, type Job } from "../pane/define-job";

export const pictures: Job = {
  key: "pictures",
  label: "Pictures",
  lead: "What the caseload’s own past can tell, each with its figures.",
  Content: fetched(async () => (await import(/* webpackChunkName: "pictures" */ "./Pictures")).Pictures),
};
