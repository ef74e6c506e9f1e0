/**
 * The caseload's description. Fetched only when somebody sets one up: the invented people are large, and nothing else in
 * the pane needs them.
 */
import type { BookDescription } from "../../../src/caseload/book";
import { bringList, notBroughtSheet, type Brought } from "../../../src/caseload/brought";
import { caseloadBook, carriedBook } from "../../../src/caseload/index";
import type { Workbook } from "../../workbook/port";
import type { OlderCaseload } from "../bring-up-to-date/interface";
import { surveyOlder } from "../bring-up-to-date/survey";
import { identifierIn } from "../list/identifier";
import type { SurveyedList } from "../list/interface";
import { kindOfWord } from "../list/memory";
import { columnGroups, type SetUpChoices } from "./interface";

export interface Maker {
  /** @param asOf the day on which people are invented and states are counted, as a day number */
  describe(choices: SetUpChoices, asOf: number): BookDescription;
  /** Everything that an older caseload holds of the clinic's; null where it cannot be read. */
  surveyOlder(workbook: Pick<Workbook, "overview" | "read">): Promise<OlderCaseload | null>;
  /** A caseload by the present description, with all of that in it. */
  describeAnew(older: OlderCaseload, asOf: number): BookDescription;
  /** Somebody's own list as rows of a caseload, and what of it is none. */
  bring(list: SurveyedList): Brought;
  describeBrought(brought: Brought, asOf: number): BookDescription;
}

export const maker: Maker = {
  describe: ({ people, groups }, asOf) => caseloadBook({ asOf, people, groups: [...groups] }),
  surveyOlder,
  describeAnew: ({ carried, groups }, asOf) => carriedBook(carried, { asOf, groups }),
  bring: (list) =>
    bringList({
      headers: list.columns.map(({ header }) => header),
      rows: list.rows,
      rowNumbers: list.rowNumbers,
      columns: Object.fromEntries(
        Object.entries(list.guesses).flatMap(([role, { column }]) =>
          list.columns[column]!.isOurs ? [] : [[role, column]],
        ),
      ),
      identifier: identifierIn(list),
      kindOf: (word) => kindOfWord(list, word),
    }),
  describeBrought: (brought, asOf) => {
    const book = carriedBook(brought.carried, { asOf, groups: columnGroups });
    const left = notBroughtSheet(brought);
    return left ? { ...book, sheets: [...book.sheets, left] } : book;
  },
};
