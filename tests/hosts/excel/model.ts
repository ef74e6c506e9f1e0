/** Excel's workbook, sheets, tables and names, over the workbook in memory. */
import { dataArea, type Book, type Name, type Sheet, type Table } from "../../../taskpane/workbook/fake/book";
import { sortRows } from "../../../taskpane/workbook/fake/rows";
import { parseArea, parsePlace } from "../../../taskpane/workbook/area";
import { ConditionalFormats } from "./conditional";
import { Filters } from "./filters";
import { Looks } from "./looks";
import type { Area } from "../../../taskpane/workbook/port";
import { ApiError, isObject, read, type Argument, type ExcelObject, type Json } from "./objects";
import { protectedError, range, resize, type RangeObject, type World } from "./range";
import { View } from "./view";

/** Events the add-in listens to: those registered now, by Excel's own numbers. */
export const EVENTS: Readonly<Record<string, number>> = {
  "Worksheets.DataChanged": 10,
  "Worksheets.Activated": 11,
  "Worksheets.Added": 13,
  "Worksheets.SelectionChanged": 14,
  "Worksheets.Deleted": 15,
  "Worksheets.RowHiddenChanged": 22,
  "Tables.Added": 102,
  "Tables.Deleted": 103,
};

interface DrawnSeries {
  values: Area | null;
  names: Area | null;
  /** Null: its header's. */
  name: string | null;
}

export interface DrawnChart {
  readonly type: string;
  title: string;
  at: Area | null;
  readonly series: DrawnSeries[];
}

export class Model implements World {
  readonly looks = new Looks();
  readonly filters = new Filters();
  readonly conditional = new ConditionalFormats();
  readonly registered = new Set<number>();
  private readonly views = new Map<Sheet, View>();

  fillsFormulas = true;

  constructor(readonly book: Book) {}

  /** The library's root is the workbook. */
  root(): ExcelObject {
    const { book } = this;
    return {
      type: "Workbook",
      properties: { name: read(() => book.title) },
      parts: {
        application: () => ({ type: "Application", methods: { SuspendScreenUpdatingUntilNextSync: () => undefined } }),
        worksheets: () => this.worksheets(),
        tables: () => this.tables(this.sheets()),
        names: () => this.names(),
      },
      methods: {
        GetSelectedRanges: () => {
          const selected = book.selection;
          if (!selected || selected.sheet.kind === "chart sheet")
            throw new ApiError("InvalidSelection", "The current selection is invalid for this action.");
          return {
            type: "RangeAreas",
            parts: {
              areas: () => ({
                type: "RangeCollection",
                items: () => [range(this, selected.sheet, selected.area)],
              }),
            },
          };
        },
      },
    };
  }

  /** Chart sheets are not among Excel's worksheets. */
  private sheets(): readonly Sheet[] {
    return this.book.sheets.filter((sheet) => sheet.kind === "worksheet");
  }

  private worksheets(): ExcelObject {
    return {
      type: "WorksheetCollection",
      items: () => this.sheets().map((sheet) => this.worksheet(sheet)),
      item: (key) => {
        const sheet = this.sheets().find((one) => one.id === key || one.name.toLowerCase() === key.toLowerCase());
        return sheet && this.worksheet(sheet);
      },
      methods: {
        ...this.events("Worksheets"),
        Add: ([name]) => {
          if (this.book.sheets.some((one) => one.name.toLowerCase() === String(name).toLowerCase()))
            throw new ApiError("ItemAlreadyExists", "A sheet of this name exists.");
          return this.worksheet(this.book.addSheet(String(name)));
        },
        GetItemOrNullObject: ([key]) => {
          const found = this.sheets().find((one) => one.id === key || one.name === key);
          return found ? this.worksheet(found) : null;
        },
      },
    };
  }

  view(sheet: Sheet): View {
    const view = this.views.get(sheet) ?? new View();
    this.views.set(sheet, view);
    return view;
  }

  worksheet(sheet: Sheet): ExcelObject {
    return {
      type: "Worksheet",
      id: sheet.id,
      properties: {
        id: read(() => sheet.id),
        name: read(() => sheet.name),
        visibility: {
          get: () => (sheet.hidden ? "Hidden" : "Visible"),
          set: (value) => (sheet.hidden = value !== "Visible"),
        },
      },
      parts: {
        protection: () => ({ type: "WorksheetProtection", properties: { protected: read(() => sheet.isProtected) } }),
        tables: () => this.tables([sheet]),
        autoFilter: () => this.filters.onSheet(this, sheet),
        freezePanes: () => this.freezePanes(sheet),
        pageLayout: () => this.pageLayout(sheet),
        charts: () => this.charts(sheet),
      },
      methods: {
        GetUsedRangeOrNullObject: () => {
          const used = sheet.used();
          return used ? range(this, sheet, used) : null;
        },
        GetRangeByIndexes: ([top, left, rows, columns]) => {
          const area = { top: Number(top), left: Number(left), rows: Number(rows), columns: Number(columns) };
          if (area.left + area.columns > 16_384 || area.top + area.rows > 1_048_576 || area.left < 0 || area.rows < 1)
            throw new ApiError("InvalidArgument", "The range lies outside the sheet.");
          return range(this, sheet, area);
        },
        GetRanges: ([addresses]) => {
          if (String(addresses).length > 8_192) throw new ApiError("InvalidArgument", "The address is too long.");
          const areas = String(addresses)
            .split(",")
            .map((address) => parseArea(address)!);
          return { type: "RangeAreas", parts: { format: () => this.looks.formats(sheet, areas) } };
        },
        Delete: () => {
          if (this.sheets().filter((one) => !one.hidden && one !== sheet).length === 0)
            throw new ApiError("InvalidOperation", "A workbook needs a visible sheet.");
          this.book.removeSheet(sheet);
        },
        Activate: () => {
          if (sheet.hidden) throw new ApiError("InvalidOperation", "The sheet is hidden.");
        },
      },
    };
  }

  /** Charts by their sheet, with what was set. */
  readonly drawn = new Map<Sheet, DrawnChart[]>();

  private charts(sheet: Sheet): ExcelObject {
    const all = this.drawn.get(sheet) ?? [];
    this.drawn.set(sheet, all);
    const areaOf = (given: Argument | undefined) => (given as RangeObject).area;
    const series = (one: DrawnSeries): ExcelObject => ({
      type: "ChartSeries",
      methods: {
        SetValues: ([values]) => void (one.values = areaOf(values)),
        SetXAxisValues: ([names]) => void (one.names = areaOf(names)),
      },
    });
    return {
      type: "ChartCollection",
      methods: {
        Add: ([type, source, by]) => {
          if (by !== "Columns") throw new ApiError("InvalidArgument", "The stand-in knows series by columns only.");
          const { top, left, rows } = areaOf(source);
          const first = { values: { top: top + 1, left, rows: rows - 1, columns: 1 }, names: null, name: null };
          const chart: DrawnChart = { type: String(type), title: "", at: null, series: [first] };
          all.push(chart);
          return {
            type: "Chart",
            parts: {
              title: () => ({
                type: "ChartTitle",
                properties: { text: { get: () => chart.title, set: (text) => void (chart.title = String(text)) } },
              }),
              series: () => ({
                type: "ChartSeriesCollection",
                items: () => chart.series.map(series),
                methods: {
                  Add: ([name]) => {
                    const added: DrawnSeries = { values: null, names: null, name: String(name) };
                    chart.series.push(added);
                    return series(added);
                  },
                },
              }),
            },
            methods: { SetPosition: ([cell]) => void (chart.at = areaOf(cell)) },
          };
        },
      },
    };
  }

  /** How a sheet goes to paper, by what was set. */
  readonly paper = new Map<Sheet, Map<string, Json>>();

  private pageLayout(sheet: Sheet): ExcelObject {
    const set = this.paper.get(sheet) ?? new Map<string, Json>();
    this.paper.set(sheet, set);
    const settable = (names: readonly string[]) =>
      Object.fromEntries(
        names.map((name) => [
          name,
          { get: () => set.get(name) ?? null, set: (value: Json) => void set.set(name, value) },
        ]),
      );
    return {
      type: "PageLayout",
      properties: settable(["paperSize", "orientation", "zoom"]),
      parts: {
        headersFooters: () => ({
          type: "HeaderFooterGroup",
          parts: {
            defaultForAllPages: () => ({
              type: "HeaderFooter",
              properties: settable(["leftFooter", "rightFooter"]),
            }),
          },
        }),
      },
      methods: { SetPrintTitleRows: ([rows]) => void set.set("titleRows", String(rows)) },
    };
  }

  private freezePanes(sheet: Sheet): ExcelObject {
    return {
      type: "WorksheetFreezePanes",
      methods: {
        FreezeRows: ([rows]) => void (this.view(sheet).frozen = { rows: Number(rows), columns: 0 }),
        FreezeColumns: ([columns]) => void (this.view(sheet).frozen = { rows: 0, columns: Number(columns) }),
        FreezeAt: ([held]) => {
          const { rows, columns } = (held as RangeObject).area;
          this.view(sheet).frozen = { rows, columns };
        },
        GetLocationOrNullObject: () => {
          const { rows, columns } = this.view(sheet).frozen;
          if (rows === 0 && columns === 0) return null;
          return range(this, sheet, { top: 0, left: 0, rows: rows || 1_048_576, columns: columns || 16_384 });
        },
      },
    };
  }

  private tables(sheets: readonly Sheet[]): ExcelObject {
    const all = sheets.flatMap((sheet) => sheet.tables.map((table) => ({ sheet, table })));
    return {
      type: "TableCollection",
      items: () => all.map(({ sheet, table }) => this.table(sheet, table)),
      item: (key) => {
        const found = all.find(({ table }) => table.name.toLowerCase() === key.toLowerCase());
        return found && this.table(found.sheet, found.table);
      },
      methods: this.events("Tables"),
    };
  }

  private table(sheet: Sheet, table: Table): ExcelObject {
    return {
      type: "Table",
      id: table.name,
      properties: {
        name: read(() => table.name),
        showHeaders: read(() => table.hasHeader),
        showTotals: read(() => table.hasTotals),
      },
      parts: {
        worksheet: () => this.worksheet(sheet),
        autoFilter: () => this.filters.onTable(this, sheet, table),
        sort: () => tableSort(sheet, table),
        columns: () => ({
          type: "TableColumnCollection",
          items: () =>
            table.columns.map((name, i) => ({
              type: "TableColumn",
              id: String(i + 1),
              properties: { name: read(() => name) },
              parts: { filter: () => this.filters.onColumn(sheet, table, i) },
            })),
        }),
      },
      methods: {
        GetRange: () => range(this, sheet, table.area),
        GetHeaderRowRange: () => range(this, sheet, { ...table.area, rows: 1 }),
        ClearFilters: () => this.filters.clearTable(sheet, table),
        GetDataBodyRange: () => range(this, sheet, dataArea(table)),
        Resize: ([to]) => {
          if (!isObject(to) || to.type !== "Range") throw new ApiError("InvalidArgument", "A range is needed.");
          resize(this, sheet, table, (to as RangeObject).area);
        },
      },
    };
  }

  private names(): ExcelObject {
    const { book } = this;
    return {
      type: "NamedItemCollection",
      items: () => book.names.map((name) => this.name(name)),
      item: (key) => {
        const found = book.name(key);
        return found && this.name(found);
      },
      methods: {
        GetItemOrNullObject: ([key]) => {
          const found = book.name(String(key));
          return found ? this.name(found) : null;
        },
        Add: ([name, reference]) => {
          if (book.name(String(name))) throw new ApiError("ItemAlreadyExists", "The name is there already.");
          const made = { name: String(name), refersTo: String(reference), value: null };
          book.names.push(made);
          return this.name(made);
        },
      },
    };
  }

  private name(name: Name): ExcelObject {
    const cells = this.cellsOf(name);
    return {
      type: "NamedItem",
      id: name.name,
      properties: {
        name: read(() => name.name),
        formula: read(() => name.refersTo),
        type: read(() => (cells ? "Range" : typeof name.value === "string" ? "String" : "Double")),
        value: read(() => (cells ? name.refersTo.slice(1) : name.value)),
        visible: read(() => true),
      },
      methods: {
        GetRangeOrNullObject: () => cells,
        Delete: () => {
          if (this.book.sheets.every((sheet) => sheet.isProtected)) throw protectedError();
          this.book.names = this.book.names.filter((one) => one !== name);
        },
      },
    };
  }

  private cellsOf(name: Name): ExcelObject | null {
    const place = parsePlace(name.refersTo);
    const sheet = place && this.book.sheet(place.sheetName);
    return place && sheet ? range(this, sheet, place.area) : null;
  }

  private events(collection: string): NonNullable<ExcelObject["methods"]> {
    return Object.fromEntries(
      Object.entries(EVENTS)
        .filter(([name]) => name.startsWith(`${collection}.`))
        .flatMap(([name, id]) => {
          const event = name.slice(collection.length + 1);
          return [
            [`_Register${event}Event`, () => void this.registered.add(id)],
            [`_Unregister${event}Event`, () => void this.registered.delete(id)],
          ];
        }),
    );
  }
}

/** Whole rows, blanks last; what is alike stays in its order. */
function tableSort(sheet: Sheet, table: Table): ExcelObject {
  return {
    type: "TableSort",
    methods: {
      Apply: ([fields]) => {
        if (sheet.isProtected) throw protectedError();
        const [field, ...others] = fields as readonly { readonly key: number; readonly ascending?: boolean }[];
        if (!field || others.length > 0 || field.ascending === false || field.key >= table.area.columns)
          throw new ApiError("InvalidArgument", "Sorted by one column of the table, rising, here.");
        sortRows(sheet, { sheet: sheet.id, table: table.name, data: dataArea(table), column: field.key });
      },
    },
  };
}
