/**
 * Kinds of device, as far as the time of their change is concerned. How a tube is held decides that, not how it was
 * placed nor its shape.
 */
import type { SettingName } from "./index";

export type KindKey =
  | "balloon gastrostomy"
  | "balloon jejunostomy"
  | "gastrojejunal"
  | "bumper adult"
  | "bumper child"
  | "placing team"
  | "not known";

export interface DeviceKind {
  readonly key: KindKey;
  readonly label: string;
  readonly help: string;
  /** After how long a change is due; null: no routine interval. */
  readonly due: SettingName | null;
  /** After how long at the latest; null: no limit of ours. */
  readonly latest: SettingName | null;
  /**
   * What stands where there is no such interval. A date that the placing team has set is missing from the list, and
   * missing must not read as if nothing were to be done.
   */
  readonly without: "no set change" | "no date" | "kind not known";
  /** Whether a balloon of water holds it; null: the kind does not say. */
  readonly hasBalloon: boolean | null;
}

export const kinds: readonly DeviceKind[] = [
  {
    key: "balloon gastrostomy",
    label: "balloon, gastrostomy (G)",
    help: "held by a balloon of water, ends in the stomach",
    due: "Int_Balloon_G",
    latest: "Lim_Balloon_G",
    without: "no set change",
    hasBalloon: true,
  },
  {
    key: "balloon jejunostomy",
    label: "balloon, jejunostomy (J)",
    help: "held by a balloon of water, opening straight into the bowel",
    due: "Int_Balloon_J",
    latest: "Lim_Balloon_J",
    without: "no set change",
    hasBalloon: true,
  },
  {
    key: "gastrojejunal",
    label: "gastrojejunal (GJ), changed with imaging",
    help: "goes on through the stomach into the bowel; never changed at home",
    due: "Int_GJ",
    latest: "Lim_GJ",
    without: "no set change",
    hasBalloon: null,
  },
  {
    key: "bumper adult",
    label: "bumper, adult",
    help: "a bumper, disc or dome that cannot be let down; no routine change, but a limit to plan by",
    due: null,
    latest: "Lim_Bumper_Adult",
    without: "no set change",
    hasBalloon: false,
  },
  {
    key: "bumper child",
    label: "bumper, child",
    help: "a bumper, disc or dome that cannot be let down; no routine change, but a limit to plan by",
    due: null,
    latest: "Lim_Bumper_Child",
    without: "no set change",
    hasBalloon: false,
  },
  {
    key: "placing team",
    label: "date set by the placing team (loop, winged, stitched, catheter)",
    help: "no interval of ours: the placing team sets the date",
    due: null,
    latest: null,
    without: "no date",
    hasBalloon: null,
  },
  {
    key: "not known",
    label: "not known",
    help: "gets no date; the rows are listed",
    due: null,
    latest: null,
    without: "kind not known",
    hasBalloon: null,
  },
];

const byKey = new Map(kinds.map((kind) => [kind.key, kind]));

export const kindNamed = (key: KindKey): DeviceKind => byKey.get(key)!;
