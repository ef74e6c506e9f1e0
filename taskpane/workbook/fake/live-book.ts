/** The workbook in memory as it stands: what it tells, and what a person does at the sheet. */
import type { Cell } from "../../../src/worksheet/cell";
import { CellError } from "../../../src/worksheet/error";
import { overlaps, parseArea, parsePlace } from "../area";
import type { Area, Block, Facet, Overview, Place, Stop, Value } from "../port";
import { Book, GENERAL, type Calculate, type Name, type Sheet } from "./book";
import type { WorkbookDescription } from "./description";

export class FakeLiveBook {
  readonly book: Book;
  private readonly listeners = new Set<() => void>();

  constructor(description: WorkbookDescription, calculate?: Calculate) {
    this.book = new Book(description, calculate);
  }

  /** What a person does at the sheet, behind the pane's back. A text that begins with "=" is a formula. */
  type(sheet: string, address: string, typed: Value): void {
    const place = parseArea(address)!;
    this.sheet(sheet).type(place.top, place.left, typed);
    this.tell();
  }

  isBold(sheet: string, address: string): boolean {
    const place = parseArea(address)!;
    return this.sheet(sheet).cell(place.top, place.left)?.bold ?? false;
  }

  async overview(): Promise<Overview> {
    const { book } = this;
    return {
      book: book.title,
      title: book.title,
      dateSystem: book.dateSystem,
      sheets: book.sheets.map((sheet) => ({
        id: sheet.id,
        name: sheet.name,
        kind: sheet.kind,
        hidden: sheet.hidden,
        isProtected: sheet.isProtected,
        used: sheet.used(),
      })),
      tables: book.sheets.flatMap((sheet) =>
        sheet.tables.map((table) => ({
          name: table.name,
          sheet: sheet.id,
          area: table.area,
          columns: [...table.columns],
          hasHeader: table.hasHeader,
          hasTotals: table.hasTotals,
          isFiltered: table.filteredRows.size > 0,
        })),
      ),
      names: book.names.map((name) => ({ ...name, value: this.behind(name) })),
      selection: book.selection && { sheet: book.selection.sheet.id, area: book.selection.area },
    };
  }

  async read(place: Place, what: readonly Facet[]): Promise<Block> {
    const { sheet, area } = this.stand(place);
    const rows = <T>(each: (row: number, column: number) => T): T[][] =>
      Array.from({ length: area.rows }, (_, r) =>
        Array.from({ length: area.columns }, (_, c) => each(area.top + r, area.left + c)),
      );
    return {
      sheet: sheet.id,
      area,
      ...(what.includes("values") && { values: rows((r, c) => sheet.value(r, c)) }),
      ...(what.includes("formulas") && { formulas: rows((r, c) => sheet.cell(r, c)?.formula ?? null) }),
      ...(what.includes("formats") && { formats: rows((r, c) => sheet.cell(r, c)?.format ?? GENERAL) }),
      ...(what.includes("hidden") && {
        hidden: Array.from({ length: area.rows }, (_, r) => sheet.isHiddenRow(area.top + r)),
      }),
      ...(what.includes("merges") && { merges: sheet.merges.filter((merge) => overlaps(merge, area)) }),
    };
  }

  async reveal(place: Place): Promise<void> {
    const { sheet, area } = this.stand(place);
    sheet.hidden = false;
    this.book.select(sheet.id, area);
    this.tell();
  }

  onChange(listen: () => void): Stop {
    this.listeners.add(listen);
    return () => this.listeners.delete(listen);
  }

  protected tell(): void {
    for (const listen of this.listeners) listen();
  }

  protected sheet(idOrName: string): Sheet {
    const sheet = this.book.sheet(idOrName);
    if (!sheet) throw new Error(`no sheet ${idOrName}`);
    return sheet;
  }

  private stand(place: Place): { sheet: Sheet; area: Area } {
    if ("sheet" in place) return { sheet: this.sheet(place.sheet), area: place.area };
    const found = this.book.table(place.table);
    if (!found) throw new Error(`no table ${place.table}`);
    return { sheet: found.sheet, area: found.table.area };
  }

  /** A name's value: its cell's where it stands for one. */
  private behind({ refersTo, value }: Name): Cell {
    const place = parsePlace(refersTo);
    if (!place || place.area.rows * place.area.columns !== 1) return value;
    const held = this.sheet(place.sheetName).value(place.area.top, place.area.left);
    return held instanceof CellError ? null : held;
  }
}
