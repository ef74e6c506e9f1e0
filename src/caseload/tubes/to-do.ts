/** The most urgent single thing to do for a row, in words; `nothing due` only where nothing is missing either. */
import { formula, type FormulaTemplate } from "../../columns/formula";
import { CHECK_DATE, KIND_NOT_KNOWN, NO_DATE } from "../../columns/state-words";
import { calendarDate } from "../../maths/calendar";
import { SHORT_MONTHS } from "../../words/date-in-words";
import type { SheetValue } from "../../columns/sheet-block";
import { letting, PLAIN, type CaseloadColumn, type RowCells } from "../column";
import { CHECK_SETTINGS } from "../ready";
import { is, isAhead, isAheadIn, isBlank, isBlankIn, isNumber, isOneOf, numbered, word, wordIn } from "../reading";
import type { Sight } from "../sight";
import { sparesThere } from "../words";
import { CHECK_LATE, KEPT_AT_HOME, LOW_TWICE, NO_CHECK_YET } from "./balloon";
import { MILKY } from "../checks/states";
import { MEASURE_AGAIN, READ_AGAIN } from "./fit";
import { REVIEW, reviewIn, reviewNames, reviewOf } from "./review";

/** "12 May", with the year where it is another one. CHOOSE, because TEXT's codes depend on the computer's language. */
const dayIn = (day: string) =>
  formula`DAY(${day})&" "&CHOOSE(MONTH(${day}),${SHORT_MONTHS.map((month) => `"${month}"`).join(",")})&IF(YEAR(${day})=YEAR(As_of),""," "&YEAR(${day}))`;
function dayOf(day: number, asOf: number): string {
  const date = calendarDate(Math.floor(day));
  const year = date.year === calendarDate(asOf).year ? "" : ` ${date.year}`;
  return `${date.day} ${SHORT_MONTHS[date.month - 1]}${year}`;
}

const daysIn = (count: string) => formula`${count}&IF(${count}=1," day"," days")`;
const daysOf = (count: number): string => `${count} ${count === 1 ? "day" : "days"}`;

const ENTRIES = "check entries";
const BOOKED_LATE = "booked after the limit";
const calmBalloon = ["as filled", KEPT_AT_HOME, NO_CHECK_YET];

interface Step {
  readonly when: FormulaTemplate;
  readonly says: FormulaTemplate;
}

const step = (when: FormulaTemplate, says: string | FormulaTemplate): Step => ({
  when,
  says: typeof says === "string" ? formula`"${says}"` : says,
});

const anyIs = (known: string, texts: readonly string[]) =>
  formula`OR(${texts.slice(1).reduce((all, text) => formula`${all},${is(text, known)}`, is(texts[0]!, known))})`;

/**
 * On LET names; first hit wins.
 *
 * An empty balloon stands before every date: nothing holds that tube, it can fall out at any moment, and then the
 * opening can close within hours (words/cameout-texts.ts). `no number to call` is an empty cell of the clinic's settings,
 * thus the same on every row: higher up it would hide what is to be done for each person. It stands before `booked`, so
 * that no row reads as seen to without it.
 */
const steps = (hasSpareDates: boolean): readonly Step[] => [
  step(anyIs(CHECK_SETTINGS, ["change", "tract", "water", "fitting", "mark", "gaps"]), CHECK_SETTINGS),
  step(is("water", "empty"), "balloon empty"),
  step(formula`OR(${anyIs(CHECK_DATE, ["change", "tract"])},wrongly)`, "date wrong"),
  step(is("change", KIND_NOT_KNOWN), KIND_NOT_KNOWN),
  step(formula`AND(${is("change", "past limit")},NOT(ahead))`, "past limit, not booked"),
  step(
    formula`AND(${is("change", "overdue")},NOT(ahead),NOT(missed))`,
    formula`"overdue "&${daysIn("(As_of-due)")}&", not booked"`,
  ),
  step(formula`missed`, "missed date"),
  step(anyIs(NO_DATE, ["change", "tract"]), NO_DATE),
  step(is("water", LOW_TWICE), "low twice"),
  step(isOneOf("water", ["half or less", MILKY]), formula`water`),
  step(isOneOf("fitting", ["tight", "too short"]), formula`fitting`),
  step(is("mark", "further out"), "further out"),
  step(formula`NOT(OR(LEN(water)=0,${isOneOf("water", [...calmBalloon, CHECK_LATE])}))`, formula`"balloon: "&water`),
  step(formula`OR(${is("water", CHECK_LATE)},late)`, CHECK_LATE),
  step(formula`IF(AND(ahead,ISNUMBER(until),NOT(${is("change", "past limit")})),booked>=until+1,FALSE)`, BOOKED_LATE),
  step(formula`AND(home,${is("spare", "none")})`, "no spare"),
  step(formula`AND(home,NOT(${isOneOf("spare", sparesThere)}))`, "spare not known"),
  ...(hasSpareDates
    ? [
        step(
          formula`IF(ISNUMBER(expires),expires<MAX(As_of+Spare_Days,IF(ISNUMBER(due),due,As_of)),FALSE)`,
          "spare expires",
        ),
      ]
    : []),
  step(
    formula`OR(${isOneOf("fitting", [MEASURE_AGAIN, READ_AGAIN, "not measured"])},${isOneOf("mark", [MEASURE_AGAIN, "not measured"])})`,
    MEASURE_AGAIN,
  ),
  step(isOneOf("fitting", ["too long", "loose"]), formula`fitting`),
  step(is("mark", "further in"), "further in"),
  step(formula`AND(${is("change", "due soon")},NOT(ahead))`, formula`"due in "&${daysIn("left")}&", not booked"`),
  step(isBlankIn("Call_Day"), "no number to call"),
  step(
    formula`ahead`,
    formula`IF(${isOneOf("change", ["past limit", "overdue"])},change&", ","")&"booked "&${dayIn("booked")}`,
  ),
  step(formula`LEN(gaps)>0`, ENTRIES),
  step(formula`LEN(review)>0`, formula`review`),
];

export const toDo: CaseloadColumn = {
  header: "To do",
  kind: "computed",
  format: PLAIN,
  width: 31,
  rules: [
    {
      look: "urgent",
      words: [
        "balloon empty",
        "past limit…",
        "overdue…",
        "missed date",
        "balloon: low",
        "balloon: more than put in",
        "low twice",
        "half or less",
        MILKY,
        "tight",
        "too short",
        "further out",
      ],
    },
    {
      look: "missing",
      words: ["date wrong", CHECK_SETTINGS, KIND_NOT_KNOWN, NO_DATE, "spare not known", ENTRIES, "balloon: …"],
    },
    {
      look: "soon",
      words: [
        CHECK_LATE,
        BOOKED_LATE,
        "no spare",
        "spare expires",
        MEASURE_AGAIN,
        "due in…",
        "too long",
        "loose",
        "further in",
        "no number to call",
        REVIEW,
      ],
    },
    { look: "quiet", words: ["booked…", "nothing due", "in hospital"] },
  ],
  formula: (cell) => {
    const first = formula`IF(ISNUMBER(latest),IF(ISNUMBER(due),MIN(due,latest),latest),due)`;
    const all = letting(
      {
        change: cell("Change"),
        ...numbered("due", cell("Change due")),
        ...numbered("latest", cell("At the latest")),
        left: formula`${first}-As_of`,
        until: "IF(ISNUMBER(latest),latest,due)",
        tract: cell("Tract"),
        water: cell("Balloon"),
        fitting: cell.has("Fit") ? cell("Fit") : formula`""`,
        mark: cell.has("Mark") ? cell("Mark") : formula`""`,
        gaps: cell("Missing or contradictory"),
        ...numbered("booked", cell("Booked for")),
        wrongly: formula`NOT(OR(${isAheadIn("booked")},${isBlankIn("bookedcell")}))`,
        ahead: formula`IF(ISNUMBER(booked),booked>=As_of,FALSE)`,
        ...reviewNames(cell),
        review: reviewIn(),
        missed: formula`IF(ISNUMBER(booked),IF(booked<As_of,IF(ISNUMBER(in),in<INT(booked),TRUE),FALSE),FALSE)`,
        ...numbered("check", cell("Check due")),
        late: formula`IF(ISNUMBER(check),check+Check_Grace<As_of,FALSE)`,
        spare: wordIn(cell("Spare at home")),
        home: formula`AND(${is(wordIn(cell("Held by")), "balloon")},${is(wordIn(cell("Access")), "g")})`,
        ...(cell.has("Spare expires") && numbered("expires", cell("Spare expires"))),
      },
      steps(cell.has("Spare expires")).reduceRight<FormulaTemplate>(
        (rest, { when, says }) => formula`IF(${when},${says},${rest})`,
        formula`"nothing due"`,
      ),
    );
    const isAway = is(cell("Live"), "hospital");
    return formula`IF(${isAway},"in hospital",IF(${is(cell("Live"), "live")},${all},""))`;
  },
  answer: (row, sight) => {
    if (row["Live"] === "hospital") return "in hospital";
    return row["Live"] === "live" ? thingToDo(row, sight) : "";
  },
};

function thingToDo(row: RowCells, sight: Sight): string {
  const { asOf, number } = sight;
  const at = (header: string): SheetValue => (sight.has(header) ? row[header]! : "");
  const [change, tract, water] = [at("Change"), at("Tract"), at("Balloon") as string];
  const [fitting, mark, gaps] = [at("Fit") as string, at("Mark") as string, at("Missing or contradictory") as string];
  const [due, latest, booked, device] = [at("Change due"), at("At the latest"), at("Booked for"), at("Device in")];
  const isBooked = isNumber(booked) && booked >= asOf;
  const isMissed = isNumber(booked) && booked < asOf && !(isNumber(device) && device >= Math.floor(booked));

  if ([change, tract, water, fitting, mark, gaps].includes(CHECK_SETTINGS)) return CHECK_SETTINGS;
  if (water === "empty") return "balloon empty";
  if (change === CHECK_DATE || tract === CHECK_DATE || !(isAhead(booked, sight) || isBlank(booked)))
    return "date wrong";
  if (change === KIND_NOT_KNOWN) return KIND_NOT_KNOWN;
  if (change === "past limit" && !isBooked) return "past limit, not booked";
  if (change === "overdue" && !isBooked && !isMissed) return `overdue ${daysOf(asOf - (due as number))}, not booked`;
  if (isMissed) return "missed date";
  if (change === NO_DATE || tract === NO_DATE) return NO_DATE;
  if (water === LOW_TWICE) return "low twice";
  if (water === "half or less" || water === MILKY) return water;
  if (fitting === "tight" || fitting === "too short") return fitting;
  if (mark === "further out") return mark;
  if (![...calmBalloon, "", CHECK_LATE].includes(water)) return `balloon: ${water}`;
  const check = at("Check due");
  if (water === CHECK_LATE || (isNumber(check) && check + number("Check_Grace") < asOf)) return CHECK_LATE;
  const until = isNumber(latest) ? latest : due;
  if (isBooked && isNumber(until) && change !== "past limit" && booked >= until + 1) return BOOKED_LATE;
  const isForHome = word(at("Held by")) === "balloon" && word(at("Access")) === "g";
  const spare = word(at("Spare at home"));
  if (isForHome && spare === "none") return "no spare";
  if (isForHome && !(sparesThere as readonly string[]).includes(spare)) return "spare not known";
  const expires = at("Spare expires");
  const spareUntil = Math.max(asOf + number("Spare_Days"), isNumber(due) ? due : asOf);
  if (isNumber(expires) && expires < spareUntil) return "spare expires";
  if ([MEASURE_AGAIN, READ_AGAIN, "not measured"].includes(fitting)) return MEASURE_AGAIN;
  if ([MEASURE_AGAIN, "not measured"].includes(mark)) return MEASURE_AGAIN;
  if (fitting === "too long" || fitting === "loose") return fitting;
  if (mark === "further in") return mark;
  if (change === "due soon" && !isBooked) {
    const first = isNumber(due) ? (isNumber(latest) ? Math.min(due, latest) : due) : (latest as number);
    return `due in ${daysOf(first - asOf)}, not booked`;
  }
  if (isBlank(sight.setting("Call_Day"))) return "no number to call";
  if (isBooked)
    return `${change === "past limit" || change === "overdue" ? `${change}, ` : ""}booked ${dayOf(booked, asOf)}`;
  return gaps.length > 0 ? ENTRIES : reviewOf(row, sight) || "nothing due";
}
