/** The numbers to call, from the clinic's settings; an empty one is never passed over. */
import type { Caseload } from "./read";
import { textSettingIn } from "./settings";

const NO_NUMBER = "No number entered: call the emergency number.";

export interface Call {
  readonly label: string;
  /** The number, or what to do without one. */
  readonly text: string;
  readonly isMissing: boolean;
}

const LABELS = {
  Call_Day: "In hours",
  Call_Night: "Out of hours",
  Call_Hospital: "Hospital that can replace tubes",
  Call_Emergency: "Emergency number",
} as const;

const WITHOUT: Readonly<Record<keyof typeof LABELS, string>> = {
  Call_Day: NO_NUMBER,
  Call_Night: NO_NUMBER,
  Call_Hospital: "Not entered.",
  Call_Emergency: "Not entered.",
};

export const callsIn = (names: Caseload["names"]): readonly Call[] =>
  (Object.keys(LABELS) as (keyof typeof LABELS)[]).map((name) => {
    const text = textSettingIn(names, name);
    return { label: LABELS[name], text: text === "" ? WITHOUT[name] : text, isMissing: text === "" };
  });
