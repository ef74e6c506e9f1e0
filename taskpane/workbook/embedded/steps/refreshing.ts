/** One formula down a column that is there already. */
import type { ICellData } from "@univerjs/core";
import { inA1 } from "../../../../src/columns/formula";
import type { Area } from "../../port";
import type { RefreshTarget } from "../../change/target";
import { isMovedByEngine } from "../formulas/references";
import { shown, type Desk } from "./write";
import { Contents, held, NOTHING } from "./contents";

const rowsOf = ({ top, rows }: Area): number[] => Array.from({ length: rows }, (_, r) => top + r);

/** @returns what gives each cell its former content */
export function refreshColumn(desk: Desk, target: RefreshTarget): (desk: Desk, now: Area) => void {
  const { sheet, area, listLeft, step } = target;
  const reader = desk.reader(sheet);
  const former = rowsOf(area).map((row): ICellData => {
    const formula = reader.formula(row, area.left);
    return { ...held(reader, row, area.left), f: formula, si: null };
  });
  const group = isMovedByEngine(inA1(step.formula, area.top, listLeft)) ? desk.unique() : null;
  const now = new Contents(reader);
  for (const [r, row] of rowsOf(area).entries()) {
    const formula = group !== null && r > 0 ? null : `=${inA1(step.formula, row, listLeft)}`;
    now.set(row, area.left, { ...NOTHING, ...shown(step.results?.[r]), f: formula, si: group });
  }
  now.put(desk, sheet);
  return (again, place) => {
    const back = new Contents(again.reader(sheet));
    for (const [r, row] of rowsOf(place).entries()) back.set(row, place.left, former[r]!);
    back.put(again, sheet);
  };
}
