import { fetched, type Job } from "../pane/define-job";

export const overdueTable: Job = {
  key: "overdueTable",
  label: "What is overdue",
  lead: "How many devices are overdue, due or without a date: by kind, by who changes them, by where.",
  Content: fetched(async () => (await import(/* webpackChunkName: "overdue-table" */ "./OverdueTable")).OverdueTable),
};
