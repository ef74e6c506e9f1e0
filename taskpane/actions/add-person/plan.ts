/** A person as typed, turned into a row of the list: the must-have columns only. Pure. */
import type { Access } from "../../../src/device/access";
import type { ByHeader } from "../../../src/caseload/headers";
import type { Cell } from "../../../src/worksheet/cell";
import { addMonths } from "../../../src/maths/calendar";
import { addPerson } from "../../texts/add-person";
import { inQuotes, rowList } from "../../texts/pieces";
import { notComputed, type Computed } from "../caseload/computed";
import { notToldFrom, rowsOf, whoIsMeant } from "../caseload/identity";
import { carerAsk, deviceAsks, deviceFields, isOfDevice, readDevice } from "../caseload/new-device";
import { asItWas, valueIn, type Caseload } from "../caseload/read";
import { numberIn } from "../caseload/settings";
import { Reader, type Faulty, type FieldsOf } from "../caseload/typed";
import { filled, homelessSentence, underHeaders, type Recording } from "../caseload/write";

export type PersonField =
  | "id"
  | "status"
  | "born"
  | "access"
  | "made"
  | "slow"
  | "heldBy"
  | "knownFrom"
  | "shape"
  | "size"
  | "length"
  | "deviceIn"
  | "fill"
  | "most"
  | "changedBy"
  | "spare";

/** As the fields of the form stand. */
export type PersonForm = Readonly<Record<PersonField, string>>;

const { id, status, born, access, made, slow, deviceIn, changedBy, spare } = addPerson;

export const personFields: FieldsOf<PersonForm> = {
  labels: { id, status, born, access, made, slow, ...deviceFields.labels, deviceIn, changedBy, spare },
  required: {
    id: "give the clinic’s own",
    status: "choose one",
    access: "choose one; “not known” is an answer",
    ...deviceFields.required,
  },
  applies: (field, form) => !isOfDevice(field) || deviceFields.applies!(field, form),
};

export interface PersonSurvey {
  readonly caseload: Caseload;
  /** Columns of a new row that hold formulas. */
  readonly computed: Computed;
}

/** Longer ones are not identifiers. */
const LONGEST_ID = 40;

export function planPerson({ caseload, computed }: PersonSurvey, form: PersonForm, today: number): Recording | Faulty {
  const { tubes, names } = caseload;
  const read = new Reader(form, personFields);
  const id = read.text("id");
  if (id !== null && id.length > LONGEST_ID) read.fault("id", `at most ${LONGEST_ID} characters`);
  const access = read.word("access", "Access");
  const status = read.word("status", "Status");
  if (id !== null && access !== null) refuseTwice(caseload, id, access, read);

  const born = read.date("born", today);
  const made = read.date("made", today);
  const put = read.date("deviceIn", today);
  const years = numberIn(names, "Age_Most");
  const eldest = addMonths(today, -12 * years);
  if (born !== null && born < eldest) read.fault("born", `more than ${years} years ago`);
  if (born !== null && made !== null && made < born) read.fault("made", "this is before the birth");
  if (made !== null && made < eldest) read.fault("made", `more than ${years} years ago`);
  if (made !== null && put !== null && put < made) read.fault("deviceIn", "this is before the stoma was made");
  const slow = read.word("slow", "Slow healing");
  const device = readDevice(read, names);
  const changedBy = read.word("changedBy", "Changed by");
  const spare = read.word("spare", "Spare at home");
  if (read.faults.length > 0 || id === null || access === null) return { outcome: "faulty", faults: read.faults };

  const cells: ByHeader<Cell, "tubes"> = {
    ID: id,
    Status: status,
    Born: born,
    Access: access,
    "Stoma made": made,
    "Slow healing": slow,
    "Held by": device.heldBy,
    "Known from": device.knownFrom,
    Shape: device.shape,
    "Size Fr": device.size,
    "Length cm": device.length,
    "Device in": put,
    "Fill mL": device.fill,
    "Most mL": device.most,
    "Changed by": changedBy,
    "Spare at home": spare,
  };
  const row = underHeaders(tubes, filled(notComputed(cells, computed)));
  return {
    outcome: "planned",
    asks: [
      ...idAsks(caseload, id),
      ...blankAsks({ born, made, slow, put, changedBy, spare }),
      ...deviceAsks(device, names),
      ...carerAsk(changedBy, access, [device.heldBy ?? ""]),
    ],
    says: homelessSentence(tubes, row.homeless),
    rows: [{ title: `New row in ${tubes.sheetName}`, lines: row.lines }],
    change: {
      steps: [{ kind: "appendRows", table: tubes.table, rows: [row.values] }],
      expects: [asItWas(tubes)],
    },
  };
}

/** One row is one device: the same identifier and access would make two rows that nothing tells apart. */
function refuseTwice({ tubes }: Caseload, id: string, access: Access, read: Reader<PersonForm>): void {
  const { devices } = whoIsMeant(tubes, id);
  const [first] = devices;
  if (!first) return;
  const where = rowList(devices.map(({ row }) => row.sheetRow));
  const spelt = devices.find((device) => String(valueIn(device.row, "ID")) !== id);
  if (notToldFrom(devices, access).length > 0) {
    read.fault(
      "id",
      `${inQuotes(id)} with this access is in the list already (${where}); record a change there instead`,
    );
  } else if (spelt) {
    read.fault(
      "id",
      `it is spelt ${inQuotes(String(valueIn(spelt.row, "ID")))} in ${where}; spell it so, or choose another`,
    );
  }
}

function idAsks({ tubes, changes }: Caseload, id: string): readonly string[] {
  const { devices } = whoIsMeant(tubes, id);
  const past = rowsOf(changes.rows, id);
  const asks: (string | false)[] = [
    looksLikeName(id) && `${inQuotes(id)} looks like a name. Identifiers only, no names.`,
    devices.length > 0 &&
      `${inQuotes(id)} is in the list with another access (${rowList(devices.map(({ row }) => row.sheetRow))}): is this a second device of the same person?`,
    devices.length === 0 && past.length > 0 && `${inQuotes(id)} stands in Changes already: is it the same person?`,
  ];
  return asks.filter((ask) => ask !== false);
}

/** Two words with capitals, as names are written. */
const looksLikeName = (id: string): boolean => /(?:^|\s)\p{Lu}\p{L}+[\s,]+\p{Lu}\p{L}+/u.test(id);

function blankAsks(cells: {
  readonly born: number | null;
  readonly made: number | null;
  readonly slow: string | null;
  readonly put: number | null;
  readonly changedBy: string | null;
  readonly spare: string | null;
}): readonly string[] {
  const asks: (string | false)[] = [
    cells.born === null && "Born is blank: nothing to tell this person from another by.",
    cells.made === null && "Stoma made is blank: tube out will always say hospital.",
    cells.slow === null && "Slow healing is blank: the opening never counts as mature.",
    cells.put === null && "Device in is blank: no date for the next change.",
    cells.changedBy === null && "Changed by is blank.",
    cells.spare === null && "Spare at home is blank.",
  ];
  return asks.filter((ask) => ask !== false);
}
