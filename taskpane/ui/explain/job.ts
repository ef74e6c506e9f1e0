import { fetched, type Job } from "../pane/define-job";

export const explain: Job = {
  key: "explain",
  label: "Explain this cell",
  lead: "Select a cell: what it says, and how it comes about.",
  Content: fetched(async () => (await import(/* webpackChunkName: "explain" */ "./Explain")).Explain),
};
