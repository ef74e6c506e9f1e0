/** Shows some rows of a list with the host's own filter, and all of them again. */
import type { Receipt } from "../../workbook/port";
import type { Afterwards } from "../action";
import { count, figure } from "../../texts/pieces";
import type { ShowSurvey, View } from "./interface";

export { afterSorting, urgencyOrder } from "./order";
export { surveyList } from "./survey";
export { showAll, showWithoutDate, viewOf, withoutDateSentence } from "./view";
export { facetRoles, type ShowChoices, type ShowSurvey, type View } from "./interface";

const tried = (receipt: Receipt, sentences: readonly string[]): Afterwards => ({
  outcome: receipt.outcome,
  sentences: receipt.outcome === "done" ? sentences : [receipt.sentence],
  where: receipt.done.find(({ place }) => place !== null)?.place ?? null,
  canTakeBack: false,
});

export const afterShown = ({ shown, of }: View, receipt: Receipt): Afterwards =>
  tried(receipt, [`${figure(shown)} of ${count(of, "row")} are shown now; the others are hidden.`]);

export const afterAll = (survey: ShowSurvey, receipt: Receipt): Afterwards =>
  tried(receipt, [`All ${count(survey.list.list?.rows.length ?? 0, "row")} are shown again.`]);

export const afterWithoutDate = ({ withoutDate: { rows } }: ShowSurvey, receipt: Receipt): Afterwards =>
  tried(receipt, [`${count(rows.size, "row")} without a usable date are shown now; the others are hidden.`]);
