/**
 * Every clinic setting with what stands in its cell, and what somebody should look at: an entry outside what is
 * allowed, one that cannot be read, one that is missing, two that contradict each other.
 */
import { readiness } from "../../../src/caseload/ready";
import { clinicSettingNamed, settingGroups, type ClinicSettingName } from "../../../src/settings/index";
import { refuseNumber, type ClinicSetting } from "../../../src/settings/setting";
import { readDate } from "../../../src/worksheet/dates";
import type { Cell } from "../../../src/worksheet/cell";
import { namedCell } from "../../workbook/change/named-cell";
import type { Overview, Place } from "../../workbook/port";
import { Refusal } from "../../workbook/change/refusal";
import { shortDate } from "../../../src/words/date-in-words";

export interface Doubt {
  /** What marks the line. */
  readonly mark: "not usual: who agreed?" | "not entered";
  readonly sentence: string;
}

export interface SettingLine {
  readonly setting: ClinicSetting<ClinicSettingName>;
  /** As it stands now, with its unit; null where nothing stands there. */
  readonly now: string | null;
  /** The cell; null where this workbook has none for it. */
  readonly where: Place | null;
  readonly doubt: Doubt | null;
}

export interface LinesGroup {
  readonly heading: string;
  readonly lines: readonly SettingLine[];
}

export interface SettingsView {
  /** False: no settings in this workbook; the lines show what is known of each setting. */
  readonly isThere: boolean;
  readonly groups: readonly LinesGroup[];
}

/** The first must not be above the second: for those that the sheets' formulas do not insist on, too. */
const rising: readonly (readonly [ClinicSettingName, ClinicSettingName])[] = [
  ["Int_Balloon_G", "Lim_Balloon_G"],
  ["Int_Balloon_J", "Lim_Balloon_J"],
  ["Int_GJ", "Lim_GJ"],
  ["Int_Bumper_Adult", "Lim_Bumper_Adult"],
  ["Rev_Bumper_Adult", "Lim_Bumper_Adult"],
  ["Rev_Bumper_Child", "Lim_Bumper_Child"],
  ["Out_Aim", "Out_Most"],
  ...Object.values(readiness).flatMap((family) => family.rising),
];

export const NOT_USUAL = "not usual: who agreed?";

const notUsual = (sentence: string): Doubt => ({ mark: NOT_USUAL, sentence });
const notEntered = (sentence: string): Doubt => ({ mark: "not entered", sentence });

const isBlank = (cell: Cell): boolean => cell === null || (typeof cell === "string" && cell.trim() === "");

const figure = (value: number): string => String(Number(value.toPrecision(12)));

/** A value of this setting as people read it. */
export function settingText(setting: ClinicSetting, cell: Cell): string | null {
  if (isBlank(cell)) return null;
  if (setting.kind === "number") return typeof cell === "number" ? `${figure(cell)} ${setting.unit}` : String(cell);
  if (setting.kind === "text") return String(cell);
  const day = readDate(cell!);
  return typeof day === "number" ? shortDate(day) : day === null ? null : String(cell);
}

function doubtOf(setting: ClinicSetting<ClinicSettingName>, cell: Cell, today: number): Doubt | null {
  if (isBlank(cell)) {
    const standard = settingText(setting, setting.default);
    if (standard !== null) return notUsual(`Nothing is entered; the default is ${standard}.`);
    return notEntered("Nothing is entered, and there is no default: what needs it has no answer.");
  }
  switch (setting.kind) {
    case "number": {
      if (typeof cell !== "number" || !Number.isFinite(cell)) return notUsual("This is not a number.");
      const refusal = refuseNumber(setting, cell);
      return refusal === null ? null : notUsual(`Outside what is allowed. ${refusal}`);
    }
    case "text":
      return setting.words && !setting.words.includes(String(cell))
        ? notUsual(`One of: ${setting.words.join(", ")}.`)
        : null;
    case "date": {
      const day = readDate(cell!);
      if (day === null) return notEntered("Nothing is entered, and there is no default.");
      if (typeof day !== "number") return notUsual("This is not a date.");
      if (setting.name === "Agreed_On" && day > today) return notUsual("This day has not come yet.");
      if (setting.name === "Agreed_Until" && day < today) return notUsual("This day is past: review the settings.");
      return null;
    }
  }
}

/** @param today as a day number */
export function settingLines(overview: Overview | null, today: number): SettingsView {
  const nameOf = (name: ClinicSettingName) =>
    overview?.names.find((one) => one.name.toLowerCase() === name.toLowerCase());
  const isThere = nameOf("Agreed_By") !== undefined;

  /** An entry that is missing or cannot be read counts with its default, as the pane uses it. */
  const numberOf = (name: ClinicSettingName): number | null => {
    const value = nameOf(name)?.value ?? null;
    const standard = clinicSettingNamed(name).default;
    return typeof value === "number" ? value : typeof standard === "number" ? standard : null;
  };
  const contradiction = (name: ClinicSettingName): Doubt | null => {
    for (const pair of rising) {
      if (!pair.includes(name)) continue;
      const [low, high] = pair.map(numberOf) as [number | null, number | null];
      if (low === null || high === null || low <= high) continue;
      const [lowLabel, highLabel] = pair.map((one) => clinicSettingNamed(one).label);
      return notUsual(`“${lowLabel}” (${figure(low)}) is above “${highLabel}” (${figure(high)}).`);
    }
    return null;
  };

  const lineOf = (setting: ClinicSetting<ClinicSettingName>): SettingLine => {
    const name = nameOf(setting.name);
    if (!overview || !isThere) return { setting, now: null, where: null, doubt: null };
    if (!name) {
      const sentence = "This workbook has no cell for it.";
      return { setting, now: null, where: null, doubt: notEntered(sentence) };
    }
    const where = namedCell(name.name, overview);
    return {
      setting,
      now: settingText(setting, name.value),
      where: where instanceof Refusal ? null : where,
      doubt: doubtOf(setting, name.value, today) ?? contradiction(setting.name),
    };
  };
  return {
    isThere,
    groups: settingGroups.map(({ heading, settings }) => ({ heading, lines: settings.map(lineOf) })),
  };
}

export const doubtful = (view: SettingsView): readonly SettingLine[] =>
  view.groups.flatMap(({ lines }) => lines.filter(({ doubt }) => doubt !== null));
