/** To do: the most urgent single thing of a row, in words; `nothing due` only where nothing is missing either. */
import { formula, quoted, type FormulaTemplate } from "../../../columns/formula";
import { SHORT_MONTHS } from "../../../words/date-in-words";
import { PLAIN, type CaseloadColumn, type Slots } from "../../column";
import { is } from "../../reading";
import { NO_URGENCY, URGENCY, urgencies, urgencyKey, wordsThatAsk, type ToDoWord } from "../../urgency";
import { away } from "../away";
import { checksKey, fitKey, suppliesKey } from "./arranging";
import { bedsideKey } from "./bedside";
import { datesKey } from "./dates";
import { peopleKey } from "./people";
import { siteKey } from "./site";

/** Each gives the place of its most urgent word, or "". */
export const keyColumns: readonly CaseloadColumn[] = [
  ...[bedsideKey, siteKey, datesKey, peopleKey, checksKey, suppliesKey, fitKey],
];

const NOTHING_DUE = urgencyKey("nothing due");

/** Of a row that says nothing: behind all others. */
export const urgency: CaseloadColumn = {
  header: URGENCY,
  kind: "computed",
  format: PLAIN,
  width: 4,
  isHidden: true,
  formula: (cell) => {
    const least = keyColumns.reduce<FormulaTemplate>(
      (all, { header }) => formula`${all},${cell(header)}`,
      formula`${NOTHING_DUE}`,
    );
    const others = formula`IF(ISNUMBER(${cell(away.header)}),N(${cell(away.header)}),${NO_URGENCY})`;
    return formula`IF(${is(cell("Live"), "live")},MIN(${least}),${others})`;
  },
};

const daysIn = (count: FormulaTemplate) => formula`${count}&IF(${count}=1," day"," days")`;

/** "12 May", with the year where it is another one. CHOOSE, because TEXT's codes depend on the computer's language. */
const dayIn = (day: FormulaTemplate) =>
  formula`DAY(${day})&" "&CHOOSE(MONTH(${day}),${SHORT_MONTHS.map((month) => `"${month}"`).join(",")})&IF(YEAR(${day})=YEAR(As_of),""," "&YEAR(${day}))`;

/** What stands where a word has "…". */
const filledIn: Partial<Record<ToDoWord, (cell: Slots) => FormulaTemplate>> = {
  "overdue …, not booked": (cell) => daysIn(formula`(As_of-${cell("Change due")})`),
  "due in …, not booked": (cell) => daysIn(formula`(${cell("Due first")}-As_of)`),
  "past limit, booked …": (cell) => cell("Booked"),
  "overdue, booked …": (cell) => cell("Booked"),
  "booked …": (cell) => cell("Booked"),
  "balloon: …": (cell) => cell("Balloon"),
};

/** The booked day as *To do* says it. */
export const booked: CaseloadColumn = {
  header: "Booked",
  kind: "computed",
  format: PLAIN,
  width: 4,
  isHidden: true,
  formula: (cell) => formula`IF(${is(cell("Booking"), "ahead")},${dayIn(cell("Booked for"))},"")`,
};

/** LibreOffice 7.4 takes about 30 values in a CHOOSE (tests/witness), Excel 254. */
const MOST_CHOICES = 28;

/** The value that stands at a place, counted from 1, of a list as long as one likes. */
function chosen(place: FormulaTemplate, values: readonly FormulaTemplate[], before = 0): FormulaTemplate {
  const first = values.slice(0, MOST_CHOICES);
  const rest = values.slice(MOST_CHOICES);
  const index = before === 0 ? place : formula`${place}-${before}`;
  const choice = formula`CHOOSE(${index}${first.reduce<FormulaTemplate>((all, one) => formula`${all},${one}`, [])})`;
  if (rest.length === 0) return choice;
  const further = before + MOST_CHOICES;
  return formula`IF(${place}<=${further},${choice},${chosen(place, rest, further)})`;
}

export const toDo: CaseloadColumn = {
  header: "To do",
  kind: "computed",
  format: PLAIN,
  width: 31,
  /* A rule for words that begin alike stands behind those for the words themselves. */
  rules: [
    { look: "act", words: wordsThatAsk("act") },
    { look: "soon", words: wordsThatAsk("soon") },
    { look: "missing", words: wordsThatAsk("missing") },
    { look: "arranged", words: wordsThatAsk("arranged") },
    { look: "quiet", words: wordsThatAsk("quiet") },
  ],
  formula: (cell) => {
    const says = urgencies.map(({ word }) => {
      const fill = filledIn[word as ToDoWord];
      if (!fill) return formula`${quoted(word)}`;
      const [before, after] = word.split("…") as [string, string];
      return formula`${quoted(before)}&${fill(cell)}${after === "" ? "" : `&${quoted(after)}`}`;
    });
    return chosen(cell(URGENCY), [...says, formula`""`]);
  },
};
