/**
 * Tube out: the phone call. Reads, works out, writes nothing. Anything that cannot be read counts as not known, and
 * what is not known leads to hospital.
 */
import { opening } from "../../../src/words/cameout-texts";
import { together } from "../add-columns/sentences";
import { callsIn, type Call } from "../caseload/calls";
import type { Device, Meant } from "../caseload/identity";
import type { Caseload } from "../caseload/read";
import { settingIn } from "../caseload/settings";
import { factsOf, standsAgainst, type Fact } from "./facts";
import { last, middleFor } from "./middle";
import { doubtful, halfOut, NOT_WRITTEN } from "./sentences";

export interface TubeOut {
  /** Said first, large. */
  readonly opening: string;
  /** What decides. */
  readonly middle: string;
  readonly mayGoBack: boolean;
  /** More to say, in this order. */
  readonly sentences: readonly string[];
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
  const said = middleFor(
    caseload,
    chosen,
    today,
    meant.devices.length === 0 ? doubtful.notFound : doubtful.whichDevice,
  );
  const against = chosen && said.mayGoBack ? standsAgainst(chosen, today) : [];
  const facts = (chosen ? [chosen] : meant.devices).map((one) => ({
    sheetRow: one.row.sheetRow,
    facts: factsOf(one, names, today),
  }));
  return {
    opening,
    middle: said.middle,
    mayGoBack: said.mayGoBack,
    sentences: [
      ...(against.length > 0
        ? [`In this list: ${together(against)}. Then put nothing in and go to hospital now.`]
        : []),
      ...(said.planOnly === null ? [] : [said.planOnly]),
      halfOut,
      last,
      ...(said.counted === null ? [] : [said.counted]),
    ],
    calls: callsIn(names),
    facts,
    notWritten: chosen
      ? [
          ...facts[0]!.facts.filter(({ text }) => text === NOT_WRITTEN).map(({ label }) => label),
          ...(chosen.access === "not known" ? ["Access"] : []),
        ]
      : [],
    doubts: [
      ...(meant.doubt === null ? [] : [meant.doubt]),
      ...(["Tract_Low", "Tract_High", "First_Days"] as const).flatMap((name) => settingIn(names, name).doubt ?? []),
    ],
  };
}
