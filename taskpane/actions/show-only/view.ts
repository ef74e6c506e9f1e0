/** Counts beside each choice, the rows that would be shown, and the change that shows them. Pure. */
import type { Change, Criterion, Expectation } from "../../workbook/port";
import type { SurveyedList } from "../list/interface";
import { count, figure, inQuotes, rowList } from "../../texts/pieces";
import type { Facet, Group, ShowChoices, ShowSurvey, View } from "./interface";

const tickedIn = (facet: Facet, { ticked }: ShowChoices): readonly Group[] => {
  const keys = ticked[facet.role] ?? [];
  return facet.groups.filter(({ key }) => keys.includes(key));
};

/** Rows that every one of these facets lets through. */
function rowsThrough(facets: readonly Facet[], choices: ShowChoices, rows: readonly number[]): readonly number[] {
  return facets.reduce<readonly number[]>((left, facet) => {
    const groups = tickedIn(facet, choices);
    return groups.length === 0 ? left : left.filter((row) => groups.some((group) => group.rows.has(row)));
  }, rows);
}

const rowsOf = (list: SurveyedList): readonly number[] => list.rows.map((_, row) => row);

/** Where a table stands it is named; a plain list by its place. */
const targetOf = ({ table, sheet, area }: SurveyedList) => (table === null ? { list: { sheet, area } } : { table });

function showChange(list: SurveyedList, criteria: readonly Criterion[]): Change {
  const { sheet, area } = list;
  const unchanged: Expectation =
    list.table === null
      ? { kind: "texts", sheet, area: { ...area, rows: 1 }, texts: [list.headerTexts] }
      : {
          kind: "table",
          table: list.table,
          columns: list.columns.map(({ header }) => header),
          dataRows: list.rows.length,
        };
  return { steps: [{ kind: "showRows", of: targetOf(list), criteria }], expects: [unchanged] };
}

/** Everything that was hidden comes back. */
export const showAll = (list: SurveyedList): Change => showChange(list, []);

/** Only the rows without a usable date; null where there are none, or no column to look at. */
export function showWithoutDate({ list: { list }, withoutDate: { column, values, rows } }: ShowSurvey): Change | null {
  return list && column !== null && rows.size > 0 ? showChange(list, [{ column, keeps: values }]) : null;
}

export function viewOf(survey: ShowSurvey, choices: ShowChoices): View {
  const { list } = survey.list;
  if (!list) return { facets: [], shown: 0, of: 0, says: [survey.list.sentence], change: null };
  const all = rowsOf(list);
  const facets = survey.facets.map((facet) => {
    const others = survey.facets.filter((other) => other !== facet);
    const open = new Set(rowsThrough(others, choices, all));
    const ticked = tickedIn(facet, choices);
    return {
      facet,
      groups: facet.groups.map((group) => ({
        group,
        isTicked: ticked.includes(group),
        count: [...group.rows].filter((row) => open.has(row)).length,
      })),
    };
  });
  const criteria = survey.facets.flatMap((facet): Criterion[] => {
    const groups = tickedIn(facet, choices);
    return groups.length === 0 ? [] : [{ column: facet.column, keeps: groups.flatMap(({ values }) => values) }];
  });
  const shown = rowsThrough(survey.facets, choices, all);
  return {
    facets,
    shown: shown.length,
    of: all.length,
    says: criteria.length === 0 ? [] : sayings(list, survey, shown),
    change: criteria.length === 0 ? null : showChange(list, criteria),
  };
}

function sayings(list: SurveyedList, survey: ShowSurvey, shown: readonly number[]): readonly string[] {
  const hides = list.rows.length - shown.length;
  const isShownNow = survey.hidden.size === hides && shown.every((row) => !survey.hidden.has(row));
  if (isShownNow) return [`These ${count(shown.length, "row")} are the ones shown now.`];
  const replaced =
    survey.hidden.size > 0
      ? [`${count(survey.hidden.size, "row")} of this list are hidden now: this choice replaces that.`]
      : [];
  return [
    `Shows ${figure(shown.length)} of ${count(list.rows.length, "row")} and hides ${figure(hides)}. Nothing is deleted or changed.`,
    ...replaced,
  ];
}

/** Said whatever is chosen; a list without such a column says that nobody can tell. */
export function withoutDateSentence(survey: ShowSurvey, view: View, choices: ShowChoices): string {
  const { list } = survey.list;
  const { column, header, rows } = survey.withoutDate;
  if (!list) return "";
  if (column === null)
    return "No column with the last change was found, so nobody can tell here which rows have no usable date. Say below which column it is.";
  if (rows.size === 0) return `Every row has a usable date in ${inQuotes(header)}.`;
  const numbers = [...rows].map((row) => list.rowNumbers[row]!);
  const named = `${count(rows.size, "row")} without a usable date in ${inQuotes(header)} (${rowList(numbers)})`;
  if (view.change === null) return `${named}.`;
  const shown = new Set(rowsThrough(survey.facets, choices, rowsOf(list)));
  const hidden = [...rows].filter((row) => !shown.has(row)).length;
  return hidden === 0
    ? `And ${named}; all of them are among the rows shown.`
    : `And ${named}; this choice hides ${hidden === rows.size ? "all" : figure(hidden)} of them.`;
}
