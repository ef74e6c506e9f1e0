/** Which cells a formula of a file reads, as far as its text tells. */
import { parseArea, SHEET_COLUMNS, SHEET_ROWS } from "../../area";
import type { DefinedName } from "../../package";
import type { Area } from "../../port";
import { fromFile } from "./dialect";
import type { Readers } from "./readable";
import { mayBeStructured, structuredToA1, type Standing } from "./structured";
import { isFunctionName, tokens, type Token } from "./tokens";

export interface Input {
  readonly sheetName: string;
  readonly area: Area;
}

/** They read what their text does not name. */
const ANYWHERE = new Set(["INDIRECT", "OFFSET", "ANCHORARRAY", "_XLFN.ANCHORARRAY", "CELL"]);
/** Names that stand on names, and would otherwise go round. */
const DEEPEST = 20;

const COLUMNS = /^\$?([A-Za-z]{1,3}):\$?([A-Za-z]{1,3})$/;
const ROWS = /^\$?(\d{1,7}):\$?(\d{1,7})$/;

/** A1, B2:C3, A:C or 3:7. */
function areaOf(text: string): Area | null {
  const columns = COLUMNS.exec(text);
  if (columns) {
    const area = parseArea(`${columns[1]}1:${columns[2]}1`);
    return area && { ...area, rows: SHEET_ROWS };
  }
  const rows = ROWS.exec(text);
  if (!rows) return parseArea(text);
  const [one, other] = [Number(rows[1]) - 1, Number(rows[2]) - 1];
  return { top: Math.min(one, other), left: 0, rows: Math.abs(one - other) + 1, columns: SHEET_COLUMNS };
}

const nameOfSheet = ({ kind, text }: Token): string =>
  kind === "sheet" ? text.slice(1, -1).replaceAll("''", "'") : text;

/** @returns null where the text does not tell which cells it reads */
export function inputsOf(
  formula: string,
  standing: Standing,
  readers: Readers,
  names: readonly DefinedName[],
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
    const sheetName = isNamed ? nameOfSheet(token) : standing.sheetName;
    const first = at + (isNamed ? 2 : 0);
    // several sheets at once, or a range that a function ends
    if (isNamed && all[at - 1]?.text === ":") return null;
    if (all[first + 1]?.text === ":" && all[first + 2]?.kind !== "word") return null;
    const isRange = all[first + 1]?.text === ":";
    if (isRange && (isFunctionName(all, first + 2) || all[first + 3]?.text === "!")) return null;
    const text = (all[first]?.text ?? "") + (isRange ? `:${all[first + 2]!.text}` : "");
    const area = areaOf(text);
    at = first + (isRange ? 2 : 0);
    if (area) inputs.push({ sheetName, area });
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

/** The sheet's own name before the whole workbook's. */
function named(names: readonly DefinedName[], name: string, sheetName: string): DefinedName | undefined {
  const alike = names.filter((one) => one.name.toLowerCase() === name.toLowerCase());
  return alike.find((one) => one.sheetName === sheetName) ?? alike.find((one) => one.sheetName === undefined);
}
