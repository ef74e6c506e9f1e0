import type { RecordingJob } from "../forms/recording-job";
import { RecordCheck } from "./RecordCheck";

export const recordCheck: RecordingJob = {
  key: "recordCheck",
  label: "A check",
  heading: "Record a check",
  Form: RecordCheck,
};
