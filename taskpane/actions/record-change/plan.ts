/** A change as typed, turned into rows of both sheets. Pure. */
import { CellError } from "../../../src/worksheet/error";
import type { ByHeader, Header } from "../../../src/caseload/headers";
import type { Cell } from "../../../src/worksheet/cell";
import type { Access } from "../../../src/device/access";
import { shortDate } from "../../../src/words/date-in-words";
import { inQuotes, rowList } from "../../texts/pieces";
import { dateOf, known } from "../caseload/cells";
import { notComputed, type Computed } from "../caseload/computed";
import { notToldFrom, whoIsMeant, type Device } from "../caseload/identity";
import { asItWas, textIn, valueIn, type Caseload, type CaseloadRow } from "../caseload/read";
import { carefulIn, numberIn } from "../caseload/settings";
import { Reader, type Faulty } from "../caseload/typed";
import {
  emptied,
  filled,
  homelessSentence,
  stillSo,
  underHeaders,
  type Recording,
  type Written,
} from "../caseload/write";
import { carriedSentences, forgotten, openingAsk, spareAfter } from "./carried-over";
import {
  asksOf,
  isSpent,
  keptSentence,
  MOST_HOURS,
  sizeSentence,
  spareSentence,
  watch,
  bolsterSentence,
} from "./doubts";
import { arrangedAfter, elsewhereAdvice, elsewhereSentences } from "./elsewhere";
import { accessAfter, changeFields, endsCare, isOtherType, type ChangeForm } from "./form";
import { carerAsk, deviceAsks, readDevice, type NewDevice } from "../caseload/new-device";
import { positionSentence } from "./position";

export interface ChangeSurvey {
  readonly caseload: Caseload;
  readonly device: Device;
  /** What this person's past devices say of the interval that is agreed for the one that came out. */
  readonly interval: readonly string[];
  /** Columns of this person's row, and of a new row in Changes, that hold formulas. */
  readonly computed: { readonly row: Computed; readonly change: Computed };
}

export interface ChangePlan extends Recording {
  /** What it means for care. */
  readonly advice: readonly string[];
}

export function planChange(survey: ChangeSurvey, form: ChangeForm, today: number): ChangePlan | Faulty {
  const read = new Reader(form, changeFields);
  const typed = readChange(read, survey, form, today);
  if (typed.out === null || read.faults.length > 0) return { outcome: "faulty", faults: read.faults };
  const change: Change = { ...survey, ...typed, form, out: typed.out };
  const { caseload, device } = survey;
  const { tubes, changes } = caseload;
  const { row } = device;
  const log = inLog(change);
  const list = inList(change);
  return {
    outcome: "planned",
    advice: adviceOn(change),
    asks: doubtsOf(change),
    says: [
      ...homelessSentence(changes, log.homeless),
      ...homelessSentence(tubes, list.homeless),
      ...leftSentences(change),
    ],
    rows: [
      { title: `New row in ${changes.sheetName}`, lines: log.lines },
      { title: `Row ${row.sheetRow} of ${tubes.sheetName}`, lines: list.lines },
    ],
    change: {
      steps: [
        { kind: "appendRows", table: changes.table, rows: [log.values] },
        { kind: "changeRow", table: tubes.table, row: row.index, values: list.values },
      ],
      expects: [
        asItWas(changes),
        asItWas(tubes),
        stillSo(tubes, row, READ_BACK),
        // Else another row might have been given this access meanwhile.
        ...(change.access === device.access
          ? []
          : change.others.map((one) => stillSo(tubes, one.row, ["ID", "Access"]))),
      ],
    },
  };
}

/** What was typed, read; what is wrong with it is with the reader. */
interface Typed {
  /** The old tube: out, and put in. */
  readonly out: number | null;
  readonly put: number | null;
  readonly came: ReturnType<typeof readHowItCame>;
  /** The new tube; null where care ends. */
  readonly next: NewDevice | null;
  readonly deviceIn: number | null;
  readonly lot: string | null;
  readonly access: Access;
  /** This person's other rows. */
  readonly others: readonly Device[];
}

interface Change extends ChangeSurvey, Typed {
  readonly form: ChangeForm;
  readonly out: number;
}

function readChange(
  read: Reader<ChangeForm>,
  { caseload, device }: ChangeSurvey,
  form: ChangeForm,
  today: number,
): Typed {
  const { tubes, names } = caseload;
  const put = known(dateOf(valueIn(device.row, "Device in")));
  const out = read.date("out", today);
  if (out !== null && put !== null && out < put)
    read.fault("out", `this is before the tube was put in (${shortDate(put)})`);
  const came = readHowItCame(read);
  const ends = endsCare(form);
  const next = ends ? null : readDevice(read, names);
  const access = ends ? device.access : accessAfter(device, { access: read.word("access", "Access") ?? "" });
  const others = whoIsMeant(tubes, device.id).devices.filter((one) => one.row !== device.row);
  const taken = access === device.access ? [] : notToldFrom(others, access);
  if (taken.length > 0)
    read.fault(
      "access",
      `${inQuotes(device.id)} stands with ${access} in the list already (${rowList(taken.map((one) => one.row.sheetRow))}). One row is one tube, so record the change there, or put that row right first`,
    );
  const deviceIn = ends ? null : (read.date("deviceIn", today) ?? out);
  if (deviceIn !== null && out !== null && deviceIn < out)
    read.fault("deviceIn", "this is before the old tube came out");
  const lot = ends ? null : read.text("lot");
  return { out, put, came, next, deviceIn, lot, access, others };
}

/** How the old tube came out, by the headers of Changes. */
const readHowItCame = (read: Reader<ChangeForm>) => ({
  Reason: read.word("reason", "Reason"),
  Where: read.word("where", "Where"),
  "Unplanned visit": read.word("unplanned", "Unplanned visit"),
  Nights: read.number("nights", 0, 99, "nights"),
  "Hours out": read.number("hoursOut", 0, MOST_HOURS, "hours"),
  "Changed by": read.word("changedBy", "Changed by"),
  "Position confirmed by": read.word("confirmedBy", "Position confirmed by"),
  pH: read.number("pH", 0, 14, "pH"),
  Note: read.text("note"),
});

function inLog({ caseload, computed, device, out, came, next, lot }: Change): Written {
  const cells = { ...oldDevice(device), Out: out, ...came, ...newInLog(next, lot) };
  return underHeaders(caseload.changes, filled(notComputed(cells, computed.change)));
}

function inList({ caseload, computed, device, form, next, deviceIn, lot }: Change): Written {
  const cells = next
    ? newInList(device, form, next, { deviceIn, lot })
    : { Status: "left", ...emptied([...DEVICE, ...MARKS, ...FIT, "Booked for", "Date set by placing team"]) };
  return underHeaders(caseload.tubes, worthWriting(device.row, notComputed(cells, computed.row)));
}

/** What it means for care. */
function adviceOn({ caseload: { names }, device, form, came, next, lot, access }: Change): readonly string[] {
  if (!next) return [];
  const position = positionSentence({ by: came["Position confirmed by"], pH: came.pH }, access, names);
  return [
    ...(position ? [position] : []),
    ...elsewhereAdvice(device, form),
    ...sizeSentence(device.row, next),
    ...spareSentence(device.row, lot),
    ...bolsterSentence(next, numberIn(names, "Bolster_Days")),
    watch(carefulIn(names, "Watch_Hours", "low")),
  ];
}

/** What is asked once more before it is recorded. */
function doubtsOf(change: Change): readonly string[] {
  const { device, out, put, deviceIn, came, next, access } = change;
  const held = textIn(device.row, "Held by");
  const heldBy = [held.toLowerCase(), ...(next ? [next.heldBy ?? ""] : [])];
  const ends = [device.access, access];
  return [
    ...asksOf({ out, put, deviceIn, held, ...came }),
    ...new Set(ends.flatMap((end) => carerAsk(came["Changed by"], end, heldBy))),
    ...(next
      ? doubtsOfNext(change, next)
      : [`No new tube: the row of ${device.id} is put on "left" and its tube is emptied.`]),
  ];
}

function doubtsOfNext(
  { caseload: { names }, device, form, out, deviceIn, came }: Change,
  next: NewDevice,
): readonly string[] {
  const without = {
    where: came.Where,
    reason: came.Reason,
    hoursOut: came["Hours out"],
    daysOut: deviceIn === null ? 0 : deviceIn - out,
  };
  return [...deviceAsks(next, names), ...openingAsk(device, form, without, names)];
}

/** What is told of cells that stay or go. */
function leftSentences({ device, form, next, deviceIn }: Change): readonly string[] {
  return [
    ...(isOtherType(device, form) ? [] : keptSentence(device.row, next, deviceIn)),
    ...(next ? [...carriedSentences(device, form, next), ...elsewhereSentences(device, form, next)] : []),
  ];
}

const DEVICE = [
  ...["Held by", "Known from", "Shape", "Size Fr", "Length cm", "Device in", "Lot", "Item", "Fill mL", "Most mL"],
] as const;
/** Read at the old tube: they say nothing of the new one. */
const MARKS = ["Mark then cm", "Mark now cm", "Play mm"] as const;
/** Measured for a tube of the old type. */
const FIT = ["Lying cm", "Sitting cm", "Measured on", "Weight then kg"] as const;
const READ_BACK = ["ID", "Access", "Born", "Status", ...DEVICE] as const;

/** What stood in the row, as it stood; an error is nothing to hand on. */
function oldDevice({ id, row }: Device): ByHeader<Cell, "changes"> {
  const as = (header: Header<"tubes">): Cell => {
    const value = valueIn(row, header);
    return value instanceof CellError ? null : value;
  };
  const same = ["Held by", "Shape", "Size Fr", "Length cm", "Fill mL", "Lot"] as const;
  return {
    ID: id,
    Access: as("Access"),
    ...Object.fromEntries(same.map((header) => [header, as(header)])),
    In: as("Device in"),
  };
}

const newInLog = (next: NewDevice | null, lot: string | null): ByHeader<Cell, "changes"> =>
  next === null
    ? {}
    : {
        "New held by": next.heldBy,
        "New shape": next.shape,
        "New size Fr": next.size,
        "New length cm": next.length,
        "New lot": lot,
        "New fill put in mL": next.fill,
      };

function newInList(
  device: Device,
  form: ChangeForm,
  next: NewDevice,
  { deviceIn, lot }: { readonly deviceIn: number | null; readonly lot: string | null },
): ByHeader<Cell, "tubes"> {
  const { row } = device;
  return {
    ...(form.access !== "" && form.access !== textIn(row, "Access") && { Access: form.access }),
    "Held by": next.heldBy,
    "Known from": next.knownFrom,
    Shape: next.shape,
    "Size Fr": next.size,
    "Length cm": next.length,
    "Device in": deviceIn,
    Lot: lot,
    Item: null,
    "Fill mL": next.fill,
    "Most mL": next.most,
    "Booked for": null,
    ...emptied(MARKS),
    ...(isOtherType(device, form) && emptied(FIT)),
    ...(isSpent(row, deviceIn) && { "Date set by placing team": null }),
    ...forgotten(device, form),
    ...spareAfter(device, form, next),
    ...arrangedAfter(device, form, next),
  };
}

/** A cell that is blank already is not emptied. */
const worthWriting = (row: CaseloadRow<"tubes">, cells: ByHeader<Cell, "tubes">): ByHeader<Cell, "tubes"> =>
  Object.fromEntries(
    (Object.entries(cells) as [Header<"tubes">, Cell][]).filter(
      ([header, value]) => value !== null || valueIn(row, header) !== null,
    ),
  );
