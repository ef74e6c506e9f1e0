/** What a column of somebody's own list can mean to us. */
export type Role =
  | "last"
  | "kind"
  | "size"
  | "diameter"
  | "out"
  | "putIn"
  | "stomaMade"
  | "slowHealing"
  | "lastCheck"
  | "length"
  | "lying"
  | "sitting"
  | "gap"
  | "markThen"
  | "markNow"
  | "due"
  | "latest"
  | "state"
  | "shape"
  | "access"
  | "changedBy"
  | "status";

/** What the cells of such a column hold. */
export type Content =
  "date" | "words" | "change words" | "size" | "diameter" | "volume" | "length" | "distance" | "mark";

export interface RoleFacts {
  readonly key: Role;
  readonly label: string;
  readonly help: string;
  readonly content: Content;
}

export const roles: readonly RoleFacts[] = [
  { key: "last", label: "Last change", help: "the day this device was put in", content: "date" },
  { key: "kind", label: "Kind of tube", help: "how it is held: balloon, bumper ...", content: "words" },
  { key: "size", label: "Size", help: "French size, as typed", content: "size" },
  { key: "diameter", label: "Diameter", help: "outside diameter in mm", content: "diameter" },
  { key: "out", label: "Water out", help: "mL drawn out of the balloon", content: "volume" },
  { key: "putIn", label: "Water put in", help: "mL put in last time; if not kept, the agreed fill", content: "volume" },
  { key: "lastCheck", label: "Last check", help: "the day the balloon was last checked", content: "date" },
  {
    key: "stomaMade",
    label: "Stoma made",
    help: "the day the opening was made; closed and made again: the new day",
    content: "date",
  },
  {
    key: "slowHealing",
    label: "Slow healing",
    help: "yes or no: malnutrition, ascites, steroids, immune suppression",
    content: "words",
  },
  { key: "length", label: "Length", help: "cm, of the low-profile tube now in", content: "length" },
  { key: "lying", label: "Lying", help: "cm, the opening measured lying", content: "length" },
  { key: "sitting", label: "Sitting", help: "cm, the opening measured sitting", content: "length" },
  { key: "gap", label: "Gap to the skin", help: "mm between outer bolster and skin, long tubes", content: "distance" },
  { key: "markThen", label: "Mark then", help: "cm mark at the skin when the tube was put in", content: "mark" },
  { key: "markNow", label: "Mark now", help: "cm mark at the skin now", content: "mark" },
  { key: "due", label: "Change due", help: "the day the next change is due", content: "date" },
  { key: "latest", label: "At the latest", help: "the last day for the next change", content: "date" },
  { key: "state", label: "Change", help: "words such as overdue, due soon, later", content: "change words" },
  { key: "shape", label: "Shape", help: "long or low-profile", content: "words" },
  { key: "access", label: "Access", help: "where the feed ends: G, GJ, J", content: "words" },
  { key: "changedBy", label: "Changed by", help: "who changes it: carer, nurse, radiology ...", content: "words" },
  { key: "status", label: "Status", help: "of the person: active, in hospital, left ...", content: "words" },
];

const byKey = new Map(roles.map((role) => [role.key, role]));

export const roleNamed = (key: Role): RoleFacts => byKey.get(key)!;
