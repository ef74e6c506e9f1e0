import type { RecordingJob } from "../forms/recording-job";
import { RecordChange } from "./RecordChange";

export const recordChange: RecordingJob = {
  key: "recordChange",
  label: "A change",
  heading: "Record a change",
  Form: RecordChange,
};
