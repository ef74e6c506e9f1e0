/** What becomes of each cell of a column of sizes: read, blank, doubtful, or not read and why. */
import { cellAddress } from "../../../src/columns/formula";
import type { Recipe } from "../../../src/columns/recipes/recipe";
import type { Role } from "../../../src/columns/role";
import { textOf } from "../../../src/columns/sheet-block";
import { CellError, SheetError } from "../../../src/worksheet/error";
import type { Value } from "../../workbook/port";
import { MADE_A_DATE } from "../list/shown-dates";
import type { Reading, SizeCell, SizeCells, SizeGroup, Way } from "./interface";
import { noSettings, ways } from "./ways";

/** Longer texts are cut short in the list of what was not read. */
const LONGEST = 60;

export interface SizesRead {
  readonly reading: Reading;
  /** What each cell's formula will give. */
  readonly results: readonly Value[];
}

interface CellRead {
  readonly result: Value;
  /** Why it was not read or wants a look; null for neither. */
  readonly reason: string | null;
}

export function readSizes({ area, values, shownDates }: SizeCells, way: Way): SizesRead {
  const unread = new Map<string, SizeCell[]>();
  const doubts = new Map<string, SizeCell[]>();
  const readCell = reader(way);
  let blank = 0;
  const results = values.map((value, i): Value => {
    const date = shownDates.get(i);
    const { result, reason: plain } = readCell(value);
    const reason = date === undefined || typeof result === "number" ? plain : MADE_A_DATE;
    if (result === "") blank += 1;
    else if (reason !== null) {
      const into = typeof result === "number" ? doubts : unread;
      const cell = cellAt(area.top + i, area.left, date ?? value);
      const group = into.get(reason);
      if (group) group.push(cell);
      else into.set(reason, [cell]);
    }
    return result;
  });
  const notRead = total(unread);
  return {
    reading: {
      of: values.length,
      read: values.length - blank - notRead,
      blank,
      notRead,
      doubtful: total(doubts),
      unread: inOrder(unread),
      doubts: inOrder(doubts),
    },
    results,
  };
}

/** A long column holds few different sizes: each is read once. */
function reader(way: Way): (value: Value) => CellRead {
  const { recipe, role } = ways[way];
  const known = new Map<string | number, CellRead>();
  return (value) => {
    const key = typeof value === "string" || typeof value === "number" ? value : null;
    const before = key === null ? undefined : known.get(key);
    if (before) return before;
    const answer = recipe.answer({ [role]: value }, noSettings);
    const read = {
      result: answer instanceof SheetError ? new CellError(answer.code) : answer,
      reason: answer === "" ? null : reasonFor(recipe, role, value),
    };
    if (key !== null) known.set(key, read);
    return read;
  };
}

/** The reason without the cell's own text in it, so that cells with the same reason stand together; null for none. */
function reasonFor(recipe: Recipe, role: Role, value: Value): string | null {
  if (value instanceof CellError) return "is an error";
  const problem = recipe.problem({ [role]: value }, noSettings);
  return problem && (problem.error?.bare().said({ cell: "it" }) ?? problem.reason);
}

function cellAt(row: number, column: number, value: Value): SizeCell {
  const text = textOf(value).replace(/\s+/gu, " ").trim();
  return {
    address: cellAddress(row, column),
    row: row + 1,
    text: text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text,
  };
}

const total = (groups: ReadonlyMap<string, readonly SizeCell[]>): number =>
  [...groups.values()].reduce((sum, cells) => sum + cells.length, 0);

const inOrder = (groups: ReadonlyMap<string, readonly SizeCell[]>): readonly SizeGroup[] =>
  [...groups]
    .map(([reason, cells]) => ({ reason, cells }))
    .sort((a, b) => b.cells.length - a.cells.length || a.cells[0]!.row - b.cells[0]!.row);
