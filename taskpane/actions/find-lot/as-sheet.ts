/** The rows of a lot as a sheet: whom to tell first, then who cannot be ruled out. */
import { findLot as words } from "../../texts/find-lot";
import type { SheetOfValues } from "../new-sheet";
import { groups, type FoundLots } from "./interface";

/** No header says lot here: the sheet is a list to tick off, and the next search must not find its rows as devices. */
export function lotSheet({ found, open }: FoundLots, lots: readonly string[]): SheetOfValues {
  const inOrder = <R extends { readonly group: (typeof groups)[number] }>(rows: readonly R[]): readonly R[] =>
    groups.flatMap((group) => rows.filter((row) => row.group === group));
  return {
    name: words.sheetName(lots[0]!),
    title: words.page.heading(lots),
    columns: words.sheetColumns,
    widths: [34, 12, 52, 28, 16, 16],
    rows: [
      ...inOrder(found).map((row) => [words.groups[row.group], row.id, row.about, row.lot, null, null]),
      ...inOrder(open).map((row) => [
        words.openIn(words.groups[row.group]),
        row.id,
        row.about,
        row.lot || words.why[row.why],
        null,
        null,
      ]),
    ],
  };
}
