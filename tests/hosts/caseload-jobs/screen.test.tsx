/** What Tube out and Today show before anything is pressed. */
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { day } from "../../../src/worksheet/dates";
import { forms as words } from "../../../taskpane/texts/forms";
import { today as todayWords } from "../../../taskpane/texts/today";
import { TubeOut } from "../../../taskpane/ui/tube-out/TubeOut";
import { recordings } from "../../../taskpane/ui/today/recordings";
import { Today } from "../../../taskpane/ui/today/Today";
import type { JobProps } from "../../../taskpane/ui/pane/define-job";
import { fakeWorkbook, type FakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { caseloadBook } from "./book";

const TODAY = day("2026-11-26");
const ORDERS = ["Stop feed, water and medicines.", "Note the time.", "Cover the opening with a clean dry dressing."];

async function propsOf(workbook: FakeWorkbook | null): Promise<JobProps> {
  const openNew: JobProps["openNew"] = async () => ({ outcome: "opened" });
  const overview = (await workbook?.overview()) ?? null;
  const rest = { version: "1.2.3", dayFirst: null, openNew, go: () => undefined, isShown: true };
  return { workbook, overview, today: TODAY, locale: "en-GB", ...rest };
}
const caseload = () => fakeWorkbook(caseloadBook({ tubes: [{ ID: "D-001", Access: "G" }] }));
const none = () => fakeWorkbook({ sheets: [{ name: "List", rows: [["ID"]] }] });

test("Tube out: the first things to do, one after the other, and one field; no alarm before somebody is chosen", async () => {
  const page = renderToStaticMarkup(<TubeOut {...await propsOf(caseload())} />);
  expect([...page.matchAll(/<li>([^<]*)<\/li>/g)].map(([, order]) => order)).toEqual(ORDERS);
  expect(page.match(/<input/g)).toHaveLength(1);
  expect(page).not.toContain("D-001");
  expect(page).not.toMatch(/alarm|notice problem/);
});

test("Tube out without a caseload: the first things to do all the same, and how to set one up", async () => {
  const page = renderToStaticMarkup(<TubeOut {...await propsOf(none())} />);
  for (const order of ORDERS) expect(page).toContain(order);
  expect(page).toContain(words.noCaseload);
  expect(page).not.toContain("<input");
});

test("Tube out while the host is starting: the first things to do", async () => {
  const page = renderToStaticMarkup(<TubeOut {...await propsOf(null)} />);
  for (const order of ORDERS) expect(page).toContain(order);
  expect(page).toContain("Waiting for the workbook");
});

test("Today: what to write down, and once what the clinic has not entered", async () => {
  const page = renderToStaticMarkup(<Today {...await propsOf(caseload())} />);
  for (const { label } of recordings) expect(page).toContain(`>${label}</button>`);
  expect(page.split(todayWords.before)).toHaveLength(2);
  expect(page).toContain(todayWords.noNumbers);
});

test("Today without a caseload leads to one, and to the person's own list", async () => {
  const page = renderToStaticMarkup(<Today {...await propsOf(none())} />);
  for (const label of [todayWords.toList, todayWords.toSetUp]) expect(page).toContain(`>${label}</button>`);
});
