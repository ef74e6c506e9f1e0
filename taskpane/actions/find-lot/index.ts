/** Find a lot: whom a recall touches. Looks, and changes nothing but which rows are shown. */
export { lotSheet } from "./as-sheet";
export { findLots, listsOf, showAllOf, showFound } from "./found";
export { lookedInText, surveyLots, type AskedLots } from "./survey";
export {
  groups,
  type FoundLots,
  type LotGroup,
  type LotList,
  type LotRow,
  type LotSurvey,
  type Similar,
} from "./interface";
