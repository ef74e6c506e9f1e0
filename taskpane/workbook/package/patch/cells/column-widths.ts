/** The cols element with some widths set: a stretch of columns is split where only part of it changes. */
import type { ColumnWidth } from "../../edits";
import { wholeNumber } from "../../parts/values";
import { escapeAttribute } from "../../../xlsx/xml/characters";
import type { XmlElement } from "../../../xlsx/xml/element";

interface Stretch {
  readonly first: number;
  readonly last: number;
  readonly attributes: ReadonlyMap<string, string>;
}

export function columnsText(
  present: XmlElement | undefined,
  widths: readonly ColumnWidth[],
  tag: (local: string) => string,
): string {
  let stretches: Stretch[] = (present?.all("col") ?? []).map((column) => ({
    first: wholeNumber(column.get("min"), 1),
    last: wholeNumber(column.get("max"), 1),
    attributes: new Map(
      column.attributes.filter((one) => one.raw !== "min" && one.raw !== "max").map((one) => [one.raw, one.value]),
    ),
  }));
  for (const width of widths) stretches = withWidth(stretches, width);
  const columns = stretches
    .sort((one, other) => one.first - other.first)
    .map(({ first, last, attributes }) => {
      const others = [...attributes].map(([name, value]) => ` ${name}="${escapeAttribute(value)}"`).join("");
      return `<${tag("col")} min="${first}" max="${last}"${others}/>`;
    });
  return `<${tag("cols")}>${columns.join("")}</${tag("cols")}>`;
}

function withWidth(stretches: readonly Stretch[], { first, last, width }: ColumnWidth): Stretch[] {
  const result: Stretch[] = [];
  let uncovered = first;
  for (const stretch of [...stretches].sort((one, other) => one.first - other.first)) {
    const from = Math.max(stretch.first, first);
    const to = Math.min(stretch.last, last);
    if (from > to) {
      result.push(stretch);
      continue;
    }
    if (stretch.first < from) result.push({ ...stretch, last: from - 1 });
    if (uncovered < from) result.push({ first: uncovered, last: from - 1, attributes: sized(new Map(), width) });
    result.push({ first: from, last: to, attributes: sized(stretch.attributes, width) });
    if (to < stretch.last) result.push({ ...stretch, first: to + 1 });
    uncovered = to + 1;
  }
  if (uncovered <= last) result.push({ first: uncovered, last, attributes: sized(new Map(), width) });
  return result;
}

function sized(attributes: ReadonlyMap<string, string>, width: number): Map<string, string> {
  const changed = new Map(attributes);
  changed.set("width", String(width));
  changed.set("customWidth", "1");
  changed.delete("bestFit");
  return changed;
}
