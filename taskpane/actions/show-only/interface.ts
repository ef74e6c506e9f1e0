/**
 * Show only: what the pane gets and gives.
 *
 *   const survey = await surveyList(workbook, asked);         // the list, what can be chosen by, who has no date
 *   const view = viewOf(survey, choices);                     // counts beside each choice, rows shown and hidden
 *   const receipt = await workbook.apply(view.change, progress);
 */
import type { Role } from "../../../src/columns/role";
import type { Change, Value } from "../../workbook/port";
import type { Survey } from "../add-columns/interface";

/** By what rows can be chosen, in the order in which it is offered. */
export const facetRoles = ["kind", "shape", "access", "size", "state", "changedBy", "status"] as const;
export type FacetRole = Extract<Role, (typeof facetRoles)[number]>;

/** Cells that count as one choice: the same word whatever its case and spaces, the same size however it was typed. */
export interface Group {
  readonly key: string;
  /** As the list writes it most often; "(blank)" and "cannot be read" say so. */
  readonly label: string;
  /** What the label does not say: "as typed: 14 Fr, CH14". */
  readonly note: string;
  /** The different values behind it. */
  readonly values: readonly Value[];
  /** Rows of the list, from 0. */
  readonly rows: ReadonlySet<number>;
}

export interface Facet {
  readonly role: FacetRole;
  /** Of the list, from 0. */
  readonly column: number;
  readonly header: string;
  readonly groups: readonly Group[];
}

/** Rows whose date cannot be used: the riskiest ones, so they are named whatever is chosen. */
export interface WithoutDate {
  /** The column that was looked at; null where the list has none that holds the last change. */
  readonly column: number | null;
  readonly header: string;
  readonly rows: ReadonlySet<number>;
  /** Their different values in that column. */
  readonly values: readonly Value[];
}

export interface ShowSurvey {
  readonly list: Survey;
  readonly facets: readonly Facet[];
  readonly withoutDate: WithoutDate;
  /** Rows of the list that its sheet does not show now, from 0. */
  readonly hidden: ReadonlySet<number>;
  /** The list is the ready-made caseload's own. */
  readonly isCaseload: boolean;
}

export interface ShowChoices {
  /** Keys of the ticked groups; nothing ticked under a role does not choose by it. */
  readonly ticked: { readonly [R in FacetRole]?: readonly string[] };
  /** Somebody's correction of which column is what; null: no such column. */
  readonly columns: { readonly [R in Role]?: number | null };
}

export interface CountedGroup {
  readonly group: Group;
  readonly isTicked: boolean;
  /** Rows that would be shown with this choice, given what is ticked under the other headings. */
  readonly count: number;
}

export interface View {
  readonly facets: readonly { readonly facet: Facet; readonly groups: readonly CountedGroup[] }[];
  readonly shown: number;
  readonly of: number;
  readonly says: readonly string[];
  /** Null while nothing is ticked. */
  readonly change: Change | null;
}
