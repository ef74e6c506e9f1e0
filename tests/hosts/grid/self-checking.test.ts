/** The self-checking workbook, its stored results taken out, worked out again by the grid's own engine. */
import { readFileSync } from "node:fs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { afterAll, expect, test } from "vitest";
import { checks } from "../../../functions/self-checking";
import { functions } from "../../../src/index";
import { gridOn } from "../../../taskpane/workbook/embedded/face";
import { day } from "../../../src/worksheet/dates";
import { atRest } from "./at-rest";
import { startHeadless } from "./headless";

const SHEET = "xl/worksheets/sheet1.xml";
const FIRST_ROW = 6;
const [FORMULA, AGREES] = [1, 4];

/** Without stored results, so that nothing but the engine can say TRUE; optionally with one expected value spoiled. */
function withoutResults(spoil?: (sheet: string) => string): Uint8Array {
  const parts = unzipSync(new Uint8Array(readFileSync(new URL("../../../docs/self-checking.xlsx", import.meta.url))));
  const sheet = strFromU8(parts[SHEET]!).replace(/<\/f><v>[^<]*<\/v>/g, "</f>");
  return zipSync({ ...parts, [SHEET]: strToU8(spoil ? spoil(sheet) : sheet) }, { level: 0 });
}

const engines: { dispose(): void }[] = [];
afterAll(() => engines.forEach((engine) => engine.dispose()));

async function workedOut(bytes: Uint8Array) {
  const engine = startHeadless();
  engines.push(engine.univer);
  const said: string[] = [];
  const grid = gridOn(engine, {
    today: day("2026-05-10"),
    dayFirst: null,
    say: (sentence) => said.push(sentence),
    hush: () => undefined,
  });
  const opened = await grid.open(bytes, "self-checking.xlsx");
  expect(opened.outcome, JSON.stringify(opened)).toBe("opened");
  engine.api.getFormula().executeCalculation();
  const sheet = engine.api.getActiveWorkbook()!.getActiveSheet();
  const at = (row: number, column: number) => sheet.getRange(row, column).getRawValue();
  await atRest();
  return { at, all: at(3, 1) };
}

test("every worked example agrees, and one cell says TRUE", async () => {
  const { at, all } = await workedOut(withoutResults());
  checks(functions).forEach((check, i) => {
    expect(Boolean(at(FIRST_ROW + i, AGREES)), `${check.formula} gives ${String(at(FIRST_ROW + i, FORMULA))}`).toBe(
      true,
    );
  });
  expect(all).toBe(1);
});

test("a wrong expected value makes it FALSE", async () => {
  // 12 Fr are 4 mm: the first example. Expect 5 instead.
  const { all, at } = await workedOut(
    withoutResults((sheet) => sheet.replace('<c r="C7"><v>4</v>', '<c r="C7"><v>5</v>')),
  );
  expect(at(FIRST_ROW, AGREES)).toBe(0);
  expect(all).toBe(0);
});
