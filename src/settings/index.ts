import { balloonChecks } from "./balloon-checks";
import { balloonLoss } from "./balloon-loss";
import { changeIntervals } from "./change-intervals";
import { changeWords } from "./change-words";
import { agreement, clinic } from "./clinic";
import { doubts } from "./doubts";
import { fit } from "./fit";
import { service } from "./service";
import type { ClinicSetting, Setting } from "./setting";
import { supplies } from "./supplies";
import { asking, tract, tubeOut } from "./tract";

const groups = [
  { heading: "The clinic", settings: [...clinic, ...agreement] },
  { heading: "Change intervals", settings: [...changeIntervals, ...changeWords] },
  { heading: "Balloon", settings: [...balloonChecks, ...balloonLoss] },
  { heading: "Opening, tube out", settings: [...tract, ...tubeOut, ...asking] },
  { heading: "Fit", settings: fit },
  { heading: "Supplies", settings: supplies },
  { heading: "Doubtful entries", settings: doubts },
  { heading: "Service", settings: service },
] as const;

type Known = (typeof groups)[number]["settings"][number];

/** Every name that a settings sheet defines. */
export type ClinicSettingName = Known["name"];

/** Names of numbers that have a default. */
export type SettingName = Extract<Known, { readonly kind: "number"; readonly default: number }>["name"];

export interface SettingGroup {
  readonly heading: string;
  readonly settings: readonly ClinicSetting<ClinicSettingName>[];
}

/** All of a clinic's settings, in the order of the settings sheet. */
export const settingGroups: readonly SettingGroup[] = groups;

export const clinicSettings: readonly ClinicSetting<ClinicSettingName>[] = settingGroups.flatMap(
  (group) => group.settings,
);

const hasDefault = (one: ClinicSetting): one is Setting<SettingName> =>
  one.kind === "number" && typeof one.default === "number";

/** Numbers with a default, in the order in which lists show them. */
export const settings: readonly Setting<SettingName>[] = clinicSettings.filter(hasDefault);

const byName = new Map<string, ClinicSetting<ClinicSettingName>>(clinicSettings.map((each) => [each.name, each]));

export const settingNamed = (name: SettingName): Setting<SettingName> => byName.get(name) as Setting<SettingName>;

export const clinicSettingNamed = (name: ClinicSettingName): ClinicSetting<ClinicSettingName> => byName.get(name)!;
