import { addPerson } from "../add-person/job";
import type { RecordingJob } from "../forms/recording-job";
import { recordChange } from "../record-change/job";
import { recordCheck } from "../record-check/job";

/** What is written down from Today, in this order. */
export const recordings: readonly RecordingJob[] = [recordCheck, recordChange, addPerson];
