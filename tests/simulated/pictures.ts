/**
 * A part of npm run simulate: what each picture costs with 5,000 people and 50,000 past devices, and how often a clinic
 * in which nothing changes shows a signal. Prints; ends with an error where it misses what it says.
 */
import { wearModel } from "../../src/pictures/advice";
import { comparison } from "../../src/pictures/compare";
import type { Device } from "../../src/pictures/devices";
import { duePicture } from "../../src/pictures/due";
import { intervalPicture } from "../../src/pictures/intervals";
import { lifePicture } from "../../src/pictures/life";
import { reasonsPicture } from "../../src/pictures/reasons";
import { stripPicture } from "../../src/pictures/strip";
import { unplannedPicture } from "../../src/pictures/unplanned";
import { fastWearers, wearPicture } from "../../src/pictures/wear";
import { day } from "../../src/worksheet/dates";
import { randomFrom, simulate, type Plan } from "./clinic";

const TODAY = day("2026-11-26");
/** Of processor time, for each picture. */
const MOST_MS = 300;

/** The same clinic as devices on a calendar that ends today. */
export function devicesOn(plan: Plan, random: () => number): readonly Device[] {
  const { ids, days, failed } = simulate(plan, random);
  const start = TODAY - Math.round(365 * plan.years);
  const next = new Map<string, number>();
  return ids.map((person, i): Device => {
    const from = next.get(person) ?? start;
    next.set(person, from + days[i]!);
    const isInUse = from + days[i]! >= TODAY;
    return {
      ...{ person, kind: "balloon", shape: i % 3 === 0 ? "long" : "low-profile", lot: "" },
      ...{ from, until: isInUse ? null : from + days[i]!, isInUse, days: days[i]! },
      ...{ failed: failed[i] === 1, unplanned: failed[i] === 1, reason: failed[i] === 1 ? "balloon burst" : "planned" },
    };
  });
}

const CLINIC: Plan = { people: 40, years: 2, shape: 2, scale: 200, spread: 0, planned: 180, lots: 1, badLot: 1 };

export function timesOfPictures(): readonly string[] {
  const missed: string[] = [];
  const devices = devicesOn({ ...CLINIC, people: 5000, years: 4.3, spread: 0.3 }, randomFrom(1)).slice(0, 55_000);
  const tubes = devices
    .filter(({ isInUse }) => isInUse)
    .map(({ person, from, kind }) => ({ person, kind, agreed: 180, day: from + 180 }));
  console.log(
    `Pictures of ${devices.length} devices of 5,000 people, ${tubes.length} in use, milliseconds of processor time:`,
  );
  const model = wearModel(devices);
  const works: Readonly<Record<string, () => unknown>> = {
    "due by month": () => duePicture(tubes, devices, TODAY),
    lives: () => lifePicture(devices),
    "lives by shape": () => comparison(devices, "shape"),
    "unplanned by month": () => unplannedPicture(devices, TODAY - 730, TODAY, "month"),
    reasons: () => reasonsPicture(devices, TODAY - 365),
    intervals: () => intervalPicture(devices, tubes, 180, 3),
    "the model of wear": () => wearModel(devices),
    "wear by person": () => wearPicture(model),
    "one person": () => stripPicture(devices, "p7"),
  };
  for (const [name, work] of Object.entries(works)) {
    work();
    const before = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(before);
    const ms = (user + system) / 1000;
    const isSo = ms <= MOST_MS;
    console.log(`  ${name}: ${ms.toFixed(0)}${isSo ? "" : `  MISSED (${MOST_MS})`}`);
    if (!isSo) missed.push(name);
  }
  return missed;
}

/** Clinics in which every month and everybody is alike, apart from chance. */
export function falseSignals(clinics: number): readonly string[] {
  let [periods, signals, people, fast] = [0, 0, 0, 0];
  const random = randomFrom(20261202);
  for (let run = 0; run < clinics; run++) {
    const devices = devicesOn(CLINIC, random);
    /* The first half year is left out: a clinic that begins has young devices only. */
    const seen = unplannedPicture(devices, TODAY - 540, TODAY, "quarter");
    periods += seen.periods.length;
    signals += seen.periods.filter(({ signal }) => signal !== null).length;
    people += CLINIC.people;
    fast += fastWearers(wearModel(devices)).length;
  }
  const [byPeriod, byPerson] = [signals / periods, fast / people];
  console.log(`${clinics} clinics of ${CLINIC.people} people in which nothing differs but by chance:`);
  console.log(
    `  quarters with a signal: ${(100 * byPeriod).toFixed(2)}% (at most 0.5% wanted: 0.135% each side, and quarters are alike only nearly)`,
  );
  console.log(`  people told to wear devices through fast: ${(100 * byPerson).toFixed(2)}% (at most 5% wanted)`);
  return [
    ...(byPeriod > 0.005 ? ["false signals of quarters"] : []),
    ...(byPerson > 0.05 ? ["false fast wearers"] : []),
  ];
}
