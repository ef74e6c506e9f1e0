/**
 * The pane's sections in their order, and the parts of each. Each part is fetched when it is first shown, so that the
 * pane stands at once.
 */
import { lazy, type ComponentType } from "react";
import { pane as words } from "../texts/pane";
import type { SectionProps } from "./sectionProps";

export interface Part {
  readonly key: string;
  readonly label: string;
  readonly Content: ComponentType<SectionProps>;
}

export interface Section {
  readonly key: keyof typeof words.leads;
  readonly label: string;
  /** More than one: a row of presses under the heading chooses. */
  readonly parts: readonly Part[];
}

const fetched = (load: () => Promise<ComponentType<SectionProps>>): Part["Content"] =>
  lazy(async () => ({ default: await load() }));

const Now = fetched(async () => (await import(/* webpackChunkName: "now" */ "./now/Now")).Now);
const AddColumns = fetched(
  async () => (await import(/* webpackChunkName: "add-columns" */ "./addColumns/AddColumns")).AddColumns,
);
const SetUp = fetched(async () => (await import(/* webpackChunkName: "set-up" */ "./setUp/SetUp")).SetUp);
const ConvertSizes = fetched(
  async () => (await import(/* webpackChunkName: "convert" */ "./convert/ConvertSizes")).ConvertSizes,
);
const ShowOnly = fetched(
  async () => (await import(/* webpackChunkName: "show-only" */ "./showOnly/ShowOnly")).ShowOnly,
);
const Guide = fetched(async () => (await import(/* webpackChunkName: "guide" */ "./guide/Guide")).Guide);
const Explain = fetched(async () => (await import(/* webpackChunkName: "explain" */ "./explain/Explain")).Explain);
const ClinicSettings = fetched(
  async () => (await import(/* webpackChunkName: "settings" */ "./settings/ClinicSettings")).ClinicSettings,
);
const Help = fetched(async () => (await import(/* webpackChunkName: "help" */ "./help/Help")).Help);

const only = (Content: Part["Content"]): readonly Part[] => [{ key: "only", label: "", Content }];

export const sections: readonly Section[] = [
  { key: "now", label: words.now, parts: only(Now) },
  {
    key: "caseload",
    label: words.caseload,
    parts: [
      { key: "addColumns", label: words.addColumns, Content: AddColumns },
      { key: "setUp", label: words.setUp, Content: SetUp },
    ],
  },
  { key: "convert", label: words.convert, parts: only(ConvertSizes) },
  { key: "showOnly", label: words.showOnly, parts: only(ShowOnly) },
  {
    key: "functions",
    label: words.functions,
    parts: [
      { key: "guide", label: words.guide, Content: Guide },
      { key: "explain", label: words.explain, Content: Explain },
    ],
  },
  { key: "settings", label: words.settings, parts: only(ClinicSettings) },
  { key: "help", label: words.help, parts: only(Help) },
];
