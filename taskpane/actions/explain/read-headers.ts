/**
 * Of each worked-out column of the caseload, and of each word of *To do*, the columns that a person looks at to see why.
 * What stands here names columns; the rules themselves stand in src/caseload.
 */
import type { ShownHeader } from "../../../src/caseload/headers";
import type { RowsTable } from "../../../src/caseload/names";
import type { ToDoWord } from "../../../src/caseload/urgency";

type Reads<T extends RowsTable> = { readonly [H in ShownHeader<T>]?: readonly ShownHeader<T>[] };

const due = ["Device in", "Held by", "Access", "Own interval months", "Date set by placing team"] as const;

const tubes: Reads<"tubes"> = {
  "Change due": due,
  "At the latest": due,
  "Days left": ["Change due", "At the latest"],
  Change: ["Change due", "At the latest"],
  Tract: ["Stoma made", "Slow healing", "First tube"],
  Balloon: ["Held by", "Last check", "Out mL", "Put in mL", "Fill mL"],
  Age: ["Born"],
  "Size mm": ["Size Fr"],
  "Loss mL": ["Last check", "Out mL"],
  "Check due": ["Last check", "Device in", "Stoma made"],
  Fit: ["Length cm", "Lying cm", "Sitting cm", "Play mm", "Measured on"],
  Mark: ["Mark then cm", "Mark now cm"],
};

const checks: Reads<"checks"> = {
  "Loss mL": ["Expected mL", "Out mL"],
  "Loss mL a week": ["Loss mL", "Days since fill"],
  "Days since fill": ["Checked on", "Device in"],
  State: ["Out mL", "Expected mL", "Looked", "Put in mL"],
  "Low in a row": ["State"],
};

const changes: Reads<"changes"> = {
  "Days in place": ["In", "Out"],
  Failed: ["Reason"],
  Unplanned: ["Reason"],
};

/** By table and header. Columns that are not here are filled from another sheet, or say themselves what is wrong. */
export const columnsRead: { readonly [T in RowsTable]: Readonly<Record<string, readonly string[]>> } = {
  tubes,
  checks,
  changes,
};

const balloon = ["Balloon", "Last check", "Out mL", "Put in mL"] as const;
const change = ["Change due", "At the latest", "Booked for"] as const;
const spare = ["Spare at home"] as const;

export const toDoReads: { readonly [W in ToDoWord]: readonly ShownHeader<"tubes">[] } & Readonly<
  Record<string, readonly string[] | undefined>
> = {
  "balloon empty": balloon,
  "nothing came": balloon,
  "left empty": ["Last check", "Put in mL"],
  "above the label": ["Last check", "Put in mL", "Most mL"],
  tight: ["Fit", "Play mm"],
  "tight or stuck": ["Site", "Site seen on"],
  "further out": ["Mark", "Mark then cm", "Mark now cm"],
  infected: ["Site", "Site seen on"],
  "leaking, opening not mature": ["Site", "Tract", "Stoma made"],
  "milky fluid": ["Balloon", "Last check"],
  "check settings": ["Change", "Tract", "Balloon", "Fit", "Mark"],
  "date wrong": ["Device in", "Stoma made", "Booked for", "Change", "Tract"],
  "kind not known": ["Held by", "Access", "Fill mL", "Most mL"],
  "past limit, not booked": change,
  "overdue …, not booked": change,
  "missed date": ["Booked for", "Change due"],
  "no date": ["Device in", "Stoma made", "Change", "Tract"],
  "low twice": balloon,
  "half or less": balloon,
  "balloon: low": balloon,
  "balloon: more than put in": balloon,
  "due in …, not booked": change,
  "nobody trained, cannot wait": ["Trained for tube out", "Own tube-out plan", "Cannot wait"],
  "GJ: not by a carer": ["Changed by", "Access"],
  "J: not by a carer": ["Changed by", "Access"],
  "bumper: not by a carer": ["Changed by", "Held by"],
  "too short": ["Fit", "Length cm", "Lying cm", "Sitting cm"],
  leaking: ["Site", "Site seen on"],
  overgrown: ["Site", "Site seen on"],
  "put in not known": ["Last check", "Put in mL"],
  "not the agreed fill": ["Last check", "Put in mL", "Fill mL"],
  "cloudy: ask": ["Balloon", "Last check"],
  "balloon: too early": ["Balloon", "Last check", "Stoma made"],
  "balloon: …": ["Balloon", "Last check"],
  "check late": ["Balloon", "Last check", "Check due"],
  "booked after the limit": ["Booked for", "Change due", "At the latest"],
  "no spare": spare,
  "spare not known": spare,
  "spare expires": ["Spare expires", "Change due"],
  "see site again": ["Site", "Site seen on"],
  "measure again": ["Fit", "Mark", "Measured on"],
  "too long": ["Fit", "Length cm", "Lying cm", "Sitting cm"],
  loose: ["Fit", "Play mm"],
  "further in": ["Mark", "Mark then cm", "Mark now cm"],
  "hold too long": ["Status", "Status since"],
  "hospital too long": ["Status", "Status since"],
  "review the tube": ["Device in", "Site", "Site seen on"],
  "no number to call": [],
  "past limit, booked …": change,
  "overdue, booked …": change,
  "booked …": ["Booked for", "Change due"],
  "contradictory entries": ["Missing or contradictory"],
  "check entries": ["Missing or contradictory"],
  "in hospital": ["Status", "Status since"],
  "nothing due": ["Change due", "Check due", "Missing or contradictory"],
};
