import { fetched, type Job } from "../pane/define-job";

export const repair: Job = {
  key: "repair",
  label: "Repair",
  lead: "Formulas that show #NAME? because they lost their TUBE function, entered again.",
  Content: fetched(async () => (await import(/* webpackChunkName: "repair" */ "./Repair")).Repair),
};
