/** The grid as its makers ship it, with the parts that we use and nothing of ours: the peer of our page. */
import { LocaleType, LogLevel, merge, Univer, type IWorkbookData, type Plugin, type PluginCtor } from "@univerjs/core";
import { FUniver } from "@univerjs/core/lib/facade";
import { UniverSheetsConditionalFormattingPreset } from "@univerjs/preset-sheets-conditional-formatting";
import conditionalFormattingTexts from "@univerjs/preset-sheets-conditional-formatting/locales/en-US";
import { UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import coreTexts from "@univerjs/preset-sheets-core/locales/en-US";
import { UniverSheetsDataValidationPreset } from "@univerjs/preset-sheets-data-validation";
import dataValidationTexts from "@univerjs/preset-sheets-data-validation/locales/en-US";
import { UniverSheetsFilterPreset } from "@univerjs/preset-sheets-filter";
import filterTexts from "@univerjs/preset-sheets-filter/locales/en-US";
import { UniverSheetsFindReplacePreset } from "@univerjs/preset-sheets-find-replace";
import findReplaceTexts from "@univerjs/preset-sheets-find-replace/locales/en-US";
import { UniverSheetsNotePreset } from "@univerjs/preset-sheets-note";
import noteTexts from "@univerjs/preset-sheets-note/locales/en-US";
import { UniverSheetsSortPreset } from "@univerjs/preset-sheets-sort";
import sortTexts from "@univerjs/preset-sheets-sort/locales/en-US";
import { UniverSheetsTablePreset } from "@univerjs/preset-sheets-table";
import tableTexts from "@univerjs/preset-sheets-table/locales/en-US";
import "@univerjs/preset-sheets-core/lib/index.css";
import "@univerjs/preset-sheets-conditional-formatting/lib/index.css";
import "@univerjs/preset-sheets-data-validation/lib/index.css";
import "@univerjs/preset-sheets-filter/lib/index.css";
import "@univerjs/preset-sheets-find-replace/lib/index.css";
import "@univerjs/preset-sheets-note/lib/index.css";
import "@univerjs/preset-sheets-sort/lib/index.css";
import "@univerjs/preset-sheets-table/lib/index.css";

const texts = merge(
  {},
  coreTexts,
  filterTexts,
  sortTexts,
  conditionalFormattingTexts,
  dataValidationTexts,
  tableTexts,
  noteTexts,
  findReplaceTexts,
);
const univer = new Univer({
  locale: LocaleType.EN_US,
  locales: { [LocaleType.EN_US]: texts },
  logLevel: LogLevel.ERROR,
});
const presets = [
  UniverSheetsCorePreset({ container: document.getElementById("root")! }),
  UniverSheetsFilterPreset(),
  UniverSheetsSortPreset(),
  UniverSheetsConditionalFormattingPreset(),
  UniverSheetsDataValidationPreset(),
  UniverSheetsTablePreset(),
  UniverSheetsNotePreset(),
  UniverSheetsFindReplacePreset(),
];
type Registration = PluginCtor<Plugin> | readonly [PluginCtor<Plugin>, unknown];
const plugins = new Map<string, readonly [PluginCtor<Plugin>, unknown]>();
for (const registration of presets.flatMap((preset) => preset.plugins as Registration[])) {
  const pair = (Array.isArray(registration) ? registration : [registration, undefined]) as [
    PluginCtor<Plugin>,
    unknown,
  ];
  plugins.set(pair[0].pluginName, pair);
}
for (const [plugin, settings] of plugins.values()) univer.registerPlugin(plugin, settings as never);

const api = FUniver.newAPI(univer);

export interface BarePage {
  /** A list as text in JSON: the grid's own description of a workbook. Only kept, so that `show` is the grid alone. */
  take(json: string): void;
  show(): void;
}

let taken: Partial<IWorkbookData> = {};
const bare: BarePage = {
  take: (json) => void (taken = JSON.parse(json) as Partial<IWorkbookData>),
  show() {
    const before = api.getActiveWorkbook()?.getId();
    api.createWorkbook(taken);
    if (before !== undefined) api.disposeUnit(before);
  },
};
api.createWorkbook({});
Object.assign(window, { bare });
