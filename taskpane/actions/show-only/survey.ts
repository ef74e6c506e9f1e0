/** Looks at a list: by what its rows can be chosen, who has no usable date, and what is hidden now. */
import type { Role } from "../../../src/columns/role";
import { tableNames } from "../../../src/caseload/names";
import type { Overview, Workbook } from "../../workbook/port";
import { addColumns } from "../add-columns";
import type { Survey } from "../add-columns/interface";
import type { Asked, SurveyedList } from "../list/interface";
import { headerKey, recogniseCaseload } from "../caseload/recognise";
import { kindOfWord } from "../list/memory";
import { groupsOf, type KindOf } from "./groups";
import {
  facetRoles,
  type Facet,
  type FacetRole,
  type ShowChoices,
  type ShowSurvey,
  type WithoutDate,
} from "./interface";
import { withoutDateIn } from "./without-date";

/** The caseload's own headers; other lists are read by guesses that can be corrected. */
const OWN_HEADERS: { readonly [R in FacetRole | "last"]: string } = {
  kind: "Held by",
  shape: "Shape",
  access: "Access",
  size: "Size Fr",
  state: "Change",
  changedBy: "Changed by",
  status: "Status",
  last: "Device in",
};

export async function surveyList(
  workbook: Workbook,
  asked: Asked,
  columns: ShowChoices["columns"] = {},
): Promise<ShowSurvey> {
  const overview = await workbook.overview();
  const own = ownTable(overview);
  const survey = await addColumns.survey(workbook, asked.list === undefined && own ? { ...asked, list: own } : asked);
  const { list } = survey;
  if (!list) {
    const withoutDate = { column: null, header: "", rows: new Set<number>(), values: [] };
    return { list: survey, facets: [], withoutDate, hidden: new Set(), isCaseload: false };
  }
  const isCaseload = list.key === own;
  const kindOf = isCaseload ? null : (word: string) => kindOfWord(list, word);
  const columnOf = columnFinder(survey, list, columns, isCaseload);
  return {
    list: survey,
    facets: facetRoles.flatMap((role) => facetOf(list, role, columnOf(role), kindOf)),
    withoutDate: datesOf(list, columnOf("last"), survey.asOf.day),
    hidden: await hiddenRows(workbook, list),
    isCaseload,
  };
}

/** The key under which the list of tubes is offered, where this is the ready-made caseload. */
const ownTable = (overview: Overview): string | null =>
  recogniseCaseload(overview).is === "caseload" ? `table ${tableNames.tubes}` : null;

function columnFinder(
  { proposal }: Survey,
  list: SurveyedList,
  chosen: ShowChoices["columns"],
  isCaseload: boolean,
): (role: FacetRole | "last") => number | null {
  return (role: Role) => {
    const corrected = chosen[role];
    if (corrected !== undefined) return corrected;
    if (!isCaseload) return proposal.columns[role] ?? null;
    const own = OWN_HEADERS[role as FacetRole | "last"];
    const at = list.columns.findIndex(({ header }) => headerKey(header) === headerKey(own));
    return at < 0 ? null : at;
  };
}

/** @param kindOf null for a caseload, whose words say how a tube is held and not of which kind it is */
function facetOf(list: SurveyedList, role: FacetRole, column: number | null, kindOf: KindOf | null): Facet[] {
  const found = column === null ? undefined : list.columns[column];
  if (column === null || !found) return [];
  const groups = groupsOf(
    list.rows.map((row) => row[column] ?? null),
    role,
    list.shownDates.get(column),
    kindOf,
  );
  return [{ role, column, header: found.header, groups }];
}

function datesOf(list: SurveyedList, column: number | null, asOf: number): WithoutDate {
  const found = column === null ? undefined : list.columns[column];
  if (column === null || !found) return { column: null, header: "", rows: new Set(), values: [] };
  const values = list.rows.map((row) => row[column] ?? null);
  return { column, header: found.header, ...withoutDateIn(values, asOf) };
}

async function hiddenRows(workbook: Workbook, list: SurveyedList): Promise<ReadonlySet<number>> {
  const first = list.rowNumbers[0];
  if (first === undefined) return new Set();
  const area = { top: first - 1, left: list.area.left, rows: list.rows.length, columns: 1 };
  const { hidden = [] } = await workbook.read({ sheet: list.sheet, area }, ["hidden"]);
  return new Set(hidden.flatMap((isHidden, row) => (isHidden ? [row] : [])));
}
