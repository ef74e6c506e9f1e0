/**
 * The caseload's description and its file. Fetched only when somebody sets one up: the invented people and the writer
 * are large, and nothing else in the pane needs them.
 */
import type { BookDescription } from "../../../src/caseload/book";
import { caseloadBook } from "../../../src/caseload/index";
import { writeBook } from "../../workbook/file";
import type { SetUpChoices } from "./interface";

export interface Maker {
  /** @param asOf the day on which people are invented and states are counted, as a day number */
  describe(choices: SetUpChoices, asOf: number): BookDescription;
  write(book: BookDescription): Promise<Uint8Array>;
}

export const maker: Maker = {
  describe: ({ people, groups }, asOf) => caseloadBook({ asOf, people, groups: [...groups] }),
  write: writeBook,
};
