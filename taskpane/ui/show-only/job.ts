import { fetched, type Job } from "../pane/define-job";

export const showOnly: Job = {
  key: "showOnly",
  label: "Show only",
  lead: "Shows some rows of a list and hides the others, until one press shows them all again.",
  Content: fetched(async () => (await import(/* webpackChunkName: "show-only" */ "./ShowOnly")).ShowOnly),
};
