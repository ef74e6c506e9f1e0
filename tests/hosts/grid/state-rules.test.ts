/** Added columns bring the colours of the states: in the grid, in the file as rules that every program has, and gone again. */
import { readFileSync } from "node:fs";
import { ConditionalFormattingRuleModel } from "@univerjs/sheets-conditional-formatting";
import { unzipSync } from "fflate";
import { readXlsx } from "hucre/xlsx";
import { afterAll, beforeAll, expect, it } from "vitest";
import { formula } from "../../../src/columns/formula";
import { states } from "../../../taskpane/styles/states";
import { gridOn } from "../../../taskpane/workbook/embedded/face";
import type { Grid } from "../../../taskpane/workbook/embedded/interface";
import type { Engine } from "../../../taskpane/workbook/embedded/engine";
import type { Change, NewColumn } from "../../../taskpane/workbook/port";
import { atRest } from "./at-rest";
import { startHeadless } from "./headless";

const TODAY = 46_132;
const FILES = new URL("../../workbooks/files/", import.meta.url);
const file = (name: string) => new Uint8Array(readFileSync(new URL(name, FILES)));

let engine: Engine;
let grid: Grid;
beforeAll(() => {
  engine = startHeadless();
  grid = gridOn(engine, { today: TODAY, dayFirst: true, say: () => undefined, hush: () => undefined });
});
afterAll(() => engine.univer.dispose());

const state: NewColumn = {
  header: "Change",
  formula: formula`IF(1=1,"overdue","later")`,
  format: "General",
  rules: [
    { state: "act", reads: "overdue" },
    { state: "missing", reads: 'no "date"' },
  ],
};
const due: NewColumn = {
  header: "Change due",
  formula: formula`DATE(2026,1,31)`,
  format: "d mmm yyyy",
  rules: [{ state: "soon", before: "TODAY()" }],
};

interface Shown {
  readonly range: readonly [top: number, left: number, column: number];
  readonly subType: string;
  readonly operator: string;
  readonly value: unknown;
  readonly ground: string;
}

/** The rules that the grid paints by. */
function rulesOf(sheet: string): readonly Shown[] {
  const unit = engine.api.getActiveWorkbook()!;
  const id = unit.getSheetByName(sheet)!.getSheetId();
  const rules = engine.injector.get(ConditionalFormattingRuleModel).getSubunitRules(unit.getId(), id) ?? [];
  return rules.map(({ ranges: [range], rule }) => {
    const told = rule as unknown as Omit<Shown, "range" | "ground"> & { style?: { bg?: { rgb: string } } };
    const { subType, operator, value } = told;
    return {
      range: [range!.startRow, range!.startColumn, range!.endColumn] as const,
      ...{ subType, operator, value },
      ground: (told.style?.bg?.rgb ?? "").replace("#", "").toUpperCase(),
    };
  });
}

async function savedBytes(): Promise<Uint8Array> {
  const saved = await grid.save();
  if (saved.outcome === "refused") throw new Error(saved.sentence);
  return saved.bytes;
}

async function byAnotherReader(bytes: Uint8Array, sheet: string) {
  const book = await readXlsx(bytes, { readStyles: true });
  const { conditionalRules = [] } = book.sheets.find(({ name }) => name === sheet)!;
  return conditionalRules.map(({ type, operator, formula: asked, style }) => ({
    asks: [type, operator, ...(Array.isArray(asked) ? asked : [asked])],
    ground: style?.fill?.type === "pattern" ? style.fill.bgColor?.rgb : undefined,
  }));
}

it("come with the columns, into the file, back from it, and go with them", async () => {
  const before = file("plain-list-title-rows.xlsx");
  expect((await grid.open(before, "list.xlsx")).outcome).toBe("opened");
  const { workbook } = grid;
  const overview = await workbook.overview();
  const sheet = overview.sheets.find(({ used }) => used !== null)!;
  const theirs = rulesOf(sheet.name);
  const used = sheet.used!;
  const list = { sheet: sheet.id, area: { ...used, top: used.top + used.rows - 4, rows: 4 } };
  const change: Change = { steps: [{ kind: "addColumns", to: { list }, columns: [state, due] }], expects: [] };
  const receipt = await workbook.apply(change, { report: () => undefined, signal: new AbortController().signal });
  expect(receipt).toMatchObject({ outcome: "done" });
  await atRest();

  const [top, column] = [list.area.top + 1, used.left + used.columns];
  const { act, missing, soon } = states;
  const meant = [
    ...theirs,
    { range: [top, column, column], subType: "text", operator: "equal", value: "overdue", ground: act.ground },
    { range: [top, column, column], subType: "text", operator: "equal", value: 'no "date"', ground: missing.ground },
    {
      ...{ range: [top, column + 1, column + 1], subType: "number", operator: "between" },
      ...{ value: [1, TODAY - 1], ground: soon.ground },
    },
  ];
  const inOrder = (rules: readonly Shown[]) =>
    [...rules].sort((one, other) => JSON.stringify(one).localeCompare(JSON.stringify(other)));
  expect(inOrder(rulesOf(sheet.name))).toEqual(inOrder(meant as unknown as Shown[]));

  const bytes = await savedBytes();
  const read = await byAnotherReader(bytes, sheet.name);
  expect(read.map(({ asks }) => asks)).toEqual(
    expect.arrayContaining([
      ["cellIs", "equal", '"overdue"'],
      ["cellIs", "equal", '"no ""date"""'],
      ["cellIs", "between", "1", "TODAY()-1"],
    ]),
  );
  const grounds = read.map(({ ground }) => ground?.slice(-6));
  expect(grounds).toEqual(expect.arrayContaining([act, missing, soon].map(({ ground }) => ground)));

  expect((await grid.open(bytes, "list.xlsx")).outcome).toBe("opened");
  expect(inOrder(rulesOf(sheet.name))).toEqual(inOrder(meant as unknown as Shown[]));
  // nobody changed anything: byte for byte the same
  expect(Buffer.compare(await savedBytes(), bytes)).toBe(0);
});

it("are taken back with them", async () => {
  const before = file("table-with-totals.xlsx");
  expect((await grid.open(before, "table.xlsx")).outcome).toBe("opened");
  const { workbook } = grid;
  const { tables, sheets } = await workbook.overview();
  const table = tables[0]!;
  const name = sheets.find(({ id }) => id === table.sheet)!.name;
  const there = rulesOf(name).length;
  const change: Change = {
    steps: [{ kind: "addColumns", to: { table: table.name }, columns: [state] }],
    expects: [],
  };
  const receipt = await workbook.apply(change, { report: () => undefined, signal: new AbortController().signal });
  expect(receipt).toMatchObject({ outcome: "done" });
  expect(rulesOf(name).length).toBe(there + 2);
  await atRest();
  expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
  expect(rulesOf(name).length).toBe(there);
  await atRest();
  const after = await savedBytes();
  const styles = (bytes: Uint8Array) => Buffer.from(unzipSync(bytes)["xl/styles.xml"]!).toString("hex");
  expect(styles(after)).toBe(styles(before));
});
