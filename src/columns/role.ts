/** What a column of somebody's own list can mean to us. */
export type Role = "last" | "kind" | "size" | "putIn" | "out" | "due" | "latest";

export interface RoleFacts {
  readonly key: Role;
  readonly label: string;
  readonly help: string;
  readonly content: "date" | "words" | "size" | "volume";
}

export const roles: readonly RoleFacts[] = [
  { key: "last", label: "Last change", help: "the day this device was put in", content: "date" },
  { key: "kind", label: "Kind of tube", help: "how it is held: balloon, bumper ...", content: "words" },
  { key: "size", label: "Size", help: "French size, as typed", content: "size" },
  { key: "out", label: "Water out", help: "mL drawn out of the balloon", content: "volume" },
  { key: "putIn", label: "Water put in", help: "mL put in last time; if not kept, the agreed fill", content: "volume" },
  { key: "due", label: "Change due", help: "the day the next change is due", content: "date" },
  { key: "latest", label: "At the latest", help: "the last day for the next change", content: "date" },
];

const byKey = new Map(roles.map((role) => [role.key, role]));

export const roleNamed = (key: Role): RoleFacts => byKey.get(key)!;
