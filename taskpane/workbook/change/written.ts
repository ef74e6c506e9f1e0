/**
 * What a host remembers of a step it carried out, and whether the workbook still holds it. Formulas are remembered as
 * the host tells them right after the writing, because a host may spell a formula its own way.
 */
import { cellAddress } from "../../../src/columns/formula";
import type { Block, Done, Overview, SheetId, Workbook } from "../port";
import type { Standing, Written } from "./standing";
import { asText, isSame } from "./expectations";
import { namedCell } from "./named-cell";
import { sheetStanding, type SheetTarget } from "./new-sheet";
import { gapStanding, rowsStanding } from "./rows-written";
import { changedStanding, refreshedStanding, tellingCells, type ReenterTarget, type RefreshTarget } from "./refreshed";
import { Refusal } from "./refusal";
import { showRowsTarget } from "./shown-rows";
import type { AppendTarget, ChangeRowTarget, ColumnsTarget, FormulaTarget, NamedCellTarget, Target } from "./target";

/** Steps whose cells are remembered at the end of the change, over the target's area. */
export const isRemembered = (
  target: Target,
): target is AppendTarget | ChangeRowTarget | NamedCellTarget | (SheetTarget & { readonly sheet: SheetId }) =>
  target.kind === "appendRows" ||
  target.kind === "changeRow" ||
  target.kind === "writeNamed" ||
  (target.kind === "addSheet" && target.sheet !== null);

/** Steps after which the host's own spelling of each formula is remembered. */
export const isReformed = (target: Target): target is RefreshTarget | ReenterTarget =>
  target.kind === "refreshColumn" || target.kind === "reenterFormulas";

/** Formulas before names, last first: a name is looked at when nothing of ours uses it any more. */
export const inReverse = <T extends { readonly written: Written }>(standings: readonly T[]): readonly T[] => {
  const last = [...standings].reverse();
  const isName = (one: T) => one.written.target.kind === "defineName";
  return [...last.filter((one) => !isName(one)), ...last.filter(isName)];
};

/** With what rows and named cells hold now that the whole change is done. */
export async function atTheEnd<W extends Written>(written: W, workbook: Reader): Promise<W> {
  if (written.target.kind === "changeColumn") {
    const { values } = await workbook.read(tellingCells(written.target), ["values"]);
    return { ...written, values: values! };
  }
  if (!isRemembered(written.target)) return written;
  const { values, formulas } = await workbook.read(written.target, ["values", "formulas"]);
  return { ...written, values: values!, formulas: formulas! };
}

export const doneOf = (written: Written): Done => {
  const { target } = written;
  const isNowhere = target.kind === "defineName" || target.kind === "removeRows" || target.sheet === null;
  return {
    step: target.step,
    place: isNowhere ? null : { sheet: target.sheet, area: target.area },
    changed: written.changed,
  };
};

type Reader = Pick<Workbook, "read">;

/** Finds what was written. A refusal means that it cannot be told any more which cells are ours. */
export async function standing<W extends Written>(
  written: W,
  workbook: Reader,
  overview: Overview,
): Promise<Standing<W> | Refusal> {
  const { target } = written;
  switch (target.kind) {
    case "addColumns":
      return target.table === null
        ? listColumns(written, target, workbook, overview)
        : tableColumns(written, target, target.table, workbook, overview);
    case "refreshColumn":
    case "reenterFormulas": {
      const found = await refreshedStanding(target, written.formulas, workbook, overview);
      return found instanceof Refusal ? found : { written, ...found };
    }
    case "changeColumn": {
      const found = await changedStanding(target, written.values ?? [], workbook, overview);
      return found instanceof Refusal ? found : { written, ...found };
    }
    case "writeFormula":
      return oneFormula(written, target, workbook, overview);
    case "defineName": {
      const now = overview.names.find((one) => one.name.toLowerCase() === target.step.name.toLowerCase());
      const same = now === undefined || now.refersTo === written.formulas[0]?.[0];
      return { written, area: null, differing: same ? [] : [target.step.name] };
    }
    case "appendRows":
    case "changeRow":
      return rowsStanding(written, target, workbook, overview);
    case "removeRows":
      return gapStanding(written, target, workbook, overview);
    case "writeNamed":
      return oneNamedCell(written, target, workbook, overview);
    case "addSheet":
      return { written, ...(await sheetStanding(target, written, workbook, overview)) };
    case "showRows": {
      const found = showRowsTarget(
        target.step,
        overview,
        new Map(overview.tables.map((one) => [one.name.toLowerCase(), one])),
      );
      return found instanceof Refusal ? found : { written, area: found.area, differing: [] };
    }
  }
}

async function tableColumns<W extends Written>(
  written: W,
  target: ColumnsTarget,
  name: string,
  workbook: Reader,
  overview: Overview,
): Promise<Standing<W> | Refusal> {
  const table = overview.tables.find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (!table) return new Refusal(`The table "${name}" is no longer there. Nothing was removed.`);
  const first = table.columns.indexOf(target.columns[0]?.header ?? "");
  const missing = target.columns.find((column, i) => table.columns[first + i] !== column.header);
  if (first < 0 || missing)
    return new Refusal(
      `The new columns no longer stand together in "${name}". Nothing was removed: delete them by hand.`,
    );
  const behind = table.columns[first + target.columns.length];
  if (behind !== undefined)
    return new Refusal(
      `The column "${behind}" was added behind the new ones. Nothing was removed: delete them by hand.`,
    );
  const columns = { left: table.area.left + first, columns: target.columns.length };
  const area = { top: table.area.top, rows: table.area.rows, ...columns };
  const rows = table.area.rows - 1 - (table.hasTotals ? 1 : 0);
  const block = await workbook.read({ sheet: table.sheet, area }, ["values", "formulas"]);
  const differing: string[] = [];
  target.columns.forEach((_, c) => {
    const texts = new Set(written.formulas.map((row) => row[c] ?? null));
    const same = texts.size === 1 ? [...texts][0] : undefined;
    for (let r = 0; r < rows; r++) {
      const expected = same !== undefined ? same : (written.formulas[r]?.[c] ?? null);
      if (!holds(target, block, r, c, expected)) differing.push(cellAddress(area.top + 1 + r, area.left + c));
    }
    if (table.hasTotals && asText(block.values?.[rows + 1]?.[c] ?? null) !== "")
      differing.push(cellAddress(area.top + 1 + rows, area.left + c));
  });
  return { written, area, differing };
}

async function listColumns<W extends Written>(
  written: W,
  target: ColumnsTarget,
  workbook: Reader,
  overview: Overview,
): Promise<Standing<W> | Refusal> {
  const { area } = target;
  const gone = new Refusal(
    "The new columns are no longer where they were put, so nothing was removed. If they still stand in the sheet, delete them there.",
  );
  if (!overview.sheets.some((sheet) => sheet.id === target.sheet)) return gone;
  const block = await workbook.read({ sheet: target.sheet, area }, ["values", "formulas"]);
  if (target.columns.some((column, c) => asText(block.values?.[0]?.[c] ?? null) !== column.header)) return gone;
  const differing: string[] = [];
  written.formulas.forEach((row, r) =>
    row.forEach((text, c) => {
      if (!holds(target, block, r, c, text)) differing.push(cellAddress(area.top + 1 + r, area.left + c));
    }),
  );
  return { written, area, differing };
}

/** @param block header and data rows of the new columns */
function holds({ columns }: ColumnsTarget, block: Block, row: number, column: number, formula: string | null): boolean {
  if ((block.formulas?.[row + 1]?.[column] ?? null) !== formula) return false;
  const added = columns[column]!;
  return !("values" in added) || isSame(block.values?.[row + 1]?.[column] ?? null, added.values[row] ?? null);
}

async function oneFormula<W extends Written>(written: W, target: FormulaTarget, workbook: Reader, overview: Overview) {
  if (!overview.sheets.some((sheet) => sheet.id === target.sheet))
    return new Refusal("The sheet with the formula is no longer there. Nothing was removed.");
  const { area } = target;
  const block = await workbook.read({ sheet: target.sheet, area }, ["formulas"]);
  const same = (block.formulas?.[0]?.[0] ?? null) === written.formulas[0]?.[0];
  return { written, area, differing: same ? [] : [cellAddress(area.top, area.left)] };
}

async function oneNamedCell<W extends Written>(
  written: W,
  target: NamedCellTarget,
  workbook: Reader,
  overview: Overview,
) {
  const place = namedCell(target.step.name, overview);
  if (place instanceof Refusal) return place;
  const block = await workbook.read(place, ["values", "formulas"]);
  const same = block.formulas![0]![0] === null && isSame(block.values![0]![0]!, written.values![0]![0]!);
  const { top, left } = place.area;
  return { written, area: place.area, differing: same ? [] : [cellAddress(top, left)] };
}

/** "Cells H4, H9 and 3 more": which cells differ, said before anything is removed. */
export function differenceSentence(cells: readonly string[]): string {
  const shown = cells.slice(0, 5).join(", ");
  const more = cells.length > 5 ? ` and ${cells.length - 5} more` : "";
  return `Changed since: ${shown}${more}. Taking back would remove that too.`;
}

/** Does a formula use this name? Texts and quoted sheet names in it do not count. */
function mentions(formula: string, name: string): boolean {
  const bare = formula.replace(/"(?:[^"]|"")*"/g, '""').replace(/'(?:[^']|'')*'!/g, "");
  const words = bare.match(/[\p{L}\p{N}_.\\]+/gu) ?? [];
  return words.some((word) => word.toLowerCase() === name.toLowerCase());
}

/** What a name stands for does not count. A name that is used is left where it is when its step is taken back. */
export async function isNameUsed(name: string, workbook: Pick<Workbook, "overview" | "read">): Promise<boolean> {
  const overview = await workbook.overview();
  const others = overview.names.filter((one) => one.name.toLowerCase() !== name.toLowerCase());
  if (others.some((one) => mentions(one.refersTo, name))) return true;
  for (const sheet of overview.sheets) {
    if (!sheet.used) continue;
    const block = await workbook.read({ sheet: sheet.id, area: sheet.used }, ["formulas"]);
    if (block.formulas?.some((row) => row.some((text) => text !== null && mentions(text, name)))) return true;
  }
  return false;
}
