/** Somebody's own list for the pictures: one row a device, read by the columns that could be told from their headers. */
import type { Role } from "../../../src/columns/role";
import { wordKey } from "../../../src/columns/spelling";
import { addMonths, FIRST_DAY } from "../../../src/maths/calendar";
import { ownColumns, type ListPart } from "../../../src/pictures/own-columns";
import { ownDevices, type ListColumns, type Meaning } from "../../../src/pictures/own-devices";
import { settingNamed } from "../../../src/settings/index";
import { pictures as words } from "../../texts/pictures";
import type { Workbook } from "../../workbook/port";
import { addColumns } from "../add-columns";
import type { SurveyedList } from "../list/interface";
import type { NoPictures, OwnSource, Pictured } from "./interface";

/** What somebody has said of words for a reason, by `wordKey`. */
export type Said = ReadonlyMap<string, Meaning>;

export async function readListPictured(workbook: Workbook, today: number, said: Said): Promise<Pictured | NoPictures> {
  const { list, asOf, dateSystem, proposal } = await addColumns.survey(workbook, { today });
  if (!list) return { is: "none", sentence: words.noList };
  if (dateSystem === 1904) return { is: "none", sentence: words.from1904 };
  const columns = columnsOf(list, (role) => proposal.columns[role] ?? null);
  if (columns.putIn === null) return { is: "none", sentence: words.noPutIn(list.label) };
  const facts = ownDevices(
    list.rows,
    columns,
    { asOf: asOf.day, oldest: Math.max(FIRST_DAY, addMonths(asOf.day, -12 * settingNamed("Past_Years").default)) },
    said,
  );
  const sheetRows = list.rowNumbers;
  return {
    is: "pictured",
    devices: facts.devices,
    leftOut: facts.leftOut,
    asOf: asOf.day,
    tubes: facts.tubes,
    checks: null,
    lossLimits: { smallUpTo: null, small: null, large: null },
    sheetRows: { changes: sheetRows, tubes: sheetRows },
    own: sourceOf(list, columns, facts.openReasons),
  };
}

function columnsOf(list: SurveyedList, role: (role: Role) => number | null): ListColumns {
  const own = ownColumns(list.columns.map(({ header }) => header));
  return {
    person: own.person,
    kind: role("kind"),
    shape: role("shape"),
    lot: own.lot,
    status: role("status"),
    putIn: role("last") ?? own.putIn,
    cameOut: own.cameOut,
    reason: own.reason,
    due: role("due"),
    interval: own.interval,
  };
}

const parts: readonly ListPart[] = ["person", "kind", "shape", "lot", "putIn", "cameOut", "reason", "due"];

function sourceOf(
  list: SurveyedList,
  columns: ListColumns,
  openReasons: readonly { readonly word: string; readonly rows: readonly number[] }[],
): OwnSource {
  const columnOf = (part: ListPart): number | null =>
    part === "due" ? (columns.due ?? columns.interval?.column ?? null) : columns[part];
  return {
    label: list.label,
    found: parts.flatMap((part) => {
      const column = columnOf(part);
      return column === null ? [] : [{ part, header: list.columns[column]!.header.trim() }];
    }),
    missing: parts.filter((part) => columnOf(part) === null),
    openReasons: openReasons.map(({ word, rows }) => ({
      key: wordKey(word),
      word,
      rows: rows.map((row) => list.rowNumbers[row]!),
    })),
  };
}
