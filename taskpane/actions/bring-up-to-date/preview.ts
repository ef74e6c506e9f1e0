/** What is new, what comes along, and what does not: what does not comes first. */
import { rowsTables, sheetNames } from "../../../src/caseload/names";
import { news } from "../../../src/caseload/schema";
import { clinicSettingNamed } from "../../../src/settings/index";
import { capital, count, inQuotes, together } from "../../texts/pieces";
import { settingText } from "../clinic-settings/lines";
import type { OlderCaseload } from "./interface";

export interface OlderPreview {
  /** What the newer description says that this one does not. */
  readonly news: readonly string[];
  readonly says: readonly string[];
}

/** So many are named; of more, how many. */
const NAMED = 6;

const named = (names: readonly string[]): string =>
  names.length <= NAMED
    ? together(names)
    : `${names.slice(0, NAMED).join(", ")} and ${count(names.length - NAMED, "more", "more")}`;

/** What this caseload's description lacks, without a look at its rows. */
export const newsSince = (schema: number): readonly string[] =>
  news.filter((one) => one.schema > schema).flatMap(({ says }) => says);

export function previewOfOlder({ schema, carried, newColumns, newSettings, left }: OlderCaseload): OlderPreview {
  const rows = rowsTables.map((table) => `${count(carried.rows[table].length, "row")} of ${sheetNames[table]}`);
  const own = rowsTables.flatMap((table) => carried.own[table].map(({ header }) => inQuotes(header)));
  const columns = rowsTables.flatMap((table) => newColumns[table].map(inQuotes));
  const settings = newSettings.map((name) => {
    const setting = clinicSettingNamed(name);
    const standard = settingText(setting, setting.default);
    return standard === null ? inQuotes(setting.label) : `${inQuotes(setting.label)} (${standard})`;
  });
  const says: (string | false)[] = [
    left.errors.length > 0 && `Blank there, because an error stands here: ${named(left.errors)}.`,
    left.typedOver.length > 0 && `Worked out there, though typed over here: ${named(left.typedOver)}.`,
    left.ownFormulas.length > 0 && `Columns of your own with formulas do not come along: ${named(left.ownFormulas)}.`,
    left.fixed.length > 0 && `Your own formulas come along as the values that they give now: ${named(left.fixed)}.`,
    left.sheets.length > 0 && `These sheets stay in the old workbook only: ${named(left.sheets)}.`,
    `${capital(together(rows))} come along, and ${count(carried.settings.size, "clinic setting")} as they stand here.`,
    own.length > 0 && `${count(own.length, "column")} of your own too: ${named(own)}.`,
    columns.length > 0 && `New columns: ${named(columns)}.`,
    settings.length > 0 && `New clinic settings, for your clinic to agree: ${named(settings)}.`,
    "Colours, widths, notes and filters of your own do not come along.",
    "A new workbook is made; this one is not changed. Words of To do and dates may differ: compare them before you go on with the new one.",
  ];
  return { news: newsSince(schema), says: says.filter((one) => one !== false) };
}
