/** What every host asks before it writes anything, or takes anything back. */
import { unmet } from "./expectations";
import { contains } from "../area";
import type { Change, Overview, Receipt, SheetId, TakenBack, Workbook } from "../port";
import { readersOf } from "./new-sheet";
import { Refusal } from "./refusal";
import { targetsOf, type Target } from "./target";
import { differenceSentence, standing } from "./written";
import { type Standing, type Written } from "./standing";

type Told = Pick<Workbook, "overview" | "read">;

/**
 * Where everything will go, after every check: nothing is written before all of them are through.
 * @param obstacle what only this host knows to be in the way
 */
export async function checkedTargets(
  change: Change,
  workbook: Told,
  obstacle: (target: Target) => Promise<Refusal | null>,
): Promise<readonly Target[] | Refusal> {
  const overview = await workbook.overview();
  const changed = await unmet(change.expects, workbook, overview);
  if (changed) return changed;
  const targets = await targetsOf(change, overview, workbook);
  if (targets instanceof Refusal) return targets;
  for (const target of targets) {
    const inTheWay = await obstacle(target);
    if (inTheWay) return inTheWay;
  }
  return targets;
}

/** Where all that was written stands now. */
export async function standings<W extends Written>(
  written: readonly W[],
  workbook: Told,
): Promise<readonly Standing<W>[] | Refusal> {
  const overview = await workbook.overview();
  const found: Standing<W>[] = [];
  for (const one of written.filter((candidate) => candidate.changed)) {
    const stands = await standing(one, workbook, overview);
    if (stands instanceof Refusal) return stands;
    found.push(stands);
  }
  return Promise.all(found.map((one) => withReaders(one, found, workbook, overview)));
}

/** Of a sheet that would be removed: formulas elsewhere that read it, but those that go with it. */
async function withReaders<W extends Written>(
  one: Standing<W>,
  all: readonly Standing<W>[],
  workbook: Told,
  overview: Overview,
): Promise<Standing<W>> {
  const { target } = one.written;
  if (target.kind !== "addSheet" || target.sheet === null) return one;
  const going = all.flatMap(({ written, area }) => {
    const { target: other } = written;
    return area && other.kind !== "defineName" && other.sheet !== null ? [{ sheet: other.sheet, area }] : [];
  });
  const goes = (sheet: SheetId, row: number, column: number) =>
    going.some((place) => place.sheet === sheet && contains(place.area, row, column));
  const readers = await readersOf(target.sheet, workbook, overview, goes);
  return readers.length === 0 ? one : { ...one, differing: [...one.differing, ...readers] };
}

type NotTaken = Exclude<TakenBack, { outcome: "taken back" }>;

/**
 * What there is to take back, or why it is not taken back.
 * @param force even where somebody has changed it since
 */
export async function toTakeBack<W extends Written>(
  receipt: Receipt,
  memory: WeakMap<Receipt, readonly W[]>,
  workbook: Told,
  force: boolean,
): Promise<{ readonly found: readonly Standing<W>[] } | NotTaken> {
  const written = receipt.done.length === 0 ? [] : memory.get(receipt);
  if (!written) return { outcome: "failed", sentence: "This was taken back already, or done in another session." };
  const found = await standings(written, workbook);
  if (found instanceof Refusal) return { outcome: "failed", sentence: found.sentence };
  const cells = found.flatMap((one) => one.differing);
  if (cells.length > 0 && !force) return { outcome: "differs", sentence: differenceSentence(cells), cells };
  return { found };
}
