/** All stories together, and what lies between them: past devices and weekly checks. */
import type { Header } from "../headers";
import type { CaseloadRow, CaseloadRows } from "../rows";
import { checking } from "./checking";
import { dates } from "./dates";
import { fits } from "./fits";
import { losses } from "./losses";
import { others } from "./others";
import { pastDevices } from "./past-devices";
import { plans } from "./plans";
import { twice } from "./twice";
import { wear } from "./wear";
import { weeklyChecks } from "./weekly-checks";
import { words } from "./words";

const stories = [dates, words, ...losses, ...checking, ...[fits, plans, wear, twice, others]];

/** People of whose past the stories tell everything that is known. */
const WHOLE_PAST_TOLD = new Set(["D-041", "D-042", "D-047", "D-017", "d-017 "]);

const byText = (header: Header) => (a: CaseloadRow, b: CaseloadRow) =>
  String(a[header]).trim().localeCompare(String(b[header]).trim(), "en", { sensitivity: "base" });
const byDay = (header: Header) => (a: CaseloadRow, b: CaseloadRow) => Number(a[header]) - Number(b[header]);

/** @param asOf the day on which the people are invented */
export function inventedCaseload(asOf: number): CaseloadRows {
  const told = stories.map((tell) => tell(asOf));
  const tubes = told.flatMap((story) => story.tubes).sort(byText("ID"));
  const checks = told.flatMap((story) => story.checks ?? []);
  const changes = told.flatMap((story) => story.changes ?? []);
  return {
    tubes,
    checks: [...checks, ...weeklyChecks(asOf, tubes, checks)].sort(byDay("Checked on")),
    changes: [...changes, ...pastDevices(asOf, tubes, changes, WHOLE_PAST_TOLD)].sort(byDay("Out")),
  };
}
