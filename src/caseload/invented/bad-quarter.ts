/**
 * One quarter in which far more went wrong than in the others, and a lot behind it: three of the devices are written
 * down with that lot, the others without any, so that they cannot be ruled out. It is a quarter of the calendar, the
 * last but one before the day, so that charts by month and by quarter show it whatever the day.
 */
import type { CaseloadRow } from "../rows";
import { quarterStart } from "./days";
import { circumstances, isUnplanned, type PastDevice } from "./endings";
import type { Chance } from "./random";
import { BAD_LOT } from "./story";

/** So many that exact limits show it on any day, by quarter and by month. */
const UNPLANNED_IN_IT = 25;
const KNOWN_OF_THE_LOT = 3;
const LEAST_LIFE = 9;

const REASONS = ["balloon burst", "balloon leaking", "balloon burst", "came out, balloon empty", "balloon burst"];

/** Steps of the golden section spread evenly and never fall into a beat. */
const GOLDEN = 0.618034;

/** Two thirds of an even spread between 0 and 1 come to lie in the middle third. */
const aroundTheMiddle = (share: number): number => 0.5 + 4 * (share - 0.5) ** 3;

type Chain = readonly PastDevice[];

/** Cuts the device that was in place on that day in two: the first part failed then. Null where none can be cut. */
function failedOn(day: number, chain: Chain, reason: string, lot: string | null, by: Chance): Chain | null {
  const at = chain.findIndex((device) => device.in + LEAST_LIFE <= day && day <= device.out - LEAST_LIFE);
  const device = chain[at];
  if (!device) return null;
  const failed = { ...device, out: day, reason, lot, circumstances: circumstances(device.of, reason, day, by) };
  return [...chain.slice(0, at), failed, { ...device, in: day }, ...chain.slice(at + 1)];
}

/** Of the item that the lot was of. */
const isOfItsItem = ([device]: Chain): boolean =>
  device !== undefined &&
  device.of.Shape === "low-profile" &&
  (device.of["Length cm"] === 2.3 || device.of["Length cm"] === 23) &&
  device.of["Size Fr"] !== 16;

export function badQuarter(asOf: number, chains: readonly Chain[], told: readonly CaseloadRow[], by: Chance): Chain[] {
  const begins = quarterStart(asOf, 2);
  const ends = quarterStart(asOf, 1);
  const within = (day: unknown) => Number(day) >= begins && Number(day) < ends;
  const already =
    chains.flat().filter((device) => within(device.out) && isUnplanned(device)).length +
    told.filter((row) => within(row.Out) && isUnplanned({ reason: String(row.Reason) })).length;
  const wanted = UNPLANNED_IN_IT - already;

  /* Those of the lot's item first; after them everybody, each once before anybody twice. */
  const result = [...chains];
  const order = chains
    .map((_, i) => i)
    .sort((a, b) => Number(isOfItsItem(chains[b]!)) - Number(isOfItsItem(chains[a]!)));
  let turn = 0;
  for (let done = 0; done < wanted && turn < 40 * order.length; turn++) {
    const i = order[turn % order.length]!;
    const day = begins + Math.floor((ends - begins) * aroundTheMiddle((turn * GOLDEN) % 1));
    const lot = done < KNOWN_OF_THE_LOT ? BAD_LOT : null;
    if (lot && !isOfItsItem(chains[i]!)) continue;
    const cut = failedOn(day, result[i]!, REASONS[done % REASONS.length]!, lot, by);
    if (!cut) continue;
    result[i] = cut;
    done++;
  }
  return result;
}
