/** The different values of a column, gathered into what a person would call one choice. */
import { changeStates } from "../../../src/columns/state-words";
import { textOf } from "../../../src/columns/sheet-block";
import { wordKey } from "../../../src/columns/spelling";
import { FRTOMM } from "../../../src/sizes/frtomm";
import { call } from "../../../src/worksheet/call";
import { kindNamed, kinds, type KindKey } from "../../../src/settings/kinds";
import { CellError } from "../../../src/worksheet/error";
import type { Value } from "../../workbook/port";
import { MADE_A_DATE } from "../list/shown-dates";
import type { FacetRole, Group } from "./interface";

const BLANK = "(blank)";
const UNREAD = "cannot be read";
/** So many spellings are named. */
const SPELLINGS = 4;

interface Named {
  readonly is: "blank" | "size" | "kind" | "word" | "date" | "unread";
  readonly key: string;
  readonly label: string;
  /** Smaller stands first. */
  readonly rank: number;
}

const isBlank = (value: Value): boolean => textOf(value).trim() === "";

/** The French size behind a cell, however it was typed. */
function sizeOf(value: Value): Named {
  const millimetres = value instanceof CellError ? value : call(FRTOMM, [value]);
  if (typeof millimetres !== "number") return { is: "unread", key: "unread", label: UNREAD, rank: 1000 };
  const french = Math.round(millimetres * 300) / 100;
  return { is: "size", key: `size ${french}`, label: `${french} Fr`, rank: french };
}

function wordOf(value: Value, role: FacetRole): Named {
  const word = textOf(value).replace(/\s+/g, " ").trim();
  const key = wordKey(word);
  const state = role === "state" ? changeStates.findIndex((one) => one === key) : -1;
  return { is: "word", key: `word ${key}`, label: word, rank: state < 0 ? 100 : state };
}

const BLANKS: Named = { is: "blank", key: "blank", label: BLANK, rank: 2000 };

/** Behind the words and sizes, before what cannot be read. */
const dateOf = (date: string): Named => ({ is: "date", key: `date ${date}`, label: date, rank: 900 });

/** What a word of the list means; null where that is not known. */
export type KindOf = (word: string) => KindKey | null;

/** The kind behind a word, however the list writes it. */
function kindBehind(value: Value, kindOf: KindOf): Named | null {
  const kind = kindOf(textOf(value));
  if (kind === null) return null;
  const rank = kinds.findIndex(({ key }) => key === kind);
  return { is: "kind", key: `kind ${kind}`, label: kindNamed(kind).label, rank };
}

function nameOf(value: Value, role: FacetRole, date: string | undefined, kindOf: KindOf | null): Named {
  if (isBlank(value)) return BLANKS;
  if (date !== undefined) return dateOf(date);
  if (role === "size") return sizeOf(value);
  return (role === "kind" && kindOf ? kindBehind(value, kindOf) : null) ?? wordOf(value, role);
}

/**
 * @param values of the column, row by row
 * @param dates by row: numbers that their cells show as dates
 * @param kindOf what words for the kind mean; null: they stand for themselves
 */
export function groupsOf(
  values: readonly Value[],
  role: FacetRole,
  dates: ReadonlyMap<number, string> = new Map(),
  kindOf: KindOf | null = null,
): readonly Group[] {
  const found = new Map<string, Named & { readonly spellings: Map<string, Value>; readonly rows: Set<number> }>();
  values.forEach((value, row) => {
    const named = nameOf(value, role, dates.get(row), kindOf);
    const group = found.get(named.key) ?? { ...named, spellings: new Map<string, Value>(), rows: new Set<number>() };
    found.set(named.key, group);
    group.spellings.set(`${typeof value} ${textOf(value)}`, value);
    group.rows.add(row);
  });
  return [...found.values()]
    .sort((a, b) => a.rank - b.rank || b.rows.size - a.rows.size || a.label.localeCompare(b.label, "en"))
    .map((group) => {
      const { key, label, spellings, rows } = group;
      const values = [...spellings.values()];
      return { key, label, values, rows, note: noteOf(group, values) };
    });
}

/** How it is written, where the label does not show that. */
function noteOf({ is, label }: Named, values: readonly Value[]): string {
  if (is === "blank") return "";
  if (is === "date") return MADE_A_DATE;
  const spellings = [...new Set(values.map((value) => textOf(value).trim()))];
  if (spellings.length === 1 && (spellings[0] === label || is === "word")) return "";
  const named = spellings.slice(0, SPELLINGS).join(" · ");
  return spellings.length > SPELLINGS ? `${named} · …` : named;
}
