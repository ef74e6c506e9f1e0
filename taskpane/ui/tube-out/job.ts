import { fetched, type Job } from "../pane/define-job";

export const tubeOut: Job = {
  key: "tubeOut",
  label: "Tube out",
  lead: "The telephone call. Nothing is written down here.",
  Content: fetched(async () => (await import(/* webpackChunkName: "now" */ "./TubeOut")).TubeOut),
};
