/**
 * Devices that came out in the last two years and have no story of their own: a fixed-seed generator deals lives and
 * reasons, so that pictures look like life. Invented to look plausible (shares of reasons roughly as Michaud 2004:
 * most failures are bursts; lives of some months), not data.
 */
import type { Header } from "../headers";
import type { CaseloadRow } from "../rows";
import { badQuarter } from "./bad-quarter";
import { circumstances, PACK, PACK_GJ, type Ending, type PastDevice } from "./endings";
import { chance, dealer, type Chance } from "./random";

const SEED = 20261126;

/** Days back to which the clinic has kept this log. */
const LOG_BEGINS = 610;

/** The letter of the lots that this person's devices come from, then four figures. */
const lotLike = (tube: CaseloadRow, by: Chance): string | null =>
  by.next() < 0.12
    ? null
    : `${/^[A-Z]\d{4}$/.test(String(tube.Lot)) ? String(tube.Lot)[0] : "C"}${by.whole(3000, 4999)}`;

/** From the device in use backwards, until the log begins or the opening was made. */
function chainOf(tube: CaseloadRow, until: number, asOf: number, deal: () => Ending, by: Chance): PastDevice[] {
  const made = typeof tube["Stoma made"] === "number" ? tube["Stoma made"] : -Infinity;
  const begins = Math.max(made, asOf - LOG_BEGINS);
  const chain: PastDevice[] = [];
  let out = until;
  while (out - begins >= 60) {
    const { reason, life } = deal();
    const came = out - by.whole(...life);
    /* The first device of an opening went in with it. */
    const first = came - made < 60;
    chain.push({
      ...{ of: tube, in: first ? made : came, out, reason },
      ...{ lot: lotLike(tube, by), circumstances: circumstances(tube, reason, out, by) },
    });
    out = chain.at(-1)!.in;
  }
  return chain.reverse();
}

/** Of the device that came out, and what the next row or the list says of the one that went in. */
function rowOf(device: PastDevice, next: PastDevice | undefined): CaseloadRow {
  const { of: tube, lot } = device;
  const numberOr = (header: Header<"tubes">, otherwise: number) => {
    const value = tube[header];
    return typeof value === "number" ? value : otherwise;
  };
  const isLow = tube.Shape === "low-profile";
  /* Past devices of people whose row in the list is typed oddly were written down properly. */
  const length = !isLow
    ? null
    : numberOr("Length cm", 2) > 10
      ? numberOr("Length cm", 2) / 10
      : numberOr("Length cm", 2);
  const size = numberOr("Size Fr", 14);
  return {
    ...{ ID: String(tube.ID), Access: tube.Access!, "Held by": "balloon", Shape: tube.Shape! },
    ...{ "Size Fr": size, "Length cm": length, "Fill mL": tube["Fill mL"]!, Lot: lot },
    ...{ In: device.in, Out: device.out, Reason: device.reason },
    ...device.circumstances,
    ...{ "New held by": "balloon", "New shape": tube.Shape!, "New size Fr": size, "New length cm": length },
    ...{ "New lot": next ? next.lot : tube.Lot!, "New fill put in mL": tube["Fill mL"]! },
  };
}

/**
 * @param told rows of the stories, which come first: a person's chain ends where a told device went in, and people
 *   whose whole past is told get none.
 */
export function pastDevices(
  asOf: number,
  tubes: readonly CaseloadRow[],
  told: readonly CaseloadRow[],
  wholePastTold: ReadonlySet<string>,
): CaseloadRow[] {
  const by = chance(SEED);
  const deal = dealer(PACK, by);
  const dealGJ = dealer(PACK_GJ, by);
  const chains = tubes
    .filter((tube) => tube["Fill mL"] !== undefined && tube["Held by"] !== "bumper")
    .filter((tube) => typeof tube["Device in"] === "number" && tube["Device in"] <= asOf)
    .filter((tube) => !wholePastTold.has(String(tube.ID)))
    .map((tube) => {
      const own = told.filter((row) => row.ID === tube.ID && row.Access === tube.Access).map((row) => Number(row.In));
      return chainOf(tube, Math.min(Number(tube["Device in"]), ...own), asOf, tube.Access === "G" ? deal : dealGJ, by);
    });
  return badQuarter(asOf, chains, told, by).flatMap((chain) => chain.map((device, i) => rowOf(device, chain[i + 1])));
}
