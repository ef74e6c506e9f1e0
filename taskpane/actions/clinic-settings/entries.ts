/**
 * What the pane writes into the settings sheet: who agreed the settings and when, and whom to call. Every other setting
 * is changed in its cell, where its range and source stand beside it.
 */
import { clinicSettingNamed, type ClinicSettingName } from "../../../src/settings/index";
import { addMonths } from "../../../src/maths/calendar";
import { dayOfText, isoText } from "../../../src/worksheet/dates";
import type { Cell } from "../../../src/worksheet/cell";
import { namedCell } from "../../workbook/change/named-cell";
import { asText } from "../../workbook/change/expectations";
import type { Expectation, Overview, Step, Workbook } from "../../workbook/port";
import { Refusal } from "../../workbook/change/refusal";
import { problem, type Action, type Planned, type Problem } from "../action";
import type { Fault } from "../caseload/typed";
import { shortDate } from "../../../src/words/date-in-words";
import { count, inQuotes, together } from "../../texts/pieces";
import { doubtful, settingLines, settingText, NOT_USUAL } from "./lines";

/** The names of each form, in its order. */
export const forms = {
  agreement: ["Agreed_By", "Agreed_On"],
  calls: ["Clinic_Name", "Call_Day", "Call_Night", "Call_Hospital", "Call_Emergency"],
} as const satisfies Readonly<Record<string, readonly ClinicSettingName[]>>;

export type FormKey = keyof typeof forms;
export type EntryName = (typeof forms)[FormKey][number];

export interface EntriesSurvey {
  readonly overview: Overview;
  /** By the computer's clock: nobody can have agreed later. */
  readonly today: number;
}

export interface EntriesChoices {
  readonly form: FormKey;
  /** As typed; a day as 2026-05-14. A name that is left out stays as it is. */
  readonly typed: Readonly<Partial<Record<EntryName, string>>>;
}

export interface EntriesPlan extends Planned {
  readonly form: FormKey;
}

/** With what is wrong field by field, where it is a field's. */
export interface EntriesProblem extends Problem {
  readonly faults?: readonly Fault[];
}

export const cellNamed = (overview: Overview, name: ClinicSettingName): Cell =>
  overview.names.find((one) => one.name.toLowerCase() === name.toLowerCase())?.value ?? null;

/** So many settings are named in a sentence. */
const NAMED = 4;

const labelOf = (name: EntryName): string => clinicSettingNamed(name).label;

interface Entry {
  readonly name: EntryName;
  readonly value: Cell;
}

/** What must be filled in: an agreement has a name and a day. */
export const isRequired = (name: EntryName): boolean => name === "Agreed_By" || name === "Agreed_On";

/** What is to be written, or why it cannot be. */
function entryOf(name: EntryName, typed: string, today: number): Entry | Fault {
  const fault = (what: string): Fault => ({ field: name, sentence: `${labelOf(name)}: ${what}.` });
  const text = typed.replace(/\s+/gu, " ").trim();
  if (name === "Agreed_By" && text === "") return fault("give a name, a team or a role");
  if (name !== "Agreed_On") return { name, value: text === "" ? null : text };
  if (text === "") return fault("give the date");
  const day = dayOfText(text);
  if (day === null) return fault(`${inQuotes(text)} cannot be read as a date`);
  if (day > today) return fault(`${shortDate(day)} has not come yet, so nobody can have agreed the settings then`);
  return { name, value: day };
}

const isFault = (entry: Entry | Fault): entry is Fault => "sentence" in entry;

function planEntries(
  { overview, today }: EntriesSurvey,
  { form, typed }: EntriesChoices,
): EntriesPlan | EntriesProblem {
  const read = forms[form].map((name) => entryOf(name, typed[name] ?? asTyped(name, cellNamed(overview, name)), today));
  const faults = read.filter(isFault);
  if (faults.length > 0) return { ...problem(faults.map(({ sentence }) => sentence).join(" ")), faults };
  const entries = read.filter(
    (entry): entry is Entry => !isFault(entry) && !isTheSame(entry.value, cellNamed(overview, entry.name)),
  );
  if (entries.length === 0) return problem("This is what stands there already: nothing to write.");
  const steps: Step[] = [];
  const expects: Expectation[] = [];
  for (const { name, value } of entries) {
    const cell = namedCell(name, overview);
    if (cell instanceof Refusal) return problem(cell.sentence);
    steps.push({ kind: "writeNamed", name, value });
    expects.push({ kind: "texts", ...cell, texts: [[asText(cellNamed(overview, name))]] });
  }
  return {
    outcome: "planned",
    form,
    change: { steps, expects },
    says: [
      ...(form === "agreement" ? beforeAgreeing(overview, today, entries) : beforeCalling(entries)),
      ...entries.map((entry) => written(overview, entry)),
    ],
  };
}

/** As the form's field holds what stands in the cell: a day as 2026-05-14. */
export function asTyped(name: EntryName, cell: Cell): string {
  if (cell === null) return "";
  return typeof cell === "number" && name === "Agreed_On" ? isoText(Math.floor(cell)) : String(cell);
}

const isTheSame = (value: Cell, stands: Cell): boolean => String(value ?? "") === String(stands ?? "");

function written(overview: Overview, { name, value }: Entry): string {
  const setting = clinicSettingNamed(name);
  const stood = settingText(setting, cellNamed(overview, name));
  const now = settingText(setting, value);
  const instead = stood === null ? "" : `, in place of ${inQuotes(stood)}`;
  return now === null ? `${setting.label}: emptied${instead}.` : `${setting.label}: ${inQuotes(now)}${instead}.`;
}

/** What is agreed with it: all settings as they stand, odd ones too. */
function beforeAgreeing(overview: Overview, today: number, entries: readonly Entry[]): readonly string[] {
  const own: readonly ClinicSettingName[] = [...forms.agreement, "Agreed_Until"];
  const odd = doubtful(settingLines(overview, today)).filter(({ setting }) => !own.includes(setting.name));
  const says: string[] = [];
  for (const [mark, is, are] of [
    [
      NOT_USUAL,
      "setting is not usual and would be agreed as it stands",
      "settings are not usual and would be agreed as they stand",
    ],
    ["not entered", "setting is not entered and would stay so", "settings are not entered and would stay so"],
  ] as const) {
    const labels = odd.filter(({ doubt }) => doubt?.mark === mark).map(({ setting }) => inQuotes(setting.label));
    if (labels.length > 0) says.push(`${count(labels.length, is, are)}: ${some(labels)}.`);
  }
  const on = entries.find(({ name }) => name === "Agreed_On")?.value ?? cellNamed(overview, "Agreed_On");
  const months = cellNamed(overview, "Review_Months");
  if (typeof on === "number" && typeof months === "number" && Number.isInteger(months)) {
    const review = addMonths(on, months);
    if (review < today)
      says.push(`The review, ${count(months, "month")} later, would be past already: ${shortDate(review)}.`);
  }
  return says;
}

/** The first few are named, the others counted. */
function some(labels: readonly string[]): string {
  const more = labels.length - NAMED;
  return together([...labels.slice(0, NAMED), ...(more > 0 ? [`${more} more`] : [])]);
}

/** An emptied number and one without a figure are said first. */
function beforeCalling(entries: readonly Entry[]): readonly string[] {
  const calls = entries.filter(({ name }) => name.startsWith("Call_"));
  const emptied = calls.filter(({ value }) => value === null).map(({ name }) => inQuotes(labelOf(name)));
  const wordsOnly = calls
    .filter(({ name, value }) => name !== "Call_Hospital" && value !== null && !/\d/.test(String(value)))
    .map(({ name }) => inQuotes(labelOf(name)));
  return [
    ...(emptied.length > 0 ? [`Nobody would find a number there any more: ${together(emptied)}.`] : []),
    ...(wordsOnly.length > 0 ? [`There is no figure in it: ${together(wordsOnly)}. Is it a number to call?`] : []),
  ];
}

export const writeEntries: Omit<
  Action<EntriesSurvey, { readonly today: number }, EntriesChoices, EntriesPlan>,
  "plan"
> & { readonly plan: typeof planEntries } = {
  survey: async (workbook: Workbook, { today }) => ({ overview: await workbook.overview(), today }),
  plan: planEntries,
  afterwards: (_, receipt) => {
    const standing = receipt.done.filter(({ changed }) => changed);
    const names = standing.flatMap(({ step }) =>
      step.kind === "writeNamed" ? [inQuotes(clinicSettingNamed(step.name as ClinicSettingName).label)] : [],
    );
    const canTakeBack = standing.length > 0;
    const still = canTakeBack ? `Written: ${together(names)}.` : "Nothing was written.";
    return {
      outcome: receipt.outcome,
      sentences: receipt.outcome === "done" ? [still] : [receipt.sentence, still],
      where: standing[0]?.place ?? null,
      canTakeBack,
    };
  },
};
