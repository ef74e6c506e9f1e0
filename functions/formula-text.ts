/** Examples as people type them: formulas and results as text. */
import { calendarDate } from "../src/maths/calendar";
import { NAMESPACE } from "../src/formula/ours";
import { isoText } from "../src/worksheet/dates";
import type { Example, Param, Params, RawArgument, SheetFunction } from "../src/worksheet/define";
import { CellError } from "../src/worksheet/error";
import { givesDate } from "../src/worksheet/result-kind";

const constant = (value: unknown): string => {
  if (value === null || value === undefined) return "";
  if (value instanceof CellError) return value.code;
  if (typeof value === "string") return `"${value.replaceAll('"', '""')}"`;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return String(value);
};

/** An argument as a formula writes it; a block as an array constant, where a blank can only be "". */
export const argumentText = (raw: RawArgument | undefined): string =>
  Array.isArray(raw)
    ? `{${raw.map((row) => row.map((cell: unknown) => (cell === null ? '""' : constant(cell))).join(",")).join(";")}}`
    : constant(raw);

/** Arguments of an example in order; those behind the last one given are left out. */
export function exampleArguments(definition: SheetFunction, example: Example<Params>): (RawArgument | undefined)[] {
  const all = definition.order.map(({ name }) => example.args[name]);
  while (all.length > 0 && all.at(-1) === undefined) all.pop();
  return all;
}

/** 1 January 1950. A smaller number in an example is a slip that it shows, such as a year typed for a day. */
const EARLIEST_DAY = 18_264;

/** The same for people: a day number, as a date's cell holds it, reads as the date that it is. */
function readableText(raw: RawArgument | undefined, { unit }: Param<unknown>): string {
  const isDay = (cell: unknown): cell is number => typeof cell === "number" && cell >= EARLIEST_DAY;
  if (unit !== "date") return argumentText(raw);
  /* An array constant holds no function; a date argument reads such a text as the same day. */
  if (Array.isArray(raw))
    return argumentText(raw.map((row) => row.map((cell: unknown) => (isDay(cell) ? isoText(cell) : cell))));
  if (!isDay(raw)) return argumentText(raw);
  const { year, month, day } = calendarDate(raw);
  return `DATE(${year},${month},${day})`;
}

/** `=TUBE.CHANGEDUE("2026-02-11", 12, "weeks")` */
export const exampleFormula = (definition: SheetFunction, example: Example<Params>): string =>
  `=${NAMESPACE}.${definition.name}(${exampleArguments(definition, example)
    .map((raw, i) => readableText(raw, definition.order[i]!.param))
    .join(", ")})`;

/** `CHANGEDUE(lastchange, interval, [unit], [closed])` */
export const usage = (definition: SheetFunction): string =>
  `${NAMESPACE}.${definition.name}(${definition.order.map(({ name, param }) => (param.optional ? `[${name}]` : name)).join(", ")})`;

/** What an example gives, for people: dates as dates, errors by their code, a blank as what it shows. */
export function givenText(definition: SheetFunction, { gives: given, args }: Example<Params>): string {
  const one = (value: unknown, column = 0): string => {
    if (typeof value === "object" && value !== null) return (value as { error: string }).error;
    if (value === "") return "(blank)";
    return typeof value === "number" && givesDate(definition, column, args) ? isoText(value) : String(value);
  };
  if (Array.isArray(given)) return given.map((row) => row.map(one).join(", ")).join("; ");
  const says = typeof given === "object" && given !== null && "says" in given ? ` ${given.says}` : "";
  return one(given) + says;
}
