/** How cells look, in Excel's terms; only what differs from the default is kept. */
import { bottom, right } from "../../../taskpane/workbook/area";
import type { Area } from "../../../taskpane/workbook/port";
import type { Sheet } from "../../../taskpane/workbook/fake/book";
import { ApiError, type ExcelObject, type Json, type Property } from "./objects";

const EDGES = ["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight", "InsideHorizontal", "InsideVertical"];

const DEFAULTS: Readonly<Record<string, Json>> = {
  "font/name": "Calibri",
  "font/size": 11,
  "font/color": "#000000",
  "font/bold": false,
  "font/italic": false,
  "font/underline": "None",
  "fill/color": "#FFFFFF",
  "fill/pattern": "None",
  horizontalAlignment: "General",
  verticalAlignment: "Bottom",
  wrapText: false,
  ...Object.fromEntries(
    EDGES.flatMap((edge) => [
      [`borders/${edge}/style`, "None"],
      [`borders/${edge}/weight`, "Thin"],
      [`borders/${edge}/color`, "#000000"],
    ]),
  ),
};

const STANDARD_WIDTH = 48;

export class Looks {
  private readonly cells = new Map<string, Json>();
  private readonly widths = new Map<string, number>();

  get(sheet: Sheet, row: number, column: number, trait: string): Json {
    if (trait === "font/bold") return sheet.cell(row, column)?.bold ?? false;
    return this.cells.get(`${sheet.id}/${row}/${column}/${trait}`) ?? DEFAULTS[trait]!;
  }

  set(sheet: Sheet, row: number, column: number, trait: string, value: Json): void {
    if (!(trait in DEFAULTS)) throw new ApiError("ApiNotFound", `format/${trait}`);
    if (trait === "font/bold") sheet.made(row, column).bold = value === true;
    else this.cells.set(`${sheet.id}/${row}/${column}/${trait}`, value);
    if (trait === "fill/color") this.set(sheet, row, column, "fill/pattern", "Solid");
  }

  forget(sheet: Sheet, row: number, column: number): void {
    for (const trait of Object.keys(DEFAULTS)) this.cells.delete(`${sheet.id}/${row}/${column}/${trait}`);
  }

  copy(sheet: Sheet, from: { row: number; column: number }, to: { row: number; column: number }): void {
    this.forget(sheet, to.row, to.column);
    for (const trait of Object.keys(DEFAULTS)) {
      const value = this.cells.get(`${sheet.id}/${from.row}/${from.column}/${trait}`);
      if (value !== undefined) this.cells.set(`${sheet.id}/${to.row}/${to.column}/${trait}`, value);
    }
  }

  /** Cells that move take their looks with them. */
  move(sheet: Sheet, isMoved: (row: number, column: number) => boolean, by: number): void {
    const moved = [...this.cells].flatMap(([key, value]) => {
      const [id, row, column, ...trait] = key.split("/");
      return id === sheet.id && isMoved(Number(row), Number(column)) ? [{ key, value, row, column, trait }] : [];
    });
    for (const { key } of moved) this.cells.delete(key);
    for (const { value, row, column, trait } of moved)
      this.cells.set(`${sheet.id}/${Number(row) + by}/${column}/${trait.join("/")}`, value);
  }

  /** Of several ranges: what is set is set in each of them. */
  formats(sheet: Sheet, areas: readonly Area[]): ExcelObject {
    const each = areas.map((area) => this.format(sheet, area, () => undefined));
    const all = (type: string, objects: readonly ExcelObject[], names: readonly string[]): ExcelObject => ({
      type,
      properties: Object.fromEntries(
        names.map((name) => [
          name,
          { get: () => null, set: (value: Json) => objects.forEach((one) => one.properties![name]!.set!(value)) },
        ]),
      ),
    });
    const parts = (name: string) => each.map((one) => one.parts![name]!());
    return {
      ...all("RangeFormat", each, ["wrapText"]),
      parts: {
        font: () => all("RangeFont", parts("font"), ["color", "bold"]),
        fill: () => all("RangeFill", parts("fill"), ["color"]),
      },
    };
  }

  /** The format of a range: null where its cells differ. */
  format(sheet: Sheet, area: Area, mayWrite: () => void): ExcelObject {
    const each = (visit: (row: number, column: number) => void) => {
      for (let row = area.top; row < bottom(area); row++)
        for (let column = area.left; column < right(area); column++) visit(row, column);
    };
    const trait = (name: string): Property => ({
      get: () => {
        const first = this.get(sheet, area.top, area.left, name);
        let isSame = true;
        each((row, column) => (isSame &&= this.get(sheet, row, column, name) === first));
        return isSame ? first : null;
      },
      set: (value) => {
        mayWrite();
        each((row, column) => this.set(sheet, row, column, name, value));
      },
    });
    const traits = (prefix: string, names: readonly string[]) =>
      Object.fromEntries(names.map((name) => [name, trait(prefix + name)]));
    return {
      type: "RangeFormat",
      properties: {
        ...traits("", ["horizontalAlignment", "verticalAlignment", "wrapText"]),
        columnWidth: {
          get: () => this.widths.get(`${sheet.id}/${area.left}`) ?? STANDARD_WIDTH,
          set: (width) => {
            mayWrite();
            this.widths.set(`${sheet.id}/${area.left}`, width as number);
          },
        },
      },
      parts: {
        font: () => ({
          type: "RangeFont",
          properties: traits("font/", ["name", "size", "color", "bold", "italic", "underline"]),
        }),
        fill: () => ({
          type: "RangeFill",
          properties: traits("fill/", ["color", "pattern"]),
          methods: {
            Clear: () => {
              mayWrite();
              each((row, column) => {
                this.cells.delete(`${sheet.id}/${row}/${column}/fill/color`);
                this.cells.delete(`${sheet.id}/${row}/${column}/fill/pattern`);
              });
            },
          },
        }),
        borders: () => ({
          type: "RangeBorderCollection",
          item: (edge) =>
            EDGES.includes(edge)
              ? { type: "RangeBorder", properties: traits(`borders/${edge}/`, ["style", "weight", "color"]) }
              : undefined,
        }),
      },
      methods: {
        AutofitColumns: () => {
          mayWrite();
          for (let column = area.left; column < right(area); column++) {
            let longest = 0;
            for (let row = area.top; row < bottom(area); row++)
              longest = Math.max(longest, String(sheet.value(row, column) ?? "").length);
            this.widths.set(`${sheet.id}/${column}`, longest * 6);
          }
        },
      },
    };
  }
}
