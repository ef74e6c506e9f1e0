/**
 * The grid with its page: Univer's presets, one by one (the umbrella package pulls unlicensed commercial parts in).
 * Nothing is fetched and nothing is stored; styles come from our own style sheet, so the page's policy stays strict.
 */
import "../mends/style-elements";
import { LocaleType, LogLevel, merge, Univer, type Plugin, type PluginCtor } from "@univerjs/core";
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
import {
  UniverSheetsTablePlugin,
  UniverSheetsTablePreset,
  UniverSheetsTableUIPlugin,
} from "@univerjs/preset-sheets-table";
import tableTexts from "@univerjs/preset-sheets-table/locales/en-US";
import "@univerjs/preset-sheets-core/lib/index.css";
import "@univerjs/preset-sheets-conditional-formatting/lib/index.css";
import "@univerjs/preset-sheets-data-validation/lib/index.css";
import "@univerjs/preset-sheets-filter/lib/index.css";
import "@univerjs/preset-sheets-find-replace/lib/index.css";
import "@univerjs/preset-sheets-note/lib/index.css";
import "@univerjs/preset-sheets-sort/lib/index.css";
import "@univerjs/preset-sheets-table/lib/index.css";
import { gridDescriptions, gridFunctions } from "../../../../functions/grid";
import { functions } from "../../../../src/index";
import { british, ownTexts } from "./british";
import type { Engine } from "../engine";
import { markFilteredColumns } from "../mends/table-arrows";
import { hastenColours } from "../mends/colours-put-together";
import { hastenMarks } from "../mends/number-marks";

/** What saving cannot put into a file is not offered (by-hand/guard.ts says why to whoever finds another way). */
const hidden = (...menus: string[]) => Object.fromEntries(menus.map((menu) => [menu, { hidden: true }]));

const menu = hidden(
  "sheet.command.set-range-font-family",
  "sheet.command.set-range-fontsize",
  "sheet.command.set-range-font-increase",
  "sheet.command.set-range-font-decrease",
  "sheet.command.set-range-underline",
  "sheet.command.set-range-stroke",
  "sheet.command.set-range-subscript",
  "sheet.command.set-range-superscript",
  "sheet.command.set-border-basic",
  "sheet.command.set-vertical-text-align",
  "sheet.command.set-text-rotation",
  "sheet.command.add-worksheet-merge",
  "sheet.command.set-tab-color",
  "sheet.command.insert-table",
  "sheet.operation.open-table-selector",
  "sheet.operation.open.conditional.formatting.panel",
  "data-validation.command.open-panel",
  "sheet.command.numfmt.set.currency",
  "sheet.command.add-range-protection-from-toolbar",
  // they take the headers for a row of the list, and sort them in among the others (measured)
  "sheet.command.sort-range-asc-ext",
  "sheet.command.sort-range-desc-ext",
  "sheet.command.sort-range-asc-ext-ctx",
  "sheet.command.sort-range-desc-ext-ctx",
  "sheet.command.sort-range-custom",
  "sheet.command.sort-range-custom-ctx",
);

/** Of every table, whatever look the file gives it: headers in the page's accent where a cell has no ground of its own. No bands: a ground means a state. */
const tableLook = {
  name: "plain",
  style: { headerRowStyle: { bg: { rgb: "#0C5A6B" }, cl: { rgb: "#FFFFFF" } } },
};

type Registration = PluginCtor<Plugin> | readonly [PluginCtor<Plugin>, unknown];

export function startPage(container: HTMLElement): Engine {
  markFilteredColumns();
  hastenMarks();
  hastenColours();
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
    ownTexts,
  );
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: british(texts) },
    logLevel: LogLevel.ERROR,
  });
  const presets = [
    UniverSheetsCorePreset({
      container,
      menu,
      // all tools in one row: the height is for the list
      ribbonType: "simple",
      disableAutoFocus: true,
      formula: { function: gridFunctions(functions), description: gridDescriptions(functions) },
    }),
    UniverSheetsFilterPreset(),
    UniverSheetsSortPreset(),
    UniverSheetsConditionalFormattingPreset(),
    // its search box takes the keyboard from the cell: half a word would be refused; rules are not changed here (by-hand/guard.ts)
    UniverSheetsDataValidationPreset({ showEditOnDropdown: false, showSearchOnDropdown: false }),
    UniverSheetsTablePreset(),
    UniverSheetsNotePreset(),
    UniverSheetsFindReplacePreset(),
  ];
  // several presets bring the same plugin: the last one's settings count
  const plugins = new Map<string, readonly [PluginCtor<Plugin>, unknown]>();
  for (const registration of presets.flatMap((preset) => preset.plugins as Registration[])) {
    const [plugin, settings] = Array.isArray(registration)
      ? (registration as [PluginCtor<Plugin>, unknown])
      : [registration as PluginCtor<Plugin>, undefined];
    plugins.set(plugin.pluginName, [plugin, settings]);
  }
  // its flag would cover the row above every table, and its menu offers what is not saved
  plugins.set(UniverSheetsTableUIPlugin.pluginName, [UniverSheetsTableUIPlugin, { hideAnchor: true }]);
  plugins.set(UniverSheetsTablePlugin.pluginName, [UniverSheetsTablePlugin, { userThemes: [tableLook] }]);
  for (const [plugin, settings] of plugins.values()) univer.registerPlugin(plugin, settings as never);
  return { univer, api: FUniver.newAPI(univer), injector: univer.__getInjector() };
}
