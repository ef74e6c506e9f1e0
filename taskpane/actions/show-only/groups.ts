/** The different values of a column, gathered into what a person would call one choice. */
import { changeStates } from "../../../src/columns/state-words";
import { textOf } from "../../../src/columns/sheet-block";
import { wordKey } from "../../../src/columns/spelling";
import { FRTOMM } from "../../../src/sizes/frtomm";
import { call } from "../../../src/worksheet/call";
import { CellError } from "../../../src/worksheet/error";
import type { Value } from "../../workbook/port";
import type { FacetRole, Group } from "./interface";

const BLANK = "(blank)";
const UNREAD = "cannot be read";
/** So many spellings are named. */
const SPELLINGS = 4;

interface Named {
  readonly key: string;
  readonly label: string;
  /** Smaller stands first. */
  readonly rank: number;
}

const isBlank = (value: Value): boolean => textOf(value).trim() === "";

/** The French size behind a cell, however it was typed. */
function sizeOf(value: Value): Named {
  const millimetres = value instanceof CellError ? value : call(FRTOMM, [value]);
  if (typeof millimetres !== "number") return { key: "unread", label: UNREAD, rank: 1000 };
  const french = Math.round(millimetres * 300) / 100;
  return { key: `size ${french}`, label: `${french} Fr`, rank: french };
}

function wordOf(value: Value, role: FacetRole): Named {
  const word = textOf(value).replace(/\s+/g, " ").trim();
  const key = wordKey(word);
  const state = role === "state" ? changeStates.findIndex((one) => one === key) : -1;
  return { key: `word ${key}`, label: word, rank: state < 0 ? 100 : state };
}

const BLANKS: Named = { key: "blank", label: BLANK, rank: 2000 };

function nameOf(value: Value, role: FacetRole): Named {
  if (isBlank(value)) return BLANKS;
  return role === "size" ? sizeOf(value) : wordOf(value, role);
}

/** @param values of the column, row by row */
export function groupsOf(values: readonly Value[], role: FacetRole): readonly Group[] {
  const found = new Map<string, Named & { readonly spellings: Map<string, Value>; readonly rows: Set<number> }>();
  values.forEach((value, row) => {
    const named = nameOf(value, role);
    const group = found.get(named.key) ?? { ...named, spellings: new Map<string, Value>(), rows: new Set<number>() };
    found.set(named.key, group);
    group.spellings.set(`${typeof value} ${textOf(value)}`, value);
    group.rows.add(row);
  });
  return [...found.values()]
    .sort((a, b) => a.rank - b.rank || b.rows.size - a.rows.size || a.label.localeCompare(b.label, "en"))
    .map(({ key, label, spellings, rows }) => {
      const values = [...spellings.values()];
      return { key, label, values, rows, note: noteOf(key, label, values) };
    });
}

/** How it is written, where the label does not show that. */
function noteOf(key: string, label: string, values: readonly Value[]): string {
  if (key === "blank") return "";
  const spellings = [...new Set(values.map((value) => textOf(value).trim()))];
  if (spellings.length === 1 && (spellings[0] === label || key.startsWith("word "))) return "";
  const named = spellings.slice(0, SPELLINGS).join(" · ");
  return spellings.length > SPELLINGS ? `${named} · …` : named;
}
