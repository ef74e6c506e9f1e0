import { balloonLoss } from "./balloon-loss";
import { changeIntervals } from "./change-intervals";
import { changeWords } from "./change-words";
import type { Setting } from "./setting";

/** Every clinic setting, in the order in which lists show them. */
export const settings = [...changeIntervals, ...changeWords, ...balloonLoss] as const;

export type SettingName = (typeof settings)[number]["name"];

const byName = new Map<string, Setting<SettingName>>(settings.map((each) => [each.name, each]));

export const settingNamed = (name: SettingName): Setting<SettingName> => byName.get(name)!;
