/** What the section Now shows before anything is pressed. */
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { day } from "../../../src/worksheet/dates";
import { now as words } from "../../../taskpane/texts/now";
import { Now } from "../../../taskpane/ui/now/Now";
import { fakeWorkbook, type FakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { caseloadBook } from "./book";

const TODAY = day("2026-11-26");
const OPENING = "Stop feed, water and medicines. Note the time. Cover the opening with a clean dry dressing.";

async function shown(workbook: FakeWorkbook): Promise<string> {
  const overview = await workbook.overview();
  return renderToStaticMarkup(<Now workbook={workbook} overview={overview} today={TODAY} locale="en-GB" isShown />);
}

test("the four jobs, the first thing to do, and one field", async () => {
  const page = await shown(fakeWorkbook(caseloadBook({ tubes: [{ ID: "D-001", Access: "G" }] })));
  for (const label of Object.values(words.job)) expect(page).toContain(`>${label}</button>`);
  expect(page).toContain(OPENING);
  expect(page.match(/<input/g)).toHaveLength(1);
  expect(page).not.toContain("D-001");
});

test("without a caseload: the first thing to do all the same, and how to set one up", async () => {
  const page = await shown(fakeWorkbook({ sheets: [{ name: "List", rows: [["ID"]] }] }));
  expect(page).toContain(OPENING);
  expect(page).toContain(words.noCaseload);
  expect(page).not.toContain("<input");
});

test("while the host is starting it waits", () => {
  const page = renderToStaticMarkup(<Now workbook={null} overview={null} today={TODAY} locale="en-GB" isShown />);
  expect(page).toContain("Waiting for the workbook");
});
