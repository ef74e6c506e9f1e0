/** What the pictures say of the invented caseload against R's: pictures.csv was written by pictures.R. Nothing of R is needed to run this. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { adviceFor, wearModel } from "../../../src/pictures/advice";
import { comparison } from "../../../src/pictures/compare";
import { ofKind } from "../../../src/pictures/devices";
import { intervalPicture } from "../../../src/pictures/intervals";
import { lifePicture } from "../../../src/pictures/life";
import { unplannedPicture } from "../../../src/pictures/unplanned";
import { wearPicture } from "../../../src/pictures/wear";
import { day } from "../../../src/worksheet/dates";
import { readDevices } from "./devices";

const TODAY = day("2026-11-26");
const devices = ofKind(readDevices(), "balloon");
const byR = new Map(
  readFileSync(new URL("pictures.csv", import.meta.url), "utf8")
    .trimEnd()
    .split("\n")
    .map((line) => {
      const [name, values] = line.split(",") as [string, string];
      return [name, values.split(" ").map((value) => (value === "NA" ? undefined : Number(value)))] as const;
    }),
);

function alike(name: string, ours: readonly (number | undefined)[], within = 1e-6): void {
  const theirs = byR.get(name)!;
  expect(ours.length, name).toBe(theirs.length);
  ours.forEach((one, i) => {
    if (theirs[i] === undefined) return expect(one, name).toBeUndefined();
    expect(Math.abs(one! / theirs[i] - 1), `${name} ${i + 1}: ${one} for R's ${theirs[i]}`).toBeLessThan(within);
  });
}

test("lives: how many, the day by which a quarter has failed, and shapes compared (survfit, survdiff)", () => {
  const life = lifePicture(devices);
  alike("counts", [life.devices, life.failures, life.stillIn]);
  alike("quarter", [life.quarter.day, life.quarter.low, life.quarter.high]);
  const { chiSquare, p } = comparison(devices, "shape").test!;
  alike("shape", [chiSquare, p]);
});

test("unplanned changes over all days, with exact limits (poisson.test)", () => {
  const first = Math.min(...devices.map(({ from }) => from));
  const { events, tubeDays, rate } = unplannedPicture(devices, first, TODAY, "quarter");
  alike("rate", [events, tubeDays, rate!.value, rate!.low, rate!.high]);
});

test("planned intervals: failing before each, changes a year, the day that costs least (survreg, integrate, uniroot)", () => {
  const agreed = [{ person: "nobody", agreed: 92 }];
  const rows = intervalPicture(devices, agreed, 92, null).rows!;
  alike(
    "failing",
    rows.map(({ failing }) => failing.value),
  );
  alike(
    "changes",
    rows.map(({ planned, unplanned }) => planned.value + unplanned.value),
  );
  for (const cost of [2, 3, 5, 10]) {
    const { best } = intervalPicture(devices, agreed, 92, cost);
    alike(`best${cost}`, [best!.is === "never" ? undefined : best!.day.value]);
  }
});

test("wear of each person with two failures or more (own likelihood by optim)", () => {
  const model = wearModel(devices);
  const told = wearPicture(model).told!;
  expect(told.length).toBe([...byR.keys()].filter((name) => name.startsWith("wear ")).length);
  for (const { person, wear, day: by, devices: all, failures } of told) {
    alike(`wear ${person}`, [wear.value, wear.low, wear.high, by.value, by.low, by.high, all, failures], 1e-5);
    expect(adviceFor(model, person, 1000)).toMatchObject({ is: "person", isEarlier: true });
  }
});
