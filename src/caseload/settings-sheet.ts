/** Clinic settings: one named cell for each; beside it unit, range across sources, what is allowed, source and evidence. */
import { cellAddress } from "../columns/formula";
import { settingGroups } from "../settings/index";
import type { ClinicSetting } from "../settings/setting";
import type { Cell } from "../worksheet/cell";
import type { CellDescription, NameDescription, SheetDescription, Validation } from "./book";
import type { Carried, CarriedSetting } from "./carried";
import { DATE, PLAIN, TEXT } from "./column";
import { countedDayFormula, countedDays } from "./counted-days";
import { lines, FOOTER } from "./lines";
import { headerRow } from "./layout";
import { sheetNames } from "./names";
import { readByFormulas } from "./read-by-formulas";
import { readiness, readyFormula } from "./ready";
import { SCHEMA, SCHEMA_LABEL, SCHEMA_NAME } from "./schema";
import { reasons } from "./words";

/** Allowed stands in two cells, so that the note can read them. */
const columns = {
  setting: 0,
  value: 1,
  unit: 2,
  range: 3,
  from: 4,
  to: 5,
  source: 6,
  evidence: 7,
  agreedBy: 8,
  agreedOn: 9,
  note: 10,
} as const;

const headers = [
  ...["Setting", "Value", "Unit", "Range across sources", "Allowed from", "Allowed to", "Source", "Evidence"],
  ...["Agreed by", "Date", "Note"],
];

const widths: Readonly<Record<number, number>> = {
  0: 46,
  1: 18,
  2: 16,
  3: 40,
  4: 9,
  5: 9,
  6: 52,
  7: 16,
  8: 14,
  9: 12,
  10: 30,
};

const absolute = (row: number, column: number): string =>
  cellAddress(row, column).replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");
const place = (row: number, column: number): string => `'${sheetNames.settings}'!${absolute(row, column)}`;

const NOT_USUAL = "not usual: who agreed?";
const NO_ENTRY = "no entry: no answer where it is needed";
const NOT_NUMBER = "not a number";

function noteFormula({ name }: ClinicSetting, row: number): string {
  const [from, to, by] = [columns.from, columns.to, columns.agreedBy].map((column) => cellAddress(row, column));
  const outside = `IF(LEN(TRIM(${by}))=0,"${NOT_USUAL}","")`;
  return `IF(LEN(${name})=0,"${NO_ENTRY}",IF(ISNUMBER(${name}),IF(AND(${name}>=${from},${name}<=${to}),"",${outside}),"${NOT_NUMBER}"))`;
}

function valueCell(one: ClinicSetting, row: number, carried: CarriedSetting | undefined): CellDescription {
  const cell = newValueCell(carried && one.kind === "date" ? { ...one, formula: undefined } : one, row);
  return carried ? { ...cell, value: carried.value } : cell;
}

function newValueCell(one: ClinicSetting, row: number): CellDescription {
  const base = { row, column: columns.value, look: "setting" } as const;
  if (one.kind === "number") {
    const [least, most] = one.allowed;
    const validation: Validation = {
      kind: "number",
      least,
      most,
      title: one.label,
      sentence: `From ${least} to ${most} ${one.unit} is usual. Keep this entry?`,
      severity: "ask",
      hint: one.range ? `Sources say: ${one.range.words}` : "No published source.",
    };
    return { ...base, value: one.default, format: PLAIN, validation };
  }
  if (one.kind === "date") {
    return { ...base, value: one.formula ? "" : null, format: DATE, ...(one.formula && { formula: one.formula }) };
  }
  const validation: Validation | undefined = one.words && {
    kind: "list",
    words: one.words,
    title: one.label,
    sentence: `Choose one of: ${one.words.join("; ")}.`,
    severity: "stop",
  };
  return { ...base, value: one.default, format: TEXT, ...(validation && { validation }) };
}

function settingCells(
  one: ClinicSetting,
  row: number,
  carried: CarriedSetting | undefined,
): readonly CellDescription[] {
  const text = (column: number, value: Cell): CellDescription => ({ row, column, value, look: "text", wrap: true });
  const allowed = one.kind === "number" ? one.allowed : null;
  return [
    text(columns.setting, one.label),
    valueCell(one, row, carried),
    text(columns.unit, one.unit),
    text(columns.range, one.range?.words ?? ""),
    ...(allowed ? [text(columns.from, allowed[0]), text(columns.to, allowed[1])] : []),
    text(columns.source, one.source),
    text(columns.evidence, one.evidence),
    { row, column: columns.agreedBy, value: carried?.agreedBy ?? null, look: "setting", format: TEXT },
    { row, column: columns.agreedOn, value: carried?.agreedOn ?? null, look: "setting", format: DATE },
    ...(allowed
      ? [{ row, column: columns.note, formula: noteFormula(one, row), look: "text", wrap: true } as const]
      : []),
  ];
}

type CarriedEntries = Pick<Carried, "settings" | "reasons">;

export interface SettingsSheet {
  readonly sheet: SheetDescription;
  readonly names: readonly NameDescription[];
}

/** @param carried what the clinic has entered in an older caseload */
export function settingsSheet(isInvented: boolean, carried?: CarriedEntries): SettingsSheet {
  const cells: CellDescription[] = [...lines("Clinic settings", isInvented, columns.range + 1)];
  const names: NameDescription[] = [];
  let row = headerRow;
  headers.forEach((value, column) => cells.push({ row, column, value, look: "typedHeader", wrap: true }));
  row += 1;
  for (const { heading, settings } of settingGroups) {
    cells.push({ row, column: 0, value: heading, look: "heading" });
    row += 1;
    for (const one of settings) {
      cells.push(...settingCells(one, row, carried?.settings.get(one.name)));
      names.push({ name: one.name, refersTo: place(row, columns.value) });
      row += 1;
    }
  }

  cells.push({ row, column: 0, value: "Read by the formulas: leave as it is", look: "heading" });
  row += 1;
  for (const one of Object.values(readiness)) {
    cells.push({ row, column: 0, value: one.label, look: "text" });
    cells.push({ row, column: columns.value, formula: readyFormula(one), look: "computed" });
    names.push({ name: one.name, refersTo: place(row, columns.value) });
    row += 1;
  }

  for (const [name, one] of Object.entries(countedDays)) {
    cells.push({ row, column: 0, value: one.label, look: "text" });
    cells.push({ row, column: columns.value, formula: countedDayFormula(one), look: "computed", format: DATE });
    names.push({ name, refersTo: place(row, columns.value) });
    row += 1;
  }

  cells.push({ row, column: 0, value: SCHEMA_LABEL, look: "text" });
  cells.push({ row, column: columns.value, value: SCHEMA, look: "computed" });
  names.push({ name: SCHEMA_NAME, refersTo: place(row, columns.value) });
  row += 1;

  cells.push({ row, column: 0, value: "Reasons for a change", look: "heading" });
  cells.push(
    { row, column: 1, value: "Failed", look: "heading" },
    { row, column: 2, value: "Unplanned", look: "heading" },
  );
  const first = row + 1;
  const answer = (is: boolean) => (is ? "yes" : "no");
  const ours = reasons.map(({ word, failed, unplanned }) => ({
    ...{ word, failed: answer(failed), unplanned: answer(unplanned) },
  }));
  for (const { word, failed, unplanned } of carried?.reasons ?? ours) {
    row += 1;
    cells.push({ row, column: 0, value: word, look: "text" });
    cells.push({ row, column: 1, value: failed, look: "setting" });
    cells.push({ row, column: 2, value: unplanned, look: "setting" });
  }
  const list = (name: string, column: number): NameDescription => ({
    name,
    refersTo: `${place(first, column)}:${absolute(row, column)}`,
  });
  names.push(list("Reason_List", 0), list("Reason_Failed", 1), list("Reason_Unplanned", 2));

  for (const { heading, rows, lists } of readByFormulas) {
    row += 2;
    heading.forEach((value, column) => cells.push({ row, column, value, look: "heading" }));
    for (const [name, column] of Object.entries(lists))
      names.push({ name, refersTo: `${place(row + 1, column)}:${absolute(row + rows.length, column)}` });
    for (const line of rows) {
      row += 1;
      line.forEach(({ value, ...cell }, column) =>
        cells.push({ ...cell, row, column, ...(value !== undefined && { value, look: "text" }) }),
      );
    }
  }

  return {
    names,
    sheet: {
      name: sheetNames.settings,
      cells,
      widths,
      frozen: { rows: headerRow + 1, columns: 1 },
      print: { landscape: true, titleRow: headerRow, footer: FOOTER },
    },
  };
}
