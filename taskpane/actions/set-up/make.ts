/**
 * The caseload's description. Fetched only when somebody sets one up: the invented people are large, and nothing else in
 * the pane needs them.
 */
import type { BookDescription } from "../../../src/caseload/book";
import { caseloadBook, carriedBook } from "../../../src/caseload/index";
import type { Workbook } from "../../workbook/port";
import type { OlderCaseload } from "../bring-up-to-date/interface";
import { surveyOlder } from "../bring-up-to-date/survey";
import type { SetUpChoices } from "./interface";

export interface Maker {
  /** @param asOf the day on which people are invented and states are counted, as a day number */
  describe(choices: SetUpChoices, asOf: number): BookDescription;
  /** Everything that an older caseload holds of the clinic's; null where it cannot be read. */
  surveyOlder(workbook: Pick<Workbook, "overview" | "read">): Promise<OlderCaseload | null>;
  /** A caseload by the present description, with all of that in it. */
  describeAnew(older: OlderCaseload, asOf: number): BookDescription;
}

export const maker: Maker = {
  describe: ({ people, groups }, asOf) => caseloadBook({ asOf, people, groups: [...groups] }),
  surveyOlder,
  describeAnew: ({ carried, groups }, asOf) => carriedBook(carried, { asOf, groups }),
};
