import type { RecordingJob } from "../forms/recording-job";
import { AddPerson } from "./AddPerson";

export const addPerson: RecordingJob = {
  key: "addPerson",
  label: "A person",
  heading: "Add a person",
  Form: AddPerson,
};
