import { count } from "./pieces";

/** What every form says: what is wrong, what is required. */
export const entryForm = {
  required: "required",
  choose: "choose",
  mend: (n: number) => `${count(n, "thing", "things")} to put right first:`,
};
