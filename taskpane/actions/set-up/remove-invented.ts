/**
 * The invented people go away with one press, and nobody else does. Rows that the clinic added stay. Invented rows that
 * somebody has changed are shown first and go only when that was asked for; while any stays, the sheets stay marked.
 */
import { named, namesOf } from "../caseload/read";
import { headerKey, recogniseCaseload } from "../caseload/recognise";
import { count, inQuotes, rowList, together } from "../../texts/pieces";
import { problem, type Action, type Planned } from "../action";
import { asText } from "../../workbook/change/expectations";
import type { Change, Expectation, Overview, Place, Workbook } from "../../workbook/port";
import { INVENTED_ON, rowsTables, type RowsTable } from "../../../src/caseload/names";
import { findInvented, readAll, type AllRows, type Found, type TableRows } from "./invented-rows";

const NO_LONGER_MARKED = "The sheets are no longer marked as invented.";

export type RemoveSurvey =
  | { readonly is: "invented"; readonly rows: AllRows; readonly found: Found; readonly sheetNames: SheetNames }
  /** Nothing of ours to remove; the sentence says why. */
  | { readonly is: "nothing"; readonly sentence: string };

type SheetNames = Readonly<Record<RowsTable, string>>;

export interface RemoveChoices {
  /** Invented rows that were changed since go as well. */
  readonly withChanged: boolean;
}

export interface ChangedRow {
  /** "Tubes in use, row 14" */
  readonly label: string;
  readonly where: Place;
}

export interface RemovePlan extends Planned {
  readonly changed: readonly ChangedRow[];
  readonly removed: number;
  /** Some invented rows stay, and the sheets stay marked. */
  readonly staysMarked: boolean;
}

/** Looks at the overview only: whether the pane should offer it at all. */
export const isMarkedInvented = (overview: Overview): boolean =>
  recogniseCaseload(overview).is === "caseload" && isFilled(named(namesOf(overview), INVENTED_ON));

const isFilled = (value: unknown): boolean => value !== null && value !== "" && value !== 0;

async function survey(workbook: Workbook): Promise<RemoveSurvey> {
  const overview = await workbook.overview();
  const recognised = recogniseCaseload(overview);
  if (recognised.is !== "caseload") return { is: "nothing", sentence: recognised.sentence };
  if (!isMarkedInvented(overview)) {
    return { is: "nothing", sentence: "This caseload is not marked as invented: nothing is removed from it." };
  }
  const rows = await readAll(recognised.tables, workbook);
  const nameOf = (key: RowsTable): string =>
    overview.sheets.find(({ id }) => id === rows[key].overview.sheet)?.name ?? rows[key].overview.name;
  const sheetNames = { tubes: nameOf("tubes"), checks: nameOf("checks"), changes: nameOf("changes") };
  return { is: "invented", rows, found: findInvented(rows), sheetNames };
}

/** Sheet row as people see it, from 1. */
const sheetRow = ({ overview }: TableRows, index: number): number => overview.area.top + 2 + index;

function plan(found: RemoveSurvey, { withChanged }: RemoveChoices): RemovePlan | ReturnType<typeof problem> {
  if (found.is === "nothing") return problem(found.sentence);
  const { rows, found: invented, sheetNames } = found;
  const going = (key: RowsTable): readonly number[] => {
    const { untouched, changed } = invented.tables[key];
    return withChanged ? [...untouched, ...changed].sort((a, b) => a - b) : untouched;
  };
  const counted = (of: (key: RowsTable) => readonly number[]): string =>
    together(rowsTables.flatMap((key) => (of(key).length === 0 ? [] : [`${of(key).length} in ${sheetNames[key]}`])));
  const total = (of: (key: RowsTable) => readonly number[]): number =>
    rowsTables.reduce((sum, key) => sum + of(key).length, 0);
  const changed = (key: RowsTable) => invented.tables[key].changed;
  const own = (key: RowsTable) => invented.tables[key].own;
  const staysMarked = !withChanged && total(changed) > 0;

  const says = [
    ...(total(changed) > 0 ? [changedSentence(found, withChanged)] : []),
    total(going) === 0
      ? "No invented row is left as it was invented: none is removed."
      : `Removes ${count(total(going), "invented row")}: ${counted(going)}.`,
    total(own) === 0
      ? "No other row is in these sheets."
      : `${count(total(own), "row")} that your clinic added ${total(own) === 1 ? "stays" : "stay"}: ${counted(own)}.`,
    staysMarked ? "The sheets stay marked as invented, because invented rows stay." : NO_LONGER_MARKED,
  ];
  const steps: Change["steps"] = [
    ...rowsTables.flatMap((key) =>
      going(key).length === 0
        ? []
        : [{ kind: "removeRows" as const, table: rows[key].overview.name, rows: going(key) }],
    ),
    ...(staysMarked ? [] : [{ kind: "writeNamed" as const, name: INVENTED_ON, value: null }]),
  ];
  if (steps.length === 0) return problem(`${says[0]} Nothing else is invented here.`);
  return {
    outcome: "planned",
    change: { steps, expects: rowsTables.flatMap((key) => expectations(rows[key], KEY_HEADERS[key])) },
    says,
    changed: rowsTables.flatMap((key) =>
      changed(key).map((index) => ({
        label: `${sheetNames[key]}, row ${sheetRow(rows[key], index)}`,
        where: placeOf(rows[key], index),
      })),
    ),
    removed: total(going),
    staysMarked,
  };
}

function changedSentence({ rows, found, sheetNames }: Extract<RemoveSurvey, { is: "invented" }>, go: boolean): string {
  const each = rowsTables.flatMap((key) => {
    const { changed } = found.tables[key];
    return changed.length === 0
      ? []
      : [`${sheetNames[key]} ${rowList(changed.map((index) => sheetRow(rows[key], index)))}`];
  });
  const all = rowsTables.reduce((sum, key) => sum + found.tables[key].changed.length, 0);
  const what = `${count(all, "row")} of invented people ${all === 1 ? "was" : "were"} changed or added since (${each.join("; ")})`;
  return `${what}: ${all === 1 ? "it" : "they"} ${go ? (all === 1 ? "goes" : "go") + " too" : all === 1 ? "stays" : "stay"}.`;
}

const placeOf = ({ overview }: TableRows, index: number): Place => ({
  sheet: overview.sheet,
  area: { ...overview.area, top: overview.area.top + 1 + index, rows: 1 },
});

/** What tells rows apart: were one of these changed meanwhile, another row would go. */
const KEY_HEADERS: Readonly<Record<RowsTable, readonly string[]>> = {
  tubes: ["ID", "Born", "Device in"],
  checks: ["ID", "Checked on", "Out mL", "Put in mL"],
  changes: ["ID", "In", "Out", "Reason"],
};

function expectations({ overview, values }: TableRows, headers: readonly string[]): readonly Expectation[] {
  const { name, columns, sheet, area } = overview;
  const texts = headers.flatMap((header): Expectation[] => {
    const column = columns.findIndex((one) => headerKey(one) === headerKey(header));
    if (column < 0) return [];
    return [
      {
        kind: "texts",
        sheet,
        area: { top: area.top + 1, left: area.left + column, rows: values.length, columns: 1 },
        texts: values.map((row) => [asText(row[column] ?? null)]),
      },
    ];
  });
  return [{ kind: "table", table: name, columns, dataRows: values.length }, ...texts];
}

export const removeInvented: Action<RemoveSurvey, undefined, RemoveChoices, RemovePlan> = {
  survey,
  plan,
  afterwards: ({ removed, staysMarked }, { outcome, sentence, done }) => {
    const canTakeBack = done.some(({ changed }) => changed);
    if (outcome === "done") {
      const marked = staysMarked
        ? "The sheets stay marked as invented: look at the rows that stayed."
        : NO_LONGER_MARKED;
      return { outcome, sentences: [`Removed ${count(removed, "invented row")}.`, marked], where: null, canTakeBack };
    }
    const still = canTakeBack
      ? `Some of it was done: ${together(done.filter(({ changed }) => changed).map(({ step }) => inQuotes(step.kind === "removeRows" ? step.table : INVENTED_ON)))}. Take it back, or look at the lists.`
      : "Nothing was removed.";
    return { outcome, sentences: [sentence, still], where: null, canTakeBack };
  },
};
