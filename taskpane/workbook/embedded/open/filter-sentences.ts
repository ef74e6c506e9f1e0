/** What opening says of the filters of a file. */
import { inQuotes } from "../../../texts/pieces";
import type { FilterColumn, OtherFilter } from "../../package";

const BY: Readonly<Record<OtherFilter, string>> = {
  dates: "by a list of dates",
  colour: "by colour",
  icon: "by icon",
  top: "by the highest or lowest values",
  moving: "by a condition that moves with the day or the values",
  other: "by a condition that this page does not know",
};

export const aFilterIsOn =
  "A filter is on in this file: the rows it hides are hidden here too. The arrows in its header row show it, change it and take it off.";

/** A filter that the grid cannot hold. */
export function filterStaysInFile(place: string, columns: readonly FilterColumn[]): string {
  const kinds = [...new Set(columns.flatMap(({ by }) => (by ? [BY[by]] : [])))];
  const kind = kinds.length === 0 ? "by a condition that this page works out otherwise" : kinds.join(" and ");
  return `${inQuotes(place)}: the filter is ${kind}. This page cannot change it: the rows it hides stay hidden, and it stays in the file. ‘Show all rows’ in the pane takes it off.`;
}
