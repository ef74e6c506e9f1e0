/**
 * Tube out: the phone call. Reads, works out, writes nothing. Anything that cannot be read counts as not known, and
 * what is not known leads to hospital.
 */
import { beThere, opening, planOnly, takeAlong } from "../../../src/words/cameout-texts";
import type { TubeOutClass } from "../../../src/words/tube-out-class";
import { together } from "../../texts/pieces";
import { callsIn, type Call } from "../caseload/calls";
import type { Device, Meant } from "../caseload/identity";
import type { Caseload } from "../caseload/read";
import { carefulIn, settingIn } from "../caseload/settings";
import { factsOf, standsAgainst, type Fact } from "./facts";
import { hospital, middleFor } from "./middle";
import { halfOut, type Doubt } from "./sentences";

export interface TubeOut {
  /** What decides: a class of CAMEOUT's, or what in the rows leads to hospital. */
  readonly is: TubeOutClass | Doubt;
  /** Its sentence. */
  readonly middle: string;
  /** Said first, large: what to do now. */
  readonly first: readonly string[];
  /** More to say, in this order. */
  readonly more: readonly string[];
  readonly calls: readonly Call[];
  /** Device by device; more than one where it is not known which is meant. */
  readonly facts: readonly { readonly sheetRow: number; readonly facts: readonly Fact[] }[];
  /** Labels of what is not written down. */
  readonly notWritten: readonly string[];
  /** Settings that are missing or unusual. */
  readonly doubts: readonly string[];
}

/** @param device the one chosen and read back; null where it is not known which one, or where rows are in doubt */
export function tubeOut(caseload: Caseload, meant: Meant, device: Device | null, today: number): TubeOut {
  const { names } = caseload;
  const chosen = meant.doubt === null ? device : null;
  const nobody = meant.devices.length === 0 ? "notFound" : "whichDevice";
  const said = chosen ? middleFor(caseload, chosen, today) : hospital(nobody);
  const against = chosen && said.mayGoBack ? standsAgainst(chosen, today) : [];
  const facts = (chosen ? [chosen] : meant.devices).map((one) => ({
    sheetRow: one.row.sheetRow,
    facts: factsOf(one, names, today),
  }));
  /* Where training, plan or spare is missing, that is said instead of the sentence that asks for them. */
  const refusal =
    against.length > 0 ? `Put nothing in and go to hospital now: in this list ${together(against)}.` : null;
  const soon = refusal === null ? null : beThere(carefulIn(names, "Out_Aim", "high"));
  const plan = said.mayGoBack && refusal === null ? null : planOnly;
  return {
    is: said.is,
    middle: said.sentence,
    first: [opening, refusal ?? said.sentence],
    more: [soon, plan, halfOut, takeAlong, said.counted].filter((one) => one !== null),
    calls: callsIn(names),
    facts,
    notWritten: chosen
      ? [
          ...facts[0]!.facts.filter(({ isWritten }) => !isWritten).map(({ label }) => label),
          ...(chosen.access === "not known" ? ["Access"] : []),
        ]
      : [],
    doubts: [
      ...(meant.doubt === null ? [] : [meant.doubt]),
      ...(["Tract_Low", "Tract_High", "First_Days"] as const).flatMap((name) => settingIn(names, name).doubt ?? []),
    ],
  };
}
