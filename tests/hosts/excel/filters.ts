/** Excel's filters: one for each table, and one for a list on the sheet itself. They compare texts as they are shown. */
import { bottom, contains, overlaps, right } from "../../../taskpane/workbook/area";
import { dataArea, type Sheet, type Table } from "../../../taskpane/workbook/fake/book";
import type { Area } from "../../../taskpane/workbook/port";
import { ApiError, isObject, read, type Argument, type ExcelObject, type Json } from "./objects";
import { protectedError, range, shownText, type RangeObject, type World } from "./range";

type Criteria = Readonly<Record<string, Json>>;

const PROPERTIES = ["color", "criterion1", "criterion2", "dynamicCriteria", "filterOn", "icon", "operator", "subField"];

interface Filter {
  readonly area: Area;
  readonly columns: Map<number, Criteria>;
}

export class Filters {
  private readonly tables = new WeakMap<Table, Map<number, Criteria>>();
  private readonly lists = new WeakMap<Sheet, Filter & { hidden: ReadonlySet<number> }>();

  /** Hidden by a filter, not by hand. */
  hides(sheet: Sheet, row: number): boolean {
    return sheet.tables.some((table) => table.filteredRows.has(row)) || !!this.lists.get(sheet)?.hidden.has(row);
  }

  onTable(world: World, sheet: Sheet, table: Table): ExcelObject {
    const columns = this.columnsOf(sheet, table);
    return {
      type: "AutoFilter",
      properties: {
        enabled: read(() => true),
        isDataFiltered: read(() => columns.size > 0),
        criteria: read(() => told(columns, table.area.columns)),
      },
      methods: { GetRangeOrNullObject: () => range(world, sheet, table.area) },
    };
  }

  clearTable(sheet: Sheet, table: Table): void {
    if (sheet.isProtected) throw protectedError();
    this.columnsOf(sheet, table).clear();
    this.filterTable(sheet, table);
  }

  /** The filter of one column of a table. */
  onColumn(sheet: Sheet, table: Table, column: number): ExcelObject {
    return {
      type: "Filter",
      methods: {
        Apply: ([criteria]) => {
          if (sheet.isProtected) throw protectedError();
          this.columnsOf(sheet, table).set(column, checked(criteria));
          this.filterTable(sheet, table);
        },
      },
    };
  }

  onSheet(world: World, sheet: Sheet): ExcelObject {
    const mayWrite = () => {
      if (sheet.isProtected) throw protectedError();
    };
    const now = () => this.lists.get(sheet);
    const filter = (area: Area, columns: Map<number, Criteria>) =>
      this.lists.set(sheet, {
        area,
        columns,
        hidden: hiddenRows(sheet, { ...area, top: area.top + 1, rows: area.rows - 1 }, columns),
      });
    return {
      type: "AutoFilter",
      properties: {
        enabled: read(() => now() !== undefined),
        isDataFiltered: read(() => (now()?.columns.size ?? 0) > 0),
        criteria: read(() => told(now()?.columns ?? new Map(), now()?.area.columns ?? 0)),
      },
      methods: {
        GetRangeOrNullObject: () => {
          const found = now();
          return found ? range(world, sheet, found.area) : null;
        },
        Apply: ([to, column, criteria]) => {
          mayWrite();
          if (!isObject(to) || to.type !== "Range") throw new ApiError("InvalidArgument", "A range is needed.");
          const { area } = to as RangeObject;
          if (sheet.tables.some((table) => overlaps(table.area, area)))
            throw new ApiError("InvalidOperation", "The range overlaps a table.");
          const before = now();
          /* Another range: the sheet has one such filter only, and the old one goes with its criteria. */
          const isSame =
            before && before.area.top === area.top && before.area.left === area.left && before.area.rows === area.rows;
          const columns = new Map(isSame ? before.columns : []);
          if (typeof column === "number") {
            if (!contains(area, area.top, area.left + column)) throw new ApiError("InvalidArgument", "No such column.");
            columns.set(column, checked(criteria));
          }
          filter(area, columns);
        },
        ClearCriteria: () => {
          mayWrite();
          const found = now();
          if (found) filter(found.area, new Map());
        },
        Remove: () => {
          mayWrite();
          this.lists.delete(sheet);
        },
      },
    };
  }

  /** A described filter is one on the first column, by what its shown rows hold. */
  private columnsOf(sheet: Sheet, table: Table): Map<number, Criteria> {
    const known = this.tables.get(table);
    if (known) return known;
    const columns = new Map<number, Criteria>();
    if (table.filteredRows.size > 0) {
      const data = dataArea(table);
      const rows = Array.from({ length: data.rows }, (_, r) => data.top + r).filter(
        (row) => !table.filteredRows.has(row),
      );
      columns.set(0, { filterOn: "Values", values: rows.map((row) => shownText(sheet, row, data.left)) });
    }
    this.tables.set(table, columns);
    return columns;
  }

  private filterTable(sheet: Sheet, table: Table): void {
    table.filteredRows = new Set(hiddenRows(sheet, dataArea(table), this.columnsOf(sheet, table)));
  }
}

function hiddenRows(sheet: Sheet, data: Area, columns: ReadonlyMap<number, Criteria>): ReadonlySet<number> {
  const hidden = new Set<number>();
  for (let row = data.top; row < bottom(data); row++)
    for (const [column, criteria] of columns)
      if (data.left + column < right(data) && !shows(criteria, shownText(sheet, row, data.left + column)))
        hidden.add(row);
  return hidden;
}

/** Two values or fewer become conditions of their own, in which "*" and "?" stand for any letters. */
function shows({ values }: Criteria, text: string): boolean {
  const kept = values as readonly string[];
  const isPlain = kept.length > 2;
  return kept.some((one) => {
    if (isPlain || !/[*?]/.test(one)) return one.toLowerCase() === text.toLowerCase();
    const pattern = one
      .replace(/[.+^${}()|[\]\\]/g, "\\$&")
      .replaceAll("*", ".*")
      .replaceAll("?", ".");
    return new RegExp(`^${pattern}$`, "i").test(text);
  });
}

/** Excel tells criteria with nulls in them, and does not take them back that way (office-js issue 1226). */
function told(columns: ReadonlyMap<number, Criteria>, width: number): Json {
  return Array.from({ length: width }, (_, column) => {
    const empty = Object.fromEntries([...PROPERTIES, "values"].map((name) => [name, null]));
    return { ...empty, ...columns.get(column) };
  });
}

function checked(criteria: Argument | undefined): Criteria {
  const invalid = new ApiError("InvalidArgument", "The argument is invalid or missing or has an incorrect format.");
  if (typeof criteria !== "object" || criteria === null || isObject(criteria)) throw invalid;
  const given = criteria as Criteria;
  const isKnown = Object.entries(given).every(
    ([name, value]) => value !== null && [...PROPERTIES, "values"].includes(name),
  );
  if (!isKnown || given["filterOn"] !== "Values" || !Array.isArray(given["values"]) || given["values"].length === 0)
    throw invalid;
  return given;
}
