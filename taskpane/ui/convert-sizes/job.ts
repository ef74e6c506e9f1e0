import { fetched, type Job } from "../pane/define-job";

export const convertSizes: Job = {
  key: "convertSizes",
  label: "Convert sizes",
  lead: "Tube sizes, however they were typed: French to millimetres, or back.",
  Content: fetched(async () => (await import(/* webpackChunkName: "convert-sizes" */ "./ConvertSizes")).ConvertSizes),
};
