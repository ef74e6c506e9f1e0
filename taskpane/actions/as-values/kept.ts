/**
 * What was there before a column was kept as values: its formula, by the headers that it reads, in a name of the workbook.
 * A name is kept by every program; a note is not.
 */
import { quoted, type ColumnSlot, type FormulaTemplate } from "../../../src/columns/formula";
import { parse } from "../../../src/formula/parse";
import { tokens } from "../../../src/formula/tokens";
import type { Node } from "../../../src/formula/tree";
import { columnNumber } from "../../../src/formula/words";
import type { NameOverview } from "../../workbook/port";
import type { SurveyedList } from "../list/interface";

export interface Kept {
  /** The list as people know it: "table Caseload on sheet Adults". */
  readonly list: string;
  readonly header: string;
  /** "1 Dec 2026" */
  readonly day: string;
  /** Texts as they are, columns by their header. */
  readonly formula: readonly (string | { readonly of: string })[];
}

const NAME = /^As_values_(\d+)$/i;
/** Excel takes no longer text into a formula. */
const LONGEST_TEXT = 250;

export function keptIn(names: readonly NameOverview[]): readonly (Kept & { readonly name: string })[] {
  return names
    .filter(({ name }) => NAME.test(name))
    .sort((one, other) => numberOf(one.name) - numberOf(other.name))
    .flatMap(({ name, refersTo }) => {
      const kept = read(refersTo);
      return kept ? [{ ...kept, name }] : [];
    });
}

const numberOf = (name: string): number => Number(NAME.exec(name)?.[1] ?? 0);

/** So many names of that kind are there already. */
export const nextNumber = (names: readonly NameOverview[]): number =>
  1 + Math.max(0, ...names.map(({ name }) => numberOf(name)));

export const keptName = (number: number): string => `As_values_${number}`;

/** As a name's formula: a text in pieces. */
export function written(kept: Kept): string {
  const text = JSON.stringify(kept);
  const pieces: string[] = [];
  for (let at = 0; at < text.length; at += LONGEST_TEXT) pieces.push(quoted(text.slice(at, at + LONGEST_TEXT)));
  return `=${pieces.join("&")}`;
}

function read(refersTo: string): Kept | null {
  try {
    const found = JSON.parse(textOf(parse(refersTo.replace(/^=/, ""))) ?? "") as Kept;
    return typeof found.header === "string" && Array.isArray(found.formula) ? found : null;
  } catch {
    return null;
  }
}

function textOf(node: Node): string | null {
  if (node.is === "text") return node.value;
  if (node.is !== "operator" || node.sign !== "&") return null;
  const parts = node.parts.map(textOf);
  return parts.includes(null) ? null : parts.join("");
}

const CELL = /^([A-Z]{1,3})\d+$/i;
const COLUMN = /^\[(?:@|\[#This Row\],)\[?((?:'.|[^'[\]])+)\]*\]$/i;

/** A formula of one row with its cells by their headers; null where it reads what is no cell of its row. */
export function byHeaders(formula: string, list: SurveyedList): Kept["formula"] | null {
  const found: (string | { of: string })[] = [];
  const all = tokens(formula.replace(/^=/, ""));
  for (const [at, { kind, text }] of all.entries()) {
    const cell = kind === "word" && all[at + 1]?.text !== "(" ? CELL.exec(text) : null;
    if (cell) {
      const column = list.columns[columnNumber(cell[1]!.toUpperCase()) - 1 - list.area.left];
      if (!column || all[at - 1]?.text === "!") return null;
      found.push({ of: column.header });
    } else if (kind === "bracket") {
      const header = COLUMN.exec(text)?.[1]?.replace(/'(.)/g, "$1");
      if (header === undefined) return null;
      found.push({ of: header });
    } else if (!(kind === "word" && all[at + 1]?.kind === "bracket")) found.push(text);
  }
  return found;
}

/** The formula for the list as it stands now; or the header that is no longer there. */
export function templateOf({ formula }: Kept, list: SurveyedList): FormulaTemplate | { readonly missing: string } {
  const found: (string | ColumnSlot)[] = [];
  for (const part of formula) {
    if (typeof part === "string") {
      found.push(part);
      continue;
    }
    const column = list.columns.find(({ header }) => header.toLowerCase() === part.of.toLowerCase());
    if (!column || column.sharesHeader) return { missing: part.of };
    found.push({ header: column.header, index: column.index });
  }
  return found;
}
