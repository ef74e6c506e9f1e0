/**
 * Whether the engine can work a file's formula out, and how it stands in the grid. A formula it cannot work out (another
 * add-in's function, another workbook, several sheets at once, a data table) stands in the grid as its stored value, and stays in the file.
 */
import { withSheetsSpelled } from "../../../../src/formula/sheet-names";
import type { CellFormula, DefinedName } from "../../package";
import { readsUndrawn, type Extents } from "../open/extent";
import { callsOurs, fromFile } from "./dialect";
import { formOf, type Form } from "./forms";
import { mayBeStructured, structuredToA1, type Standing, type TableGeometry } from "./structured";
import { isFunctionName, tokens } from "./tokens";

export interface Readers {
  readonly tables: readonly TableGeometry[];
  /** Upper case, grid spelling. */
  readonly knowsFunction: (name: string) => boolean;
  /** Names, in lower case, whose meaning the engine cannot work out. */
  readonly darkNames: ReadonlySet<string>;
  /** Names, in lower case, that change by themselves. */
  readonly livingNames: ReadonlySet<string>;
  /** Left out where the grid writes all formulas itself. */
  readonly sheetNames?: readonly string[];
  /** Sheets that reach further than they are drawn: formulas that read beyond keep their stored values. */
  readonly extents?: Extents;
}

export interface GridFormula {
  /** Without "=". */
  readonly text: string;
  /** Worked out at opening although the file holds a result: our own functions, what depends on today, spills. */
  readonly isLiving: boolean;
}

const LIVING = new Set(["TODAY", "NOW", "RAND", "RANDBETWEEN", "RANDARRAY"]);

/** The formula as the grid holds it; null where the stored value stands in for it. */
function inGrid(text: string, standing: Standing, readers: Readers): (GridFormula & Form) | null {
  const plain = fromFile(text);
  const a1 = mayBeStructured(plain, readers.tables) ? structuredToA1(plain, readers.tables, standing) : plain;
  // of a sheet that it does not find the engine reads the formula's own sheet
  const written = a1 && readers.sheetNames ? withSheetsSpelled(a1, readers.sheetNames) : a1;
  if (written === undefined) return null;
  const all = tokens(written);
  const form = formOf(all);
  if (form.unread !== undefined) return null;
  let isLiving = callsOurs(written);
  for (let at = 0; at < all.length; at++) {
    const token = all[at]!;
    if (token.kind === "bracket") return null;
    if (token.kind === "sheet" && token.text.includes("[")) return null;
    if (token.kind !== "word") continue;
    const name = token.text.toUpperCase();
    if (isFunctionName(all, at)) {
      if (
        !readers.knowsFunction(name) &&
        !isBound(
          all.map((one) => one.text.toUpperCase()),
          at,
        )
      )
        return null;
      isLiving ||= LIVING.has(name);
    } else if (readers.darkNames.has(name.toLowerCase())) return null;
    else isLiving ||= readers.livingNames.has(name.toLowerCase());
  }
  if (readers.extents && readsUndrawn(readers.extents, written, standing.sheetName)) return null;
  return { text: written, isLiving, ...form };
}

/** A name that LET gave to a LAMBDA: it is called like a function and is none. */
const isBound = (all: readonly string[], at: number): boolean =>
  (all.includes("LET") || all.includes("LAMBDA")) && all.indexOf(all[at]!) < at;

/** A cell's formula; multi-cell {=old} arrays and data tables are kept as values, because the grid would spill them. */
export function cellInGrid(formula: CellFormula, standing: Standing, readers: Readers): GridFormula | null {
  if (formula.kind === "dataTable") return null;
  if (formula.kind === "array" && !formula.isDynamic && formula.ref?.includes(":")) return null;
  const read = inGrid(formula.text, standing, readers);
  if (!read || (read.isRange && !formula.isDynamic)) return null;
  return { text: read.text, isLiving: read.isLiving || formula.isDynamic === true };
}

export interface NamedFormula {
  readonly name: DefinedName;
  /** Without "="; null where the engine cannot work it out. */
  readonly text: string | null;
}

/**
 * Names may build on names: read again until nothing new turns dark.
 * @param leftOut names, in lower case, that stand in the file only
 */
export function readNames(
  names: readonly DefinedName[],
  given: Pick<Readers, "tables" | "knowsFunction" | "sheetNames" | "extents">,
  leftOut: ReadonlySet<string> = new Set(),
): { readonly named: readonly NamedFormula[]; readonly darkNames: ReadonlySet<string> } {
  const nowhere: Standing = { sheetName: "", row: -1, column: -1 };
  const darkNames = new Set(leftOut);
  const readers: Readers = { ...given, darkNames, livingNames: new Set<string>() };
  let named: NamedFormula[] = [];
  for (let before = -1; before !== darkNames.size;) {
    before = darkNames.size;
    named = names.map((name) => {
      const read = leftOut.has(name.name.toLowerCase()) ? null : inGrid(name.text, nowhere, readers);
      if (!read) darkNames.add(name.name.toLowerCase());
      return { name, text: read?.text ?? null };
    });
  }
  return { named, darkNames };
}

/** Names whose value moves with the calendar: they, and what stands on them, are worked out at opening. */
export function livingNames(named: readonly NamedFormula[]): ReadonlySet<string> {
  const living = new Set<string>();
  for (let before = -1; before !== living.size;) {
    before = living.size;
    for (const { name, text } of named) {
      if (text === null) continue;
      const all = tokens(text);
      const lives = all.some(
        (token, at) =>
          token.kind === "word" &&
          (isFunctionName(all, at) ? LIVING.has(token.text.toUpperCase()) : living.has(token.text.toLowerCase())),
      );
      if (lives) living.add(name.name.toLowerCase());
    }
  }
  return living;
}
