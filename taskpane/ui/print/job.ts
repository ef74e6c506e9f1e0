import { fetched, type Job } from "../pane/define-job";

export const print: Job = {
  key: "print",
  label: "Print",
  lead: "Pages for paper: each says from when it is and who agreed the settings.",
  Content: fetched(async () => (await import(/* webpackChunkName: "now" */ "./Print")).Print),
};
