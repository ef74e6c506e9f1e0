/**
 * What the functions find in clinics whose truth is known: npm run simulate, about two minutes. Prints, and changes nothing.
 *
 * Limits that hold the truth less often than they say, or signals that come more often, are a fault: it ends with an error.
 */
import { functions } from "../../src/index";
import { watchLots, type Watch } from "../../src/lots/watched";
import { call } from "../../src/worksheet/call";
import { randomFrom, simulate, type Clinic, type Plan } from "./clinic";
import { falseSignals, timesOfPictures } from "./pictures";

const tube = (name: string, ...args: unknown[]): unknown[][] =>
  call(
    functions.find((one) => one.name === name)!,
    args,
  ) as unknown[][];
const column = (values: readonly unknown[]): unknown[][] => values.map((value) => [value]);
const percent = (share: number): string => `${(100 * share).toFixed(1)}%`;

const faults: string[] = [];
function hold(what: string, share: number, least: number, most: number): void {
  const isSo = share >= least && share <= most;
  console.log(`  ${what}: ${percent(share)} (${percent(least)} to ${percent(most)} wanted)${isSo ? "" : "  MISSED"}`);
  if (!isSo) faults.push(what);
}

const CLINIC: Plan = { people: 40, years: 1, shape: 2, scale: 200, spread: 0.4, planned: 180, lots: 1, badLot: 1 };

console.log("WEARRATIO, limits at 90%: how often they hold the person's true factor");
for (const plan of [CLINIC, { ...CLINIC, planned: 90 }, { ...CLINIC, shape: 1 }, { ...CLINIC, years: 3 }]) {
  const random = randomFrom(20261130);
  let [people, held, fast, flagged, slow, wrongly] = [0, 0, 0, 0, 0, 0];
  for (let run = 0; run < 200; run++) {
    const { ids, days, failed, truth } = simulate(plan, random);
    const names = [...truth.keys()];
    const rows = tube("WEARRATIO", column(names), column(ids), column(days), column(failed));
    if (typeof rows[0]![0] !== "number") continue;
    names.forEach((name, i) => {
      const [, low, high] = rows[i] as number[];
      const true_ = truth.get(name)!;
      people++;
      if (true_ >= low! && true_ <= high!) held++;
      if (true_ >= 1.5) {
        fast++;
        if (low! > 1) flagged++;
      } else if (true_ <= 1) {
        slow++;
        if (low! > 1) wrongly++;
      }
    });
  }
  console.log(`  shape ${plan.shape}, ${plan.years} years, changed at ${plan.planned} days, ${people} people:`);
  hold("  limits hold the truth", held / people, 0.85, 0.95);
  hold("  people no faster than the mean with limits above 1", wrongly / slow, 0, 0.05);
  console.log(
    `    of ${fast} who wear at least 1.5 times as fast, ${flagged} have limits above 1 (${percent(flagged / fast)})`,
  );
}

console.log("Lots watched, level 0.05 for all lots together, 4 failures at least");
const LOTS: Plan = { ...CLINIC, people: 108, years: 1, lots: 10, spread: 0.2 };
for (const badLot of [1, 3]) {
  const random = randomFrom(20261201);
  const RUNS = 200;
  let [anyFalse, found, sameWord, devices] = [0, 0, 0, 0];
  for (let run = 0; run < RUNS; run++) {
    const clinic = simulate({ ...LOTS, badLot }, random);
    const { lots } = watch(clinic);
    const signals = lots.filter((lot) => lot.signals).map(({ lot }) => lot);
    if (signals.some((lot) => badLot === 1 || lot !== "L0")) anyFalse++;
    if (badLot > 1 && signals.includes("L0")) found++;
    devices += clinic.lots.filter((lot) => lot === "L0").length;
    /* The worksheet function, told how many are expected in all, says the same of each lot. */
    const words = worksheetSignals(
      clinic,
      lots.map(({ lot }) => lot),
    );
    if (lots.every(({ signals: one }, i) => (words[i] === "look at this lot") === one)) sameWord++;
  }
  console.log(
    `  10 lots of about ${Math.round(devices / RUNS)} devices, the first fails ${badLot === 1 ? "as often as the others" : `${badLot} times as often`}:`,
  );
  hold("  runs with a false signal of any lot", anyFalse / RUNS, 0, 0.08);
  if (badLot > 1) hold("  runs in which the lot is found", found / RUNS, 0.8, 1);
  hold("  runs in which LOTSIGNAL says the same of every lot", sameWord / RUNS, 0.98, 1);
}

/** As the pane looks at a caseload's lots. */
function watch({ lots, days, failed }: Clinic): Watch {
  return watchLots(
    lots.map((lot, i) => ({ lot, kind: "balloon", days: days[i]!, failed: failed[i] === 1, agreed: CLINIC.planned })),
  );
}

function worksheetSignals({ lots, days, failed }: Clinic, asked: readonly string[]): readonly unknown[] {
  // What a lot's devices would have had by their planned change, all at the clinic's own curve.
  const [[shape, , , scale]] = tube("LIFEWEIBULL", column(days), column(failed)) as [number[]];
  const each = (CLINIC.planned / scale!) ** shape!;
  const totals = asked.map((lot) => each * lots.filter((one) => one === lot).length);
  const rows = tube("LOTSIGNAL", column(asked), column(lots), column(days), column(failed), column(totals));
  return rows.map((row) => row[5]);
}

faults.push(...falseSignals(1000), ...timesOfPictures());

if (faults.length > 0) {
  console.error(`missed: ${faults.join("; ")}`);
  process.exitCode = 1;
}
