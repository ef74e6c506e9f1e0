/** What would be done, from what was found and chosen: a change to be applied, or why there is none. Pure. */
import { columnLetters } from "../../../src/columns/formula";
import { textOf } from "../../../src/columns/sheet-block";
import { FIRST_DAY, LAST_DAY } from "../../../src/maths/calendar";
import { asTypedHeader, mendedHeader } from "../../../src/mending/headers";
import type { Cell } from "../../../src/worksheet/cell";
import { isoText } from "../../../src/worksheet/dates";
import { CellError } from "../../../src/worksheet/error";
import { mend as words } from "../../texts/mend";
import type { NewColumn, Step, Value } from "../../workbook/port";
import { problem, type Problem } from "../action";
import type { SurveyedList } from "../list/interface";
import { besideOf, columnArea, expectationsOf } from "../list/expected";
import { wayText } from "../list/read-list";
import type { MendAs, MendChoices, MendPlan, MendReading, MendSurvey } from "./interface";
import { readingOf } from "./reading";
import { columnValues } from "./survey";

/** Day, month in words, year: no order of figures to be mistaken. */
const FORMATS: Readonly<Record<MendAs, string>> = { dates: "d mmm yyyy", sizes: "General", kinds: "General" };
/** A text stays a text when somebody edits it, too. */
const TEXT = "@";

export function planMend(survey: MendSurvey, choices: MendChoices): MendPlan | Problem {
  const { list } = survey;
  const { what } = choices;
  if (!list) return problem(survey.sentence);
  const reading = readingOf(survey, choices);
  if (!what || !reading) return problem(words.plan.chooseColumn);
  if (what.as === "dates" && survey.dateSystem === 1904) return problem(words.plan.from1904);
  const [obstacle] = list.obstacles;
  if (obstacle) return obstacle;
  if (list.room < 1) return problem(words.plan.noRoom(wayText(list.inTheWay)));
  if (reading.changed === 0) return problem(words.plan.nothing(reading));
  return planned(list, what, choices.put, reading);
}

function planned(
  list: SurveyedList,
  { column, as }: NonNullable<MendChoices["what"]>,
  put: MendChoices["put"],
  reading: MendReading,
): MendPlan {
  const { header: named, letters } = list.columns[column]!;
  const from = named.trim() === "" ? words.plan.unnamed(letters) : named.trim();
  const header = freeHeader(list, put === "beside" ? mendedHeader(from) : asTypedHeader(from));
  const to = list.table === null ? { list: { sheet: list.sheet, area: list.area } } : { table: list.table };
  const values = columnValues(list, column);
  const beside: NewColumn =
    put === "beside"
      ? { header, format: FORMATS[as], values: values.map((value, row) => reading.results[row] ?? asCell(value)) }
      : {
          header,
          format: TEXT,
          values: values.map((value, row) => (reading.results[row] === null ? null : asTyped(value, as))),
        };
  const steps: readonly Step[] = [
    { kind: "addColumns", to, columns: [beside] },
    ...(put === "in place"
      ? [
          {
            kind: "changeColumn" as const,
            to,
            column,
            values: reading.results.map((result) => result ?? undefined),
            ...(as !== "kinds" && { format: FORMATS[as] }),
          },
        ]
      : []),
  ];
  const place = besideOf(list, 1);
  return {
    outcome: "planned",
    change: { steps, expects: expectationsOf(list, [column], place) },
    says: words.plan.says(reading, { put, from, header, letters: columnLetters(place.left) }),
    reading,
    put,
    header,
    place: { sheet: list.sheet, area: place },
    from: { sheet: list.sheet, area: columnArea(list, column), header: from },
  };
}

/** Ours, or with a number where the list has it already. */
function freeHeader(list: SurveyedList, header: string): string {
  const taken = new Set(list.columns.map((column) => column.header.trim().toLowerCase()));
  let free = header;
  for (let n = 2; taken.has(free.toLowerCase()); n++) free = `${header} ${n}`;
  return free;
}

/** What was not mended goes along as it stands; an error as its code. */
const asCell = (value: Value): Cell => (value instanceof CellError ? value.code : value);

/** What stood there, as a text that cannot become something else. */
function asTyped(value: Value, as: MendAs): string {
  const isDay = as === "dates" && typeof value === "number" && value >= FIRST_DAY && value < LAST_DAY + 1;
  return isDay ? isoText(Math.floor(value)) : textOf(value);
}
