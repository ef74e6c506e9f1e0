/**
 * As values: columns that were added here keep what they say now, with the day beside the list, and get their formulas
 * back. A kept column is none of ours any more: *Today* passes it over, because an old word must not pass for today's.
 */
import { textOf } from "../../../src/columns/sheet-block";
import { CellError } from "../../../src/worksheet/error";
import { shortDate } from "../../../src/words/date-in-words";
import { asValues as words } from "../../texts/as-values";
import type { Overview, Receipt, Step, Value, Workbook } from "../../workbook/port";
import { problem, type Afterwards, type Planned, type Problem } from "../action";
import { addColumns } from "../add-columns";
import type { Survey } from "../add-columns/interface";
import { expectationsOf } from "../list/expected";
import type { Asked, SurveyedList } from "../list/interface";
import { byHeaders, keptIn, keptName, nextNumber, templateOf, written, type Kept } from "./kept";

/** The header of the column that says when. */
const WORKED_OUT = "Worked out";

export interface ValuesSurvey extends Pick<Survey, "lists" | "list" | "sentence"> {
  /** Columns with formulas of ours, by their place in the list. */
  readonly columns: readonly { readonly column: number; readonly header: string; readonly formula: string }[];
  /** Columns that were kept as values and still stand there. */
  readonly kept: readonly (Kept & { readonly column: number })[];
  readonly names: Overview["names"];
  readonly today: number;
}

export interface ValuesPlan extends Planned {
  readonly headers: readonly string[];
  readonly to: "values" | "formulas";
  readonly day: string;
}

export async function surveyValues(workbook: Workbook, asked: Asked): Promise<ValuesSurvey> {
  const { lists, list, sentence, asOf } = await addColumns.survey(workbook, asked);
  const { names } = await workbook.overview();
  const columns = (list?.recipes ?? []).flatMap(({ present }) => (present ? [{ ...present }] : []));
  const latest = new Map(keptIn(names).map((one) => [one.header.toLowerCase(), one]));
  const kept = [...latest.values()].flatMap((one) => {
    const column = list?.columns.find(({ header }) => header.toLowerCase() === one.header.toLowerCase());
    const hasFormula = columns.some((other) => other.column === column?.index);
    return list && one.list === list.label && column && !hasFormula ? [{ ...one, column: column.index }] : [];
  });
  return { lists, list, sentence, columns, kept, names, today: asOf.day };
}

const toOf = ({ table, sheet, area }: SurveyedList) => (table === null ? { list: { sheet, area } } : { table });

/** An error stays to be read, as a text: nothing good is made of it. */
const said = (value: Value) => (value instanceof CellError ? value.code : value);

export function planValues(survey: ValuesSurvey, chosen: readonly number[]): ValuesPlan | Problem {
  const { list } = survey;
  if (!list) return problem(survey.sentence);
  const values = survey.columns.filter(({ column }) => chosen.includes(column));
  const back = survey.kept.filter(({ column }) => chosen.includes(column));
  if (values.length + back.length === 0) return problem(words.tick);
  if (values.length > 0 && back.length > 0) return problem(words.both);
  const blocked = list.obstacles[0];
  if (blocked) return blocked;
  return values.length > 0 ? planToValues(survey, list, values) : planBack(survey, list, back);
}

function planToValues(
  survey: ValuesSurvey,
  list: SurveyedList,
  columns: ValuesSurvey["columns"],
): ValuesPlan | Problem {
  const day = shortDate(survey.today);
  const first = nextNumber(survey.names);
  const names: Step[] = [];
  for (const [i, { header, formula }] of columns.entries()) {
    const read = byHeaders(formula, list);
    if (read === null) return problem(words.gone(header, "?"));
    const kept = { list: list.label, header, day, formula: read };
    names.push({ kind: "defineName", name: keptName(first + i), refersTo: written(kept) });
  }
  const to = toOf(list);
  const steps = columns.map(({ column }): Step => ({
    kind: "changeColumn",
    to,
    column,
    values: list.rows.map((row) => said(row[column] ?? null)),
    overFormulas: true,
  }));
  const still = survey.kept.map((one) => ({ header: one.header, day: one.day }));
  const notes = noteStep(list, [...still, ...columns.map(({ header }) => ({ header, day }))]);
  if ("outcome" in notes) return notes;
  return planned(list, [...names, ...steps, notes], columns, "values", day);
}

function planBack(survey: ValuesSurvey, list: SurveyedList, back: ValuesSurvey["kept"]): ValuesPlan | Problem {
  const steps: Step[] = [];
  for (const one of back) {
    const formula = templateOf(one, list);
    if ("missing" in formula) return problem(words.gone(one.header, formula.missing));
    steps.push({ kind: "refreshColumn", to: toOf(list), column: one.column, formula });
  }
  const notes = noteStep(
    list,
    survey.kept.filter((one) => !back.includes(one)),
  );
  if ("outcome" in notes) return notes;
  return planned(list, [...steps, notes], back, "formulas", "");
}

/** "1 Dec 2026: Change due, Change" in every row with anything in it; a row that comes later has nothing there. */
function noteStep(
  list: SurveyedList,
  kept: readonly { readonly header: string; readonly day: string }[],
): Step | Problem {
  const days = [...new Set(kept.map(({ day }) => day))];
  const text = days
    .map(
      (day) =>
        `${day}: ${kept
          .filter((one) => one.day === day)
          .map(({ header }) => header)
          .join(", ")}`,
    )
    .join("; ");
  const values = list.rows.map((row) => (text !== "" && row.some((cell) => textOf(cell).trim() !== "") ? text : null));
  const there = list.columns.find(({ header }) => header === WORKED_OUT);
  if (there) return { kind: "changeColumn", to: toOf(list), column: there.index, values };
  if (list.room < 1) return problem(list.obstacles[0]?.sentence ?? words.noRoom);
  return { kind: "addColumns", to: toOf(list), columns: [{ header: WORKED_OUT, format: "General", values }] };
}

function planned(
  list: SurveyedList,
  steps: readonly Step[],
  columns: readonly { readonly column: number; readonly header: string }[],
  to: ValuesPlan["to"],
  day: string,
): ValuesPlan {
  const adds = steps.some(({ kind }) => kind === "addColumns");
  const beside = { ...list.area, left: list.area.left + list.area.columns, columns: 1 };
  return {
    outcome: "planned",
    change: {
      steps,
      expects: expectationsOf(
        list,
        columns.map(({ column }) => column),
        adds ? beside : null,
      ),
    },
    says: [words.says(list.rows.length)],
    headers: columns.map(({ header }) => header),
    to,
    day,
  };
}

export function afterValues({ headers, to, day }: ValuesPlan, { outcome, sentence, done }: Receipt): Afterwards {
  const canTakeBack = done.some(({ changed }) => changed);
  const where = done.find(({ step, place }) => step.kind !== "defineName" && place !== null)?.place ?? null;
  const success = to === "values" ? words.done(headers, day) : words.backDone(headers);
  return { outcome, sentences: [outcome === "done" ? success : sentence], where, canTakeBack };
}
