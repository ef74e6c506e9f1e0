/** Which cells a formula of a file reads, as far as its text tells. */
import { readArea, type Area as Reference } from "../../../../src/formula/areas";
import { sheetNameIn } from "../../../../src/formula/sheet-names";
import type { DefinedName } from "../../package";
import type { Area } from "../../port";
import { fromFile } from "./dialect";
import type { Readers } from "./readable";
import { mayBeStructured, structuredToA1, type Standing } from "./structured";
import { isFunctionName, tokens } from "./tokens";

export interface Input {
  readonly sheetName: string;
  readonly area: Area;
}

/** They read what their text does not name. */
const ANYWHERE = new Set(["INDIRECT", "OFFSET", "ANCHORARRAY", "_XLFN.ANCHORARRAY", "CELL"]);
/** Names that stand on names, and would otherwise go round. */
const DEEPEST = 20;

/** Names by how they are spelled, in lower case. */
export type Names = ReadonlyMap<string, readonly DefinedName[]>;

export function namesBySpelling(names: readonly DefinedName[]): Names {
  const bySpelling = new Map<string, DefinedName[]>();
  for (const name of names) {
    const alike = bySpelling.get(name.name.toLowerCase());
    if (alike) alike.push(name);
    else bySpelling.set(name.name.toLowerCase(), [name]);
  }
  return bySpelling;
}

/** @returns null where the text does not tell which cells it reads */
export function inputsOf(
  formula: string,
  standing: Standing,
  readers: Readers,
  names: Names,
  depth = 0,
): readonly Input[] | null {
  const plain = fromFile(formula);
  const written = mayBeStructured(plain, readers.tables) ? structuredToA1(plain, readers.tables, standing) : plain;
  if (written === undefined || depth > DEEPEST) return null;
  const all = tokens(written).filter(({ text }) => text.trim() !== "");
  const inputs: Input[] = [];
  for (let at = 0; at < all.length; at++) {
    const token = all[at]!;
    if (token.text === "#") return null;
    const isOtherBook = token.kind === "bracket" || (token.kind === "sheet" && token.text.includes("["));
    if (isOtherBook) {
      // its cells are not here; a bracket without a sheet behind it says what only the file's own program knows
      const mark = all.findIndex(({ text }, place) => place > at && text === "!");
      if (mark < 0 || mark > at + 2) return null;
      at = mark + (all[mark + 2]?.text === ":" ? 3 : 1);
      continue;
    }
    if (token.kind !== "word" && token.kind !== "sheet") continue;
    if (isFunctionName(all, at)) {
      if (ANYWHERE.has(token.text.toUpperCase())) return null;
      continue;
    }
    const isNamed = all[at + 1]?.text === "!";
    const sheetName = isNamed ? sheetNameIn(token) : standing.sheetName;
    const first = at + (isNamed ? 2 : 0);
    // several sheets at once, or a range that a function ends
    if (isNamed && (all[at - 1]?.text === ":" || sheetName.includes(":"))) return null;
    if (all[first + 1]?.text === ":" && all[first + 2]?.kind !== "word") return null;
    const isRange = all[first + 1]?.text === ":";
    if (isRange && (isFunctionName(all, first + 2) || all[first + 3]?.text === "!")) return null;
    const text = (all[first]?.text ?? "") + (isRange ? `:${all[first + 2]!.text}` : "");
    const reference = readArea(text);
    at = first + (isRange ? 2 : 0);
    // what a name says without $ means other cells from each cell that uses it
    if (reference && depth > 0 && !isFixed(reference)) return null;
    if (reference) inputs.push({ sheetName, area: areaOf(reference) });
    else if (isRange) return null;
    else {
      const name = named(names, text, sheetName);
      const behind = name ? inputsOf(name.text, standing, readers, names, depth + 1) : [];
      if (!behind) return null;
      inputs.push(...behind);
    }
  }
  return inputs;
}

const isFixed = ({ top, bottom, left, right }: Reference): boolean =>
  [top, bottom, left, right].every((line) => line.isFixed);

const areaOf = ({ top, bottom, left, right }: Reference): Area => ({
  top: top.at,
  left: left.at,
  rows: bottom.at - top.at + 1,
  columns: right.at - left.at + 1,
});

/** The sheet's own name before the whole workbook's. */
function named(names: Names, name: string, sheetName: string): DefinedName | undefined {
  const alike = names.get(name.toLowerCase()) ?? [];
  return alike.find((one) => one.sheetName === sheetName) ?? alike.find((one) => one.sheetName === undefined);
}
