/** How devices end, how often, and what is written down then. */
import type { CaseloadRow } from "../rows";
import type { Chance } from "./random";

/** One device of a chain: what came out on the last day was followed by the next on the same day. */
export interface PastDevice {
  readonly of: CaseloadRow;
  readonly in: number;
  readonly out: number;
  readonly reason: string;
  readonly lot: string | null;
  readonly circumstances: CaseloadRow;
}

export interface Ending {
  readonly reason: string;
  /** Days in place. */
  readonly life: readonly [least: number, most: number];
}

const AFTER_MONTHS = [84, 136] as const;
const AT_ANY_TIME = [13, 140] as const;

const planned: Ending = { reason: "planned", life: AFTER_MONTHS };
const suddenly = (reason: string): Ending => ({ reason, life: AT_ANY_TIME });
const many = (count: number, ending: Ending) => new Array<Ending>(count).fill(ending);

/** How devices end that are changed at home or in the clinic: three failures of five are bursts. */
export const PACK: readonly Ending[] = [
  ...many(38, planned),
  ...many(6, suddenly("balloon burst")),
  ...many(2, suddenly("balloon leaking")),
  suddenly("split or broken"),
  suddenly("came out, balloon empty"),
  suddenly("came out, balloon full or bumper"),
  suddenly("blocked"),
  { reason: "too short or too long", life: AFTER_MONTHS },
];

/** How gastrojejunal devices end. */
export const PACK_GJ: readonly Ending[] = [...many(5, planned), suddenly("moved (GJ)"), suddenly("blocked")];

/** Reasons for which somebody had to act on a day that nobody had chosen. */
const WITHOUT_WARNING = new Set([...PACK, ...PACK_GJ].map(({ reason }) => reason).filter((it) => it !== "planned"));
WITHOUT_WARNING.add("buried or stuck").add("other");

export const isUnplanned = ({ reason }: { readonly reason: string }): boolean => WITHOUT_WARNING.has(reason);

const isHome = (tube: CaseloadRow): boolean => tube["Changed by"] === "carer" || tube["Changed by"] === "nurse at home";

/** Days until an opening counts as mature: 12 weeks, ACI/GENCA emergency page. */
const MATURE = 84;

/**
 * Where it was changed, by whom, and how the position of the new one was confirmed. Tubes that end in the bowel, and
 * those in an opening that is not mature yet, go back where the position can be seen.
 */
export function circumstances(tube: CaseloadRow, reason: string, out: number, by: Chance): CaseloadRow {
  const isMature = typeof tube["Stoma made"] !== "number" || out - tube["Stoma made"] >= MATURE;
  if (tube.Access !== "G" || !isMature) {
    return {
      ...{ Where: "radiology", "Unplanned visit": reason === "planned" ? "no" : "yes", Nights: by.whole(0, 1) },
      ...{ "Changed by": "radiology", "Position confirmed by": "X-ray or contrast" },
    };
  }
  const atHome = isHome(tube) && by.next() < 0.75;
  const position: CaseloadRow =
    by.next() < 0.85
      ? { "Position confirmed by": "pH", pH: by.whole(5, 10) / 2 }
      : { "Position confirmed by": "not recorded" };
  if (reason === "planned") {
    return {
      ...{ Where: atHome ? "home" : "clinic", "Unplanned visit": "no", Nights: 0 },
      ...{ "Changed by": atHome ? tube["Changed by"]! : "nurse in clinic", ...position },
    };
  }
  const gone = reason === "balloon burst" || reason.startsWith("came out");
  const hoursOut = gone ? by.pick([0.2, 0.5, 0.5, 1, 1, 2, 3, null]) : null;
  if (atHome) {
    return {
      ...{ Where: "home", "Unplanned visit": "no", Nights: 0, "Hours out": hoursOut },
      ...{ "Changed by": tube["Changed by"]!, ...position },
    };
  }
  const emergency = by.next() < 0.6;
  return {
    ...{ Where: emergency ? "emergency department" : "clinic", "Unplanned visit": "yes" },
    ...{ Nights: emergency ? by.pick([0, 0, 0, 1, 2]) : 0, "Hours out": hoursOut },
    ...(emergency
      ? { "Position confirmed by": "X-ray or contrast" }
      : { "Changed by": "nurse in clinic", ...position }),
  };
}
