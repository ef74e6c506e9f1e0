import { fetched, type Job } from "../pane/define-job";

export const checkSheet: Job = {
  key: "checkSheet",
  label: "Check this sheet",
  lead: "Entries of a list that cannot be right, each one press away. Nothing is changed.",
  Content: fetched(async () => (await import(/* webpackChunkName: "check-sheet" */ "./CheckSheet")).CheckSheet),
};
