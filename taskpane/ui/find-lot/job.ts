import { fetched, type Job } from "../pane/define-job";

export const findLot: Job = {
  key: "findLot",
  label: "Find a lot",
  lead: "Whom a recall touches: devices in use, spares at home and past devices of a lot.",
  Content: fetched(async () => (await import(/* webpackChunkName: "find-lot" */ "./FindLot")).FindLot),
};
