/** One formula down a column that is there already, or values into some of its cells. */
import type { ICellData } from "@univerjs/core";
import { inA1 } from "../../../../src/columns/formula";
import type { Area, SheetId } from "../../port";
import type { ChangeColumnTarget, ReenterTarget, RefreshTarget } from "../../change/target";
import { isMovedByEngine } from "../formulas/references";
import { styleIds } from "./changes";
import { Contents, held, NOTHING, typed } from "./contents";
import { idOf, reformatted, shown, type Desk } from "./write";

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

/** @returns what gives each cell its former formula */
export function reenterFormulas(desk: Desk, { sheet, area, step }: ReenterTarget): (desk: Desk, now: Area) => void {
  const reader = desk.reader(sheet);
  const rows = step.formulas.flatMap((formula, r) => (formula === null ? [] : [{ r, formula }]));
  const former = rows.map(({ r }): ICellData => {
    const formula = reader.formula(area.top + r, area.left);
    return { ...held(reader, area.top + r, area.left), f: formula, si: null };
  });
  const now = new Contents(reader);
  for (const { r, formula } of rows) now.set(area.top + r, area.left, { ...NOTHING, f: formula });
  now.put(desk, sheet);
  return (again, place) => {
    const back = new Contents(again.reader(sheet));
    rows.forEach(({ r }, i) => back.set(place.top + r, place.left, former[i]!));
    back.put(again, sheet);
  };
}

/** @returns what gives each cell its former content and look */
export function changeColumn(desk: Desk, target: ChangeColumnTarget): (desk: Desk, now: Area) => void {
  const { sheet, area, step } = target;
  const reader = desk.reader(sheet);
  const rows = step.values.flatMap((value, r) => (value === undefined ? [] : [{ r, value }]));
  const former = rows.map(({ r }) => held(reader, area.top + r, area.left));
  const styles = rowsOf(area).map((row) => idOf(desk, reader.cell(row, area.left)?.s));
  const now = new Contents(reader);
  for (const { r, value } of rows) now.set(area.top + r, area.left, typed(value));
  now.put(desk, sheet);
  const { format } = step;
  if (format !== undefined)
    setStyles(
      desk,
      sheet,
      area,
      styles.map((id, r) => (step.values[r] === undefined ? id : reformatted(desk, id, format))),
      styles,
    );
  return (again, place) => {
    const back = new Contents(again.reader(sheet));
    rows.forEach(({ r }, i) => back.set(place.top + r, place.left, former[i]!));
    back.put(again, sheet);
    if (format === undefined) return;
    const worn = rowsOf(place).map((row) => idOf(again, again.reader(sheet).cell(row, place.left)?.s));
    setStyles(
      again,
      sheet,
      place,
      worn.map((id, r) => (step.values[r] === undefined ? id : styles[r]!)),
      worn,
    );
  };
}

type Styles = readonly (string | null)[];

/** The looks of a column's cells, from the top. */
function setStyles(desk: Desk, sheet: SheetId, { top, left }: Area, styles: Styles, before: Styles): void {
  const dressed = (ids: Styles) =>
    styleIds({ unitId: desk.unitId, subUnitId: sheet, top, left, ids: ids.map((id) => [id]) });
  desk.step.do(dressed(styles), dressed(before));
}
