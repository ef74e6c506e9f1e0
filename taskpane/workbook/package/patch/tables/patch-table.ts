/** A table part with its columns, its range and its filter brought up to date. */
import { rangeText } from "../../addresses";
import type { NewTableColumn } from "../../edits";
import { renameColumns, type ColumnRename } from "../../../../../src/formula/renaming";
import { encodeEscapes } from "../../../xlsx/escaped-strings";
import { refuse } from "../../../xlsx/refusal";
import { escapeAttribute, escapeText } from "../../../xlsx/xml/characters";
import { appendInside, insertInOrder, parseElement, setAttribute, type XmlElement } from "../../../xlsx/xml/element";
import type { XmlSource } from "../../../xlsx/xml/encoding";
import { Splices } from "../../../xlsx/xml/splices";
import { filterText } from "./filter-text";
import { tableRef, type TablePlan, type TotalsMeaning } from "../plan/plan-tables";

/** ECMA-376 part 1, 18.5.1.3: the order inside a table column. */
const COLUMN_ORDER = ["calculatedColumnFormula", "totalsRowFormula", "xmlColumnPr", "extLst"];

export function patchTable(source: XmlSource, plan: TablePlan | undefined, renames: readonly ColumnRename[]): string {
  const root = parseElement(source);
  const splices = new Splices(source.text);
  const columns = root.first("tableColumns");
  if (!columns) return refuse(`The table in ${source.partName} has no columns.`);
  columns.all("tableColumn").forEach((element, index) => {
    const column = plan?.table.columns[index];
    patchColumn(
      splices,
      element,
      plan && column && plan.names.get(column.id),
      plan && column && plan.totals.get(column.id),
      renames,
    );
  });
  if (plan) {
    if (plan.added.length > 0) addColumns(splices, root, columns, plan);
    if (tableRef(plan) !== plan.table.ref) setAttribute(splices, root, "ref", tableRef(plan));
    patchFilter(splices, root, source.text, plan);
  }
  return splices.apply();
}

function addColumns(splices: Splices, root: XmlElement, columns: XmlElement, plan: TablePlan): void {
  if (root.get("tableType") === "queryTable") {
    refuse(
      `The table "${plan.table.name}" is filled by a query, which decides its columns. Add the column in Excel, or copy the table as values.`,
    );
  }
  let id = Math.max(0, ...plan.table.columns.map((column) => column.id));
  const tag = (local: string): string => columns.tag(local);
  const texts = plan.added.map((column) => columnText(column, ++id, plan.table.totalsRowCount > 0, tag));
  appendInside(splices, columns, texts.join(""));
  setAttribute(splices, columns, "count", String(plan.table.columns.length + plan.added.length));
}

function columnText(column: NewTableColumn, id: number, hasTotals: boolean, tag: (local: string) => string): string {
  const totals: TotalsMeaning =
    !hasTotals || !column.totals ? {} : "label" in column.totals ? column.totals : { formula: column.totals.formula };
  const attributes =
    ` id="${id}" name="${nameText(column.header)}"` +
    (totals.label === undefined ? "" : ` totalsRowLabel="${nameText(totals.label)}"`) +
    (totals.formula === undefined ? "" : ' totalsRowFunction="custom"');
  const formula = column.calculatedColumnFormula;
  const inside =
    (formula === undefined ? "" : element(tag("calculatedColumnFormula"), formula)) +
    (totals.formula === undefined ? "" : element(tag("totalsRowFormula"), totals.formula));
  const start = `<${tag("tableColumn")}${attributes}`;
  return inside === "" ? `${start}/>` : `${start}>${inside}</${tag("tableColumn")}>`;
}

function patchColumn(
  splices: Splices,
  column: XmlElement,
  name: string | undefined,
  totals: TotalsMeaning | undefined,
  renames: readonly ColumnRename[],
): void {
  if (name !== undefined) replaceValue(splices, column, "name", nameText(name));
  for (const local of ["calculatedColumnFormula", "totalsRowFormula"]) {
    const formula = column.first(local);
    if (!formula || (local === "totalsRowFormula" && totals)) continue;
    const renamed = renameColumns(formula.text, renames);
    if (renamed !== formula.text) splices.replace(formula.contentStart, formula.contentEnd, escapeText(renamed));
  }
  if (totals) patchTotals(splices, column, totals);
}

function patchTotals(splices: Splices, column: XmlElement, totals: TotalsMeaning): void {
  const { label, formula } = totals;
  if (label !== undefined && column.get("totalsRowLabel") !== undefined)
    replaceValue(splices, column, "totalsRowLabel", nameText(label));
  else setRaw(splices, column, "totalsRowLabel", label === undefined ? undefined : nameText(label));
  setAttribute(splices, column, "totalsRowFunction", formula === undefined ? undefined : "custom");
  const present = column.first("totalsRowFormula");
  const text = formula === undefined ? "" : element(column.tag("totalsRowFormula"), formula);
  if (present) splices.replace(present.start, present.end, text);
  else if (text !== "") insertInOrder(splices, column, "totalsRowFormula", text, COLUMN_ORDER);
}

function patchFilter(splices: Splices, root: XmlElement, source: string, plan: TablePlan): void {
  const present = root.first("autoFilter");
  if (plan.filter?.remove) {
    if (present) splices.remove(present.start, present.end);
    return;
  }
  const ref = rangeText({ ...plan.range, bottom: plan.range.bottom - plan.table.totalsRowCount });
  if (plan.filter) {
    const text = filterText(present, source, plan.filter, ref, (local) => root.tag(local));
    if (present) splices.replace(present.start, present.end, text);
    else insertInOrder(splices, root, "autoFilter", text, ["autoFilter"]);
  } else if (present && tableRef(plan) !== plan.table.ref) setAttribute(splices, present, "ref", ref);
}

/** Line breaks in names stand as _x000a_, as Excel writes them. */
function nameText(name: string): string {
  return escapeAttribute(encodeEscapes(name, "attribute"));
}

function element(tag: string, formula: string): string {
  return `<${tag}>${escapeText(formula)}</${tag}>`;
}

/** For text that is escaped already. */
function replaceValue(splices: Splices, target: XmlElement, name: string, text: string): void {
  const present = target.attributes.find((one) => one.raw === name);
  if (present) splices.replace(present.start, present.end, text);
}

function setRaw(splices: Splices, target: XmlElement, name: string, text: string | undefined): void {
  if (text === undefined) setAttribute(splices, target, name, undefined);
  else splices.insert(target.start + 1 + target.name.raw.length, ` ${name}="${text}"`);
}
