/**
 * The pane's sections in their order, and the parts of each. Each part is fetched when it is first shown, so that the
 * pane stands at once.
 */
import { lazy, type ReactNode } from "react";
import { pane as words } from "../texts/pane";
import type { Overview, Workbook } from "../workbook/port";
import type { DayFirstWord } from "./help/Help";
import type { OpenNew } from "./openNew";

export interface SectionProps {
  /** Null while the host is starting. */
  readonly workbook: Workbook | null;
  readonly overview: Overview | null;
  /** Today as a day number, by the computer's clock. */
  readonly today: number;
  /** How dates are written on screen: the host's language. */
  readonly locale: string;
  readonly version: string;
  /** How typed dates are read; null where the host decides (Excel). */
  readonly dayFirst: DayFirstWord | null;
  readonly openNew: OpenNew;
  /** False while another part is shown: what follows the selection then rests. */
  readonly isShown: boolean;
}

export interface Part {
  readonly key: string;
  readonly label: string;
  readonly content: (props: SectionProps) => ReactNode;
}

export interface Section {
  readonly key: keyof typeof words.leads;
  readonly label: string;
  /** More than one: a row of presses under the heading chooses. */
  readonly parts: readonly Part[];
}

const Now = lazy(() => import(/* webpackChunkName: "now" */ "./now/Now").then(({ Now }) => ({ default: Now })));
const AddColumns = lazy(() =>
  import(/* webpackChunkName: "add-columns" */ "./addColumns/AddColumns").then(({ AddColumns }) => ({
    default: AddColumns,
  })),
);
const SetUp = lazy(() =>
  import(/* webpackChunkName: "set-up" */ "./setUp/SetUp").then(({ SetUp }) => ({ default: SetUp })),
);
const ConvertSizes = lazy(() =>
  import(/* webpackChunkName: "convert" */ "./convert/ConvertSizes").then(({ ConvertSizes }) => ({
    default: ConvertSizes,
  })),
);
const ShowOnly = lazy(() =>
  import(/* webpackChunkName: "show-only" */ "./showOnly/ShowOnly").then(({ ShowOnly }) => ({ default: ShowOnly })),
);
const Guide = lazy(() =>
  import(/* webpackChunkName: "guide" */ "./guide/Guide").then(({ Guide }) => ({ default: Guide })),
);
const Explain = lazy(() =>
  import(/* webpackChunkName: "explain" */ "./explain/Explain").then(({ Explain }) => ({ default: Explain })),
);
const ClinicSettings = lazy(() =>
  import(/* webpackChunkName: "settings" */ "./settings/ClinicSettings").then(({ ClinicSettings }) => ({
    default: ClinicSettings,
  })),
);
const Help = lazy(() => import(/* webpackChunkName: "help" */ "./help/Help").then(({ Help }) => ({ default: Help })));

const only = (content: Part["content"]): readonly Part[] => [{ key: "only", label: "", content }];

export const sections: readonly Section[] = [
  {
    key: "now",
    label: words.now,
    parts: only(({ workbook, overview, today, locale }) => (
      <Now workbook={workbook} overview={overview} today={today} locale={locale} />
    )),
  },
  {
    key: "caseload",
    label: words.caseload,
    parts: [
      {
        key: "addColumns",
        label: words.addColumns,
        content: ({ workbook, overview, today, locale, isShown }) => (
          <AddColumns workbook={workbook} overview={overview} today={today} locale={locale} isShown={isShown} />
        ),
      },
      {
        key: "setUp",
        label: words.setUp,
        content: ({ workbook, overview, today, locale, openNew }) => (
          <SetUp workbook={workbook} overview={overview} today={today} locale={locale} openNew={openNew} />
        ),
      },
    ],
  },
  {
    key: "convert",
    label: words.convert,
    parts: only(({ workbook, overview, today, locale, isShown }) => (
      <ConvertSizes workbook={workbook} overview={overview} today={today} locale={locale} isShown={isShown} />
    )),
  },
  {
    key: "showOnly",
    label: words.showOnly,
    parts: only(({ workbook, overview, today, isShown }) => (
      <ShowOnly workbook={workbook} overview={overview} today={today} isShown={isShown} />
    )),
  },
  {
    key: "functions",
    label: words.functions,
    parts: [
      {
        key: "guide",
        label: words.guide,
        content: ({ workbook, overview, locale }) => <Guide workbook={workbook} overview={overview} locale={locale} />,
      },
      {
        key: "explain",
        label: words.explain,
        content: ({ workbook, overview, locale }) => (
          <Explain workbook={workbook} overview={overview} locale={locale} />
        ),
      },
    ],
  },
  {
    key: "settings",
    label: words.settings,
    parts: only(({ workbook, overview, today, locale }) => (
      <ClinicSettings workbook={workbook} overview={overview} today={today} locale={locale} />
    )),
  },
  {
    key: "help",
    label: words.help,
    parts: only(({ overview, today, locale, version, dayFirst }) => (
      <Help overview={overview} today={today} locale={locale} version={version} dayFirst={dayFirst} />
    )),
  },
];
