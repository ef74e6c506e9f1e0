/** A workbook as plain data, and back: what another thread is told of it. */
import type { OpenedWorkbook } from "./opened";
import type { CellValue, SheetLayout } from "./contents";
import { CellStore, type StoreData } from "./sheet/store";

type Told = {
  [K in keyof OpenedWorkbook as OpenedWorkbook[K] extends (name: never) => unknown ? never : K]: OpenedWorkbook[K];
};

export interface WorkbookData {
  readonly told: Told;
  /** By style index. */
  readonly numberFormats: readonly string[];
  readonly quoted: readonly boolean[];
  readonly locked: readonly boolean[];
  /** By the name of a worksheet. */
  readonly stores: ReadonlyMap<string, StoreData>;
  readonly layouts: ReadonlyMap<string, SheetLayout>;
  /** Texts that cells of all sheets share. */
  readonly strings: readonly string[];
}

export function dataOf(opened: OpenedWorkbook): WorkbookData {
  const names = opened.sheets.filter(({ kind }) => kind === "worksheet").map(({ name }) => name);
  const styles = Array.from({ length: opened.styleCount }, (_, style) => style);
  const told = Object.fromEntries(
    Object.entries(opened).filter(([key, value]) => typeof value !== "function" && key !== "parts"),
  ) as unknown as Told;
  const [first] = names;
  return {
    told,
    numberFormats: styles.map((style) => opened.numberFormat(style)),
    quoted: styles.map((style) => opened.isQuoted(style)),
    locked: styles.map((style) => opened.isLocked(style)),
    stores: new Map(names.map((name) => [name, opened.store(name).data])),
    layouts: new Map(names.map((name) => [name, opened.layout(name)])),
    strings: first === undefined ? [] : opened.store(first).strings,
  };
}

export function workbookOf(data: WorkbookData): OpenedWorkbook {
  const stores = new Map([...data.stores].map(([name, store]) => [name, new CellStore(store, data.strings)]));
  const of = <T>(all: ReadonlyMap<string, T>, name: string): T => {
    const found = all.get(name);
    if (found === undefined) throw new Error(`There is no worksheet "${name}".`);
    return found;
  };
  return {
    ...data.told,
    numberFormat: (style) => data.numberFormats[style] ?? "General",
    isQuoted: (style) => data.quoted[style] ?? false,
    isLocked: (style) => data.locked[style] ?? true,
    cells: (name) => ({ [Symbol.iterator]: () => of(stores, name).cells() }),
    store: (name) => of(stores, name),
    layout: (name) => of(data.layouts, name),
  };
}

/** Results by row, for an edit that goes to another thread: a function cannot. */
export interface ValuesByRow {
  readonly firstRow: number;
  readonly values: readonly CellValue[];
}
