import { parseRange } from "../addresses";
import type { FilterComparisons, FilterState, OtherFilter, PackageTable } from "../contents";
import { refuse } from "../../xlsx/refusal";
import type { XmlElement } from "../../xlsx/xml/element";
import { decodeEscapes } from "../../xlsx/escaped-strings";
import { isTrue, wholeNumber } from "./values";

export function readTable(root: XmlElement, sheetName: string, partName: string): PackageTable {
  const name = root.get("displayName") ?? root.get("name") ?? "";
  const ref = root.get("ref") ?? "";
  const columns = (root.first("tableColumns")?.all("tableColumn") ?? []).map((column) => ({
    id: wholeNumber(column.get("id"), 0),
    name: decodeEscapes(column.get("name") ?? ""),
    ...optional("calculatedColumnFormula", column.first("calculatedColumnFormula")?.text),
    ...optional("totalsRowFunction", column.get("totalsRowFunction")),
    ...optional(
      "totalsRowLabel",
      column.get("totalsRowLabel") && decodeEscapes(column.get("totalsRowLabel") as string),
    ),
  }));
  const range = parseRange(ref);
  if (!range || name === "" || columns.length !== range.right - range.left + 1) {
    return refuse(
      `This workbook is damaged: the table "${name}" (${partName}) does not say which cells it covers. Open it in Excel and save a copy.`,
    );
  }
  const filter = root.first("autoFilter");
  return {
    name,
    id: wholeNumber(root.get("id"), 0),
    sheetName,
    partName,
    ref,
    headerRowCount: wholeNumber(root.get("headerRowCount"), 1),
    totalsRowCount: wholeNumber(root.get("totalsRowCount"), 0),
    columns,
    ...(filter ? { filter: readFilter(filter) } : {}),
  };
}

export function readFilter(element: XmlElement): FilterState {
  const columns = element.all("filterColumn").filter((column) => column.children.length > 0);
  return {
    ref: element.get("ref") ?? "",
    isActive: columns.length > 0,
    columns: columns.map((column) => {
      const list = column.first("filters");
      const isPlainList = list !== undefined && list.all("dateGroupItem").length === 0;
      const comparisons = readComparisons(column.first("customFilters"));
      return {
        offset: wholeNumber(column.get("colId"), 0),
        ...(isPlainList ? { values: list.all("filter").map((one) => decodeEscapes(one.get("val") ?? "")) } : {}),
        showsBlanks: isTrue(list?.get("blank")),
        ...(comparisons && { comparisons }),
        ...(!isPlainList && !comparisons && { by: otherFilter(column) }),
      };
    }),
  };
}

function readComparisons(element: XmlElement | undefined): FilterComparisons | undefined {
  const each = (element?.all("customFilter") ?? []).map((one) => ({
    operator: one.get("operator") ?? "equal",
    value: decodeEscapes(one.get("val") ?? ""),
  }));
  return each.length === 0 ? undefined : { both: isTrue(element?.get("and")), each };
}

const OTHER_FILTERS: readonly (readonly [element: string, by: OtherFilter])[] = [
  ["filters", "dates"],
  ["colorFilter", "colour"],
  ["iconFilter", "icon"],
  ["top10", "top"],
  ["dynamicFilter", "moving"],
];

const otherFilter = (column: XmlElement): OtherFilter =>
  OTHER_FILTERS.find(([element]) => column.first(element))?.[1] ?? "other";

function optional<K extends string>(key: K, value: string | undefined): { readonly [P in K]?: string } {
  return (value === undefined || value === "" ? {} : { [key]: value }) as { readonly [P in K]?: string };
}
