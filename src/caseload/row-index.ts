/** Rows of a table by what stands in one of their columns, kept right while cells change. */
import type { SheetValue } from "../columns/sheet-block";
import type { RowCells } from "./column";

export class RowIndex {
  private readonly places = new Map<SheetValue, number[]>();

  constructor(rows: readonly RowCells[], header: string) {
    rows.forEach((row, place) => this.add(row[header]!, place));
  }

  /** In rising order. */
  with(value: SheetValue): readonly number[] {
    return this.places.get(value) ?? [];
  }

  add(value: SheetValue, place: number): void {
    const places = this.places.get(value);
    if (!places) this.places.set(value, [place]);
    else if (places.at(-1)! < place) places.push(place);
    else
      places.splice(
        places.findIndex((one) => one > place),
        0,
        place,
      );
  }

  remove(value: SheetValue, place: number): void {
    const places = this.places.get(value);
    const at = places?.indexOf(place) ?? -1;
    if (at >= 0) places!.splice(at, 1);
  }
}
