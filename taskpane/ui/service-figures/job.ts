import { fetched, type Job } from "../pane/define-job";

export const serviceFigures: Job = {
  key: "serviceFigures",
  label: "Service figures",
  lead: "How the service does in a quarter or a year, beside the one before, and the board page.",
  Content: fetched(
    async () => (await import(/* webpackChunkName: "service-figures" */ "./ServiceFigures")).ServiceFigures,
  ),
};
