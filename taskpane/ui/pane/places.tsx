/**
 * The pane's places in their order, and the parts of each. Each part is fetched when it is first shown, so that the pane
 * stands at once.
 */
import { lazy, type ComponentType } from "react";
import { pane as words } from "../../texts/pane";
import type { PartKey, PartProps, PlaceKey } from "./part-props";

export interface Part {
  readonly key: PartKey;
  readonly label: string;
  readonly Content: ComponentType<PartProps>;
}

export interface Place {
  readonly key: PlaceKey;
  readonly label: string;
  /** More than one: a row of presses at the top chooses. */
  readonly parts: readonly Part[];
}

const fetched = (load: () => Promise<ComponentType<PartProps>>): Part["Content"] =>
  lazy(async () => ({ default: await load() }));

const TubeOut = fetched(async () => (await import(/* webpackChunkName: "now" */ "../tube-out/TubeOut")).TubeOut);
const Today = fetched(async () => (await import(/* webpackChunkName: "now" */ "../today/Today")).Today);
const Pictures = fetched(
  async () => (await import(/* webpackChunkName: "pictures" */ "../pictures/Pictures")).Pictures,
);
const AddColumns = fetched(
  async () => (await import(/* webpackChunkName: "add-columns" */ "../add-columns/AddColumns")).AddColumns,
);
const SetUp = fetched(async () => (await import(/* webpackChunkName: "set-up" */ "../set-up/SetUp")).SetUp);
const ConvertSizes = fetched(
  async () => (await import(/* webpackChunkName: "convert" */ "../convert-sizes/ConvertSizes")).ConvertSizes,
);
const Mend = fetched(async () => (await import(/* webpackChunkName: "mend" */ "../mend/Mend")).Mend);
const CheckSheet = fetched(
  async () => (await import(/* webpackChunkName: "check-sheet" */ "../check-sheet/CheckSheet")).CheckSheet,
);
const ShowOnly = fetched(
  async () => (await import(/* webpackChunkName: "show-only" */ "../show-only/ShowOnly")).ShowOnly,
);
const Guide = fetched(async () => (await import(/* webpackChunkName: "guide" */ "../guide/Guide")).Guide);
const Explain = fetched(async () => (await import(/* webpackChunkName: "explain" */ "../explain/Explain")).Explain);
const ClinicSettings = fetched(
  async () => (await import(/* webpackChunkName: "settings" */ "../clinic-settings/ClinicSettings")).ClinicSettings,
);
const Help = fetched(async () => (await import(/* webpackChunkName: "help" */ "../help/Help")).Help);

/** The telephone call: one press away from everywhere. */
export const tubeOut: Place = {
  key: "tubeOut",
  label: words.tubeOut,
  parts: [{ key: "tubeOut", label: words.tubeOut, Content: TubeOut }],
};

export const places: readonly Place[] = [
  { key: "today", label: words.today, parts: [{ key: "today", label: words.today, Content: Today }] },
  {
    key: "list",
    label: words.list,
    parts: [
      { key: "addColumns", label: words.addColumns, Content: AddColumns },
      { key: "mend", label: words.mend, Content: Mend },
      { key: "checkSheet", label: words.checkSheet, Content: CheckSheet },
      { key: "showOnly", label: words.showOnly, Content: ShowOnly },
      { key: "convert", label: words.convert, Content: ConvertSizes },
    ],
  },
  {
    key: "pictures",
    label: words.pictures,
    parts: [{ key: "pictures", label: words.pictures, Content: Pictures }],
  },
  {
    key: "more",
    label: words.more,
    parts: [
      { key: "settings", label: words.settings, Content: ClinicSettings },
      { key: "setUp", label: words.setUp, Content: SetUp },
      { key: "guide", label: words.guide, Content: Guide },
      { key: "explain", label: words.explain, Content: Explain },
      { key: "help", label: words.help, Content: Help },
    ],
  },
];
