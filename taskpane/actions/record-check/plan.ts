/** A check as typed, turned into rows: what must be mended, what is asked again, what will stand where. Pure. */
import { CHECKDUE } from "../../../src/balloon/checkdue";
import { LARGEST_VOLUME } from "../../../src/balloon/volumes";
import { MOST_CHECKS } from "../../../src/caseload/limits";
import { call } from "../../../src/worksheet/call";
import type { Cell } from "../../../src/worksheet/cell";
import { isoText } from "../../../src/worksheet/dates";
import { recordCheck } from "../../texts/record-check";
import { rows } from "../../texts/pieces";
import type { ByHeader } from "../../../src/caseload/headers";
import type { Change } from "../../workbook/port";
import { shortDate } from "../../../src/words/date-in-words";
import { dateOf, heldOf, known } from "../caseload/cells";
import { notComputed, type Computed } from "../caseload/computed";
import type { Device, Meant } from "../caseload/identity";
import { asItWas, valueIn, type Caseload } from "../caseload/read";
import { numberIn } from "../caseload/settings";
import { Reader, type Faulty, type FieldsOf } from "../caseload/typed";
import { filled, homelessSentence, stillSo, underHeaders, type Recording, type RowPreview } from "../caseload/write";
import { checksOf, fillOf, type Check } from "./history";
import { middleFor } from "../tube-out/middle";
import { asksOf } from "./doubts";
import { meaningOf, type Meaning, type Measured } from "./meaning";

/** As the fields of the form stand. */
export type CheckForm = Readonly<
  Record<"checkedOn" | "out" | "looked" | "putIn" | "water" | "by" | "howKnown" | "note", string>
>;

export const startOfCheck = (today: number): CheckForm => ({
  ...{ checkedOn: isoText(today), out: "", looked: "", putIn: "", water: "", by: "", howKnown: "", note: "" },
});

const { checkedOn, out, looked, putIn, water, by, howKnown, note } = recordCheck;

export const checkFields: FieldsOf<CheckForm> = {
  labels: { checkedOn, out, looked, putIn, water, by, howKnown, note },
  required: { checkedOn: "give the date" },
  /* Where nothing was put in there is no water to speak of. */
  applies: (field, form) => field !== "water" || !["", "0"].includes(form.putIn.trim()),
};

export interface CheckSurvey {
  readonly caseload: Caseload;
  readonly meant: Meant;
  readonly device: Device;
  /** Columns of this person's row, and of a new row in Balloon checks, that hold formulas. */
  readonly computed: { readonly row: Computed; readonly check: Computed };
}

export interface CheckPlan extends Recording {
  readonly meaning: Meaning;
}

export function planCheck(survey: CheckSurvey, form: CheckForm, today: number): CheckPlan | Faulty {
  const { caseload, meant, device } = survey;
  const { names, checks } = caseload;
  const { row } = device;
  const read = new Reader(form, checkFields);
  if (checks.dataRows >= MOST_CHECKS) read.fault("checkedOn", isFull(checks));
  const put = known(dateOf(valueIn(row, "Device in")));
  const day = read.date("checkedOn", today);
  if (day !== null && put !== null && day < put)
    read.fault("checkedOn", `this is before the tube was put in (${shortDate(put)})`);
  const out = read.number("out", 0, LARGEST_VOLUME, "mL");
  const putIn = read.number("putIn", 0, LARGEST_VOLUME, "mL");
  const looked = read.word("looked", "Looked");
  const typed = {
    Water: read.word("water", "Water"),
    By: read.word("by", "By"),
    "How known": read.word("howKnown", "How known"),
    Note: read.text("note"),
  };
  if (read.faults.length === 0 && out === null && putIn === null && looked === null)
    read.fault("out", "nothing was measured and nothing put in, so there is nothing to record");
  if (read.faults.length > 0 || day === null) return { outcome: "faulty", faults: read.faults };

  const all = checksOf(caseload, meant, device);
  const earlier = all.filter((check) => check.day <= day);
  const balloon = {
    fill: fillOf(valueIn(row, "Fill mL"), names),
    most: fillOf(valueIn(row, "Most mL"), names),
    deviceIn: put,
    isBalloon: ["balloon", "catheter"].includes(heldOf(valueIn(row, "Held by"))),
    mayBeRefilled: middleFor(caseload, device, today).mayGoBack,
    earlier,
  };
  const meaning = meaningOf({ day, out, putIn, looked }, balloon, names);
  const check = underHeaders(
    checks,
    filled({
      ID: device.id,
      Access: meant.devices.length > 1 ? device.access : null,
      "Checked on": day,
      "Out mL": out,
      Looked: looked,
      "Put in mL": putIn,
      ...typed,
      ...notComputed(counted(meaning, put, names), survey.computed.check),
    }),
  );
  const person = personCells(survey, { day, out, putIn, meaning }, all);
  const list = underHeaders(caseload.tubes, person);
  const steps: Change["steps"] = [
    { kind: "appendRows", table: checks.table, rows: [check.values] },
    ...(list.lines.length === 0
      ? []
      : [{ kind: "changeRow", table: caseload.tubes.table, row: row.index, values: list.values } as const]),
  ];
  const previous = earlier.at(-1);
  return {
    outcome: "planned",
    meaning,
    asks: asksOf(caseload.names, row, { day, out, putIn, looked }, balloon),
    says: homelessSentence(checks, check.homeless),
    rows: [
      { title: `New row in ${checks.sheetName}`, lines: check.lines },
      personPreview(survey, list.lines, day, all),
    ],
    change: {
      steps,
      expects: [
        asItWas(checks),
        stillSo(caseload.tubes, row, READ_BACK),
        ...(previous ? [stillSo(checks, previous.row, ["ID", "Access", "Checked on", "Put in mL"])] : []),
      ],
    },
  };
}

const isFull = ({ sheetName, dataRows }: Caseload["checks"]): string =>
  `${sheetName} has ${rows(dataRows)}, the most that can be kept in order. Move old checks into another workbook first`;

/** What was read back or counted with. */
const READ_BACK = [...["ID", "Access", "Born", "Held by", "Stoma made", "Device in", "Fill mL", "Most mL"]] as const;

/** What formulas of Balloon checks would give; written only where the clinic has none there. */
const counted = (meaning: Meaning, put: number | null, names: Caseload["names"]): ByHeader<Cell, "checks"> => ({
  "Device in": put,
  "Days since fill": meaning.daysSinceFill,
  "Expected mL": meaning.expected,
  "Loss mL": meaning.loss,
  "Loss mL a week": lossAWeek(meaning, names),
  State: meaning.state,
  "Low in a row": meaning.lowInARow,
});

/** Hundredths of a mL; blank where too few days have passed to tell. */
const lossAWeek = ({ loss, daysSinceFill: days }: Meaning, names: Caseload["names"]): number | null =>
  loss === null || !days || days < numberIn(names, "Rate_Days") ? null : Math.round((700 * loss) / days) / 100;

/** The list's own columns of the last check, where they hold values and this check is the newest. */
function personCells(
  { caseload, device: { row }, computed }: CheckSurvey,
  { day, out, putIn, meaning }: Omit<Measured, "looked"> & { readonly meaning: Meaning },
  all: readonly Check[],
): ByHeader<Cell, "tubes"> {
  if (all.some((check) => check.day > day)) return {};
  const { names } = caseload;
  const usual = numberIn(names, "Check_Days");
  const due = call(CHECKDUE, [
    known(dateOf(valueIn(row, "Stoma made"))),
    known(dateOf(valueIn(row, "Device in"))),
    day,
    numberIn(names, "Check_First"),
    meaning.state === "as filled" ? usual : Math.min(usual, numberIn(names, "Loss_Again")),
    numberIn(names, "Check_AfterChange"),
  ]);
  return notComputed(
    {
      "Last check": day,
      "Out mL": out,
      "Put in mL": putIn,
      "Loss mL": meaning.loss,
      "Check due": typeof due === "number" ? due : null,
    },
    computed.row,
  );
}

function personPreview(
  { caseload: { tubes }, device: { row } }: CheckSurvey,
  lines: RowPreview["lines"],
  day: number,
  all: readonly Check[],
): RowPreview {
  const title = `Row ${row.sheetRow} of ${tubes.sheetName}`;
  if (lines.length > 0) return { title, lines };
  const later = all.find((check) => check.day > day);
  const text = later
    ? `stays with the later check of ${shortDate(later.day)}`
    : "follows from Balloon checks by its own formulas";
  return { title, lines: [{ header: "Last check", text }] };
}
