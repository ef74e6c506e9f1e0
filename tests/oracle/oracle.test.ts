/** The caseload's formulas, as the reader works them out, against what the second writing of the rules said (README.md). */
import { describe, expect, it } from "vitest";
import type { BookDescription, CellDescription } from "../../src/caseload/book";
import { caseloadBookOf } from "../../src/caseload/index";
import { rowsTables, sheetNames, type RowsTable } from "../../src/caseload/names";
import { columnsOf } from "../../src/caseload/tables";
import { urgencies } from "../../src/caseload/urgency";
import { areaOfName } from "../examples/caseload/named-cells";
import { readerOf } from "../laws/described-reader";
import { caseloads, corrected, edits, plain, settings, type Cell, type Frozen } from "./frozen";

const ALL = ["fit", "plan", "spare"] as const;

/** As if somebody had typed it there. */
function bookOf({ rows, groups, today, settings, reasons }: Frozen): BookDescription {
  const book = caseloadBookOf(rows, { asOf: today, groups, people: "none" });
  const typed = new Map<string, CellDescription>();
  const type = (name: string, line: number, value: CellDescription["value"]): void => {
    const { top, left } = areaOfName(book, name);
    typed.set(`${top + line} ${left}`, { row: top + line, column: left, value: value ?? null });
  };
  for (const [name, value] of settings) type(name, 0, value as CellDescription["value"]);
  reasons.forEach((cells, line) =>
    ["Reason_List", "Reason_Failed", "Reason_Unplanned"].forEach((name, i) =>
      type(name, line, cells[i] as CellDescription["value"]),
    ),
  );
  const sheets = book.sheets.map((sheet) =>
    sheet.name === sheetNames.settings
      ? { ...sheet, cells: sheet.cells.map((cell) => typed.get(`${cell.row} ${cell.column}`) ?? cell) }
      : sheet,
  );
  return { ...book, sheets };
}

/** Where a cell of a list stands on its sheet. */
function placeOf(book: BookDescription, { table, place, header }: Cell) {
  const sheet = book.sheets.find(({ name }) => name === sheetNames[table])!;
  const { top, left, columns } = sheet.table!;
  const column = columns.findIndex((one) => one.header === header);
  if (column < 0) throw new Error(`${sheet.name} has no column ${header}`);
  return { sheet: sheet.name, row: top + 1 + place, column: left + column };
}

const line = ({ table, place, header, value }: Cell): string => `${table} ${place}, ${header}: ${String(plain(value))}`;

describe("the formulas say what the rules said", () => {
  it.each(caseloads.map((one) => [one.what, one] as const))("%s", (_, frozen) => {
    const book = bookOf(frozen);
    const reader = readerOf(book, frozen.today);
    const otherwise = frozen.answers
      .map((cell) => ({ ...cell, found: reader.at(placeOf(book, cell)) }))
      .filter(({ found, value }) => plain(found) !== plain(value));
    expect(otherwise).toEqual([]);
  });

  /** Answers that are other ones after a change; the reader works out only what hangs on it. */
  function follow(start: Frozen) {
    const book = bookOf(start);
    const reader = readerOf(book, start.today);
    const watched = start.answers.map((cell) => ({ cell, place: placeOf(book, cell) }));
    const now = () => watched.map(({ place }) => plain(reader.at(place)));
    const told = (before: readonly unknown[]): readonly string[] =>
      watched
        .map(({ cell, place }) => ({ ...cell, value: reader.at(place) }))
        .filter(({ value }, at) => plain(value) !== before[at])
        .map(line)
        .sort();
    return { book, reader, now, told };
  }

  it("also while cells change: those that are told, and no others", () => {
    const { book, reader, now, told } = follow(edits.start);
    edits.rounds.forEach(({ cells, give }, i) => {
      const before = now();
      reader.change(cells.map((cell) => ({ ...placeOf(book, cell), value: cell.value })));
      expect(told(before), `edit ${i}`).toEqual(give.map(line).sort());
    });
  });

  it("also with each setting that is missing, impossible or another one", () => {
    const { book, reader, now, told } = follow(settings.start);
    const usual = now();
    for (const { what, settings: those, give } of settings.each) {
      const cells = [...those].map(([name, value]) => {
        const { top: row, left: column } = areaOfName(book, name);
        return { sheet: sheetNames.settings, row, column, value };
      });
      const before = cells.map((cell) => ({ ...cell, value: reader.at(cell) }));
      reader.change(cells);
      expect(told(usual), what).toEqual(give.map(line).sort());
      reader.change(before);
      expect(told(usual), `${what}, and back`).toEqual([]);
    }
  });
});

/**
 * Said on no row: the line above each list says `no number to call`, and so does the pane (docs/decisions.md); `nothing
 * came` has come in since and stands in the tests by hand.
 */
const ON_NO_ROW: readonly string[] = ["no number to call", "nothing came"];

describe("what was written down tests something", () => {
  const said = new Map<string, Set<string>>();
  for (const answers of [...caseloads.map((one) => one.answers), ...settings.each.map(({ give }) => give)])
    for (const { table, header, value } of answers) {
      const key = `${table} ${header}`;
      const there = said.get(key) ?? new Set();
      said.set(key, there.add(String(plain(value))));
    }
  const wordsOf = (table: RowsTable, header: string): ReadonlySet<string> => said.get(`${table} ${header}`)!;
  /** "…" stands for days or a date. */
  const isSaid = (words: ReadonlySet<string>, word: string): boolean => {
    const parts = word.split("…").map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
    const whole = new RegExp(`^${parts.join(".+")}$`, "u");
    return [...words].some((one) => whole.test(one));
  };

  it("every column in sight, with more than one answer", () => {
    for (const table of rowsTables)
      for (const { header, kind, isHidden } of columnsOf(table, ALL))
        if (kind === "computed" && !isHidden) expect(wordsOf(table, header)?.size, header).toBeGreaterThan(1);
  });
  it("every word that has a colour", () => {
    const missing = rowsTables.flatMap((table) => {
      const columns = columnsOf(table, ALL).filter(({ kind, rules }) => kind === "computed" && Array.isArray(rules));
      // columns that share their colours share a list of words
      return columns.flatMap(({ header, rules }) => {
        const sharing = columns.filter((one) => one.rules === rules).map((one) => one.header);
        return (rules as readonly { words?: readonly string[] }[])
          .flatMap(({ words = [] }) => words)
          .filter((word) => !ON_NO_ROW.includes(word) && !sharing.some((one) => isSaid(wordsOf(table, one), word)))
          .map((word) => `${header}: ${word}`);
      });
    });
    expect(missing).toEqual([]);
  });
  it("every word of To do", () => {
    expect(
      urgencies.filter(({ word }) => !ON_NO_ROW.includes(word) && !isSaid(wordsOf("tubes", "To do"), word)),
    ).toEqual([]);
  });
  it("many edits, of which most change an answer", () => {
    const telling = edits.rounds.filter(({ give }) => give.length > 0).length;
    expect(telling).toBeGreaterThan(edits.rounds.length / 2);
  });
  it("with a reason for every correction", () => {
    for (const { because } of corrected) expect(because.length).toBeGreaterThan(20);
  });
});
