import { fetched, type Job } from "../pane/define-job";

export const help: Job = {
  key: "help",
  label: "Help and cautions",
  lead: "Read this before you rely on a date or a word.",
  Content: fetched(async () => (await import(/* webpackChunkName: "help" */ "./Help")).Help),
};
