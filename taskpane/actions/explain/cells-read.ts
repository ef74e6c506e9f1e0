/** The cells that a formula reads, and the reader of formulas (src/formula/reader) that works its pieces out from them. */
import { readArea } from "../../../src/formula/areas";
import { ourFunctions } from "../../../src/formula/reader/our-functions";
import { Reader, type BookName } from "../../../src/formula/reader/reader";
import { functionInCapitals } from "../../../src/formula/ours";
import { parse } from "../../../src/formula/parse";
import { pieces, type Node } from "../../../src/formula/tree";
import type { Matrix } from "../../../src/worksheet/cell";
import type { SheetFunction } from "../../../src/worksheet/define";
import type { NameOverview, Overview, Value, Workbook } from "../../workbook/port";
import { cellsOf, geometryOf, type Cells, type Standing } from "./references";

/** So many cells are read for one explanation; more would keep people waiting. */
const MOST_CELLS = 200_000;

export class CellsRead {
  private readonly reader: Reader;
  private readonly sheetNames: ReadonlyMap<string, string>;
  /** By what was read; null: too many. */
  private readonly blocks = new Map<string, Promise<Matrix<Value> | null>>();

  constructor(
    private readonly workbook: Workbook,
    private readonly overview: Overview,
    functions: readonly SheetFunction[],
    private readonly standing: Standing,
  ) {
    const ours = ourFunctions(functions);
    this.sheetNames = new Map(overview.sheets.map(({ id, name }) => [id, name]));
    this.reader = new Reader({
      sheets: [...this.sheetNames.values()],
      tables: geometryOf(overview),
      names: overview.names.map(meaningOf),
      today: undefined,
      ours: (name) => ours(functionInCapitals(name)),
    });
  }

  /** Null where it cannot be told which cells are meant. */
  meantBy(reference: string): Cells | null {
    return cellsOf(reference, this.standing, this.overview);
  }

  /** As they stand; null where they are too many. */
  values({ sheet, area }: Cells): Promise<Matrix<Value> | null> {
    const key = JSON.stringify([sheet, area]);
    let found = this.blocks.get(key);
    if (!found) this.blocks.set(key, (found = this.read({ sheet, area })));
    return found;
  }

  private async read({ sheet, area }: Cells): Promise<Matrix<Value> | null> {
    if (area.rows * area.columns > MOST_CELLS) return null;
    const { values = [] } = await this.workbook.read({ sheet, area }, ["values"]);
    const name = this.sheetNames.get(sheet)!;
    values.forEach((row, r) =>
      row.forEach((value, c) => this.reader.put({ sheet: name, row: area.top + r, column: area.left + c }, value)),
    );
    return values;
  }

  /**
   * Reads all cells that a piece of the formula stands on, by way of names too.
   * @returns the text of what is too many cells; else null
   */
  async fetch(node: Node, asked: ReadonlySet<string> = new Set()): Promise<string | null> {
    for (const piece of pieces(node)) {
      const cells = piece.is === "reference" ? this.meantBy(piece.text) : null;
      if (cells && !(await this.values(cells))) return piece.text;
      const name = piece.text.toLowerCase();
      const named = piece.is === "name" && !asked.has(name) && this.overview.names.find((one) => isCalled(one, name));
      if (named && (await this.fetch(parse(named.refersTo), new Set([...asked, name])))) return piece.text;
    }
    return null;
  }

  /**
   * What a piece gives in the formula's own cell. After `fetch`.
   * @throws NotKnown
   */
  worth(text: string): Value | Matrix<Value> {
    const { sheet, row, column } = this.standing;
    return this.reader.worth({ sheet: this.sheetNames.get(sheet)!, row, column }, text);
  }
}

const isCalled = (one: NameOverview, name: string): boolean => one.name.toLowerCase() === name;

const literal = (value: number | string | boolean): string =>
  typeof value === "string" ? `"${value.replaceAll('"', '""')}"` : String(value).toUpperCase();

/** Cells of a name stay cells, where the name means the same ones everywhere. */
function areCells(refersTo: string): boolean {
  const node = parse(refersTo);
  if (node.is !== "reference") return false;
  const area = readArea(node.text);
  return !area || [area.top, area.bottom, area.left, area.right].every(({ isFixed }) => isFixed);
}

/** Of what are no cells, what the host says that it is now, because it may be what only the host knows: today. */
function meaningOf({ name, refersTo, value }: NameOverview): BookName {
  const isGiven = value !== null && !areCells(refersTo);
  return { name, refersTo: isGiven ? literal(value) : refersTo.replace(/^=/, "") };
}
