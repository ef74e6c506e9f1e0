/** An autoFilter element with some columns' criteria replaced; what the others say stays as it stands. */
import type { FilterCriteria, FilterEdit } from "../../edits";
import { encodeEscapes } from "../../../xlsx/escaped-strings";
import { wholeNumber } from "../../parts/values";
import { escapeAttribute } from "../../../xlsx/xml/characters";
import type { XmlElement } from "../../../xlsx/xml/element";

export function filterText(
  present: XmlElement | undefined,
  source: string,
  edit: FilterEdit,
  ref: string,
  tag: (local: string) => string,
): string {
  const columns = new Map<number, string>();
  const others: string[] = [];
  for (const child of present?.children ?? []) {
    const text = source.slice(child.start, child.end);
    if (child.name.local !== "filterColumn") others.push(text);
    else {
      const offset = wholeNumber(child.get("colId"), 0);
      const criteria = edit.columns?.get(offset);
      const changed = criteria === undefined ? text : columnText(offset, criteria, child, tag);
      if (changed !== "") columns.set(offset, changed);
    }
  }
  const seen = new Set((present?.all("filterColumn") ?? []).map((child) => wholeNumber(child.get("colId"), 0)));
  for (const [offset, criteria] of edit.columns ?? []) {
    const text = seen.has(offset) ? "" : columnText(offset, criteria, undefined, tag);
    if (text !== "") columns.set(offset, text);
  }
  const inside =
    [...columns]
      .sort(([one], [other]) => one - other)
      .map(([, text]) => text)
      .join("") + others.join("");
  const otherAttributes = (present?.attributes ?? [])
    .filter((one) => one.raw !== "ref")
    .map((one) => ` ${one.raw}="${escapeAttribute(one.value)}"`)
    .join("");
  const start = `<${tag("autoFilter")} ref="${ref}"${otherAttributes}`;
  return inside === "" ? `${start}/>` : `${start}>${inside}</${tag("autoFilter")}>`;
}

/** Empty when a column has nothing to say any more. */
function columnText(
  offset: number,
  criteria: FilterCriteria | null,
  present: XmlElement | undefined,
  tag: (local: string) => string,
): string {
  const others = (present?.attributes ?? [])
    .filter((one) => one.raw !== "colId")
    .map((one) => ` ${one.raw}="${escapeAttribute(one.value)}"`)
    .join("");
  const start = `<${tag("filterColumn")} colId="${offset}"${others}`;
  if (criteria === null) return others === "" ? "" : `${start}/>`;
  const values = criteria.values.map(
    (value) => `<${tag("filter")} val="${escapeAttribute(encodeEscapes(value, "attribute"))}"/>`,
  );
  const blank = criteria.showsBlanks ? ' blank="1"' : "";
  const list =
    values.length === 0
      ? `<${tag("filters")}${blank}/>`
      : `<${tag("filters")}${blank}>${values.join("")}</${tag("filters")}>`;
  return `${start}>${list}</${tag("filterColumn")}>`;
}
