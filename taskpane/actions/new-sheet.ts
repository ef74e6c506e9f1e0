/** What is on screen as a sheet of values of its own, behind the others; taken back like every other change. */
import { shortDate } from "../../src/words/date-in-words";
import type { Cell } from "../../src/worksheet/cell";
import { newSheet as words } from "../texts/new-sheet";
import type { Change, Overview, Receipt } from "../workbook/port";
import type { Afterwards } from "./action";

const NOT_IN_NAMES = /[\\/?*[\]:']/gu;
/** A sheet's name has 31 characters at most; some are left for a number. */
const LONGEST = 26;
/** Above the rows: what it is, from when it is, the headers. */
const HEADER_ROW = 2;

function freeName(wanted: string, taken: readonly string[]): string {
  const small = new Set(taken.map((name) => name.toLowerCase()));
  const base = wanted.replace(NOT_IN_NAMES, "-").slice(0, LONGEST).trim();
  for (let n = 1; ; n++) {
    const name = n === 1 ? base : `${base} ${n}`;
    if (!small.has(name.toLowerCase())) return name;
  }
}

export interface SheetOfValues {
  readonly name: string;
  readonly title: string;
  readonly columns: readonly string[];
  readonly widths: readonly number[];
  readonly rows: readonly (readonly Cell[])[];
}

/** @param today stands on the sheet, which does not follow later entries */
export function sheetOfValues(
  { name, title, columns, widths, rows }: SheetOfValues,
  { sheets }: Pick<Overview, "sheets">,
  today: number,
): Change {
  const taken = sheets.map((one) => one.name);
  return {
    steps: [
      {
        kind: "addSheet",
        sheet: {
          name: freeName(name, taken),
          cells: [
            [{ value: title, look: "title" }],
            [words.asOn(shortDate(today))],
            columns.map((value) => ({ value, look: "header" as const })),
            ...rows,
          ],
          widths,
          held: { rows: HEADER_ROW + 1, columns: 0 },
          print: { landscape: true, titleRow: HEADER_ROW, footer: title },
        },
      },
    ],
    expects: [],
  };
}

export const afterSheet = (receipt: Receipt): Afterwards => ({
  outcome: receipt.outcome,
  sentences: [receipt.outcome === "done" ? words.done : receipt.sentence],
  where: receipt.done.find(({ place }) => place !== null)?.place ?? null,
  canTakeBack: receipt.done.some(({ changed }) => changed),
});
