/** Validation, conditional formats and notes of a file, as the grid's own plugins read them from a snapshot. */
import {
  DataValidationErrorStyle,
  DataValidationRenderMode,
  type IRange,
  type ISheetDataValidationRule,
} from "@univerjs/core";
import type { ConditionalRule, DataValidation, Sheet } from "hucre/xlsx";
import { cellAddress } from "../../../../src/columns/formula";
import { parseRange } from "../../package";
import { fromFile } from "../formulas/dialect";
import { relativeForm } from "../formulas/references";
import { yearFirst } from "../by-hand/typed-date";
import { rgbOf } from "./colors";
import { within, type Drawn } from "./extent";
import { gridStyle } from "./styles";

/** Rules go on below the last row for those that are added; the caseload's reach to row 10,004. Our choice. */
const ROWS_TO_COME = 10_004;

/** "A2:A9 C2:C9", as far as it matters: rules are often set for whole columns, and the grid goes through their cells. */
const rangesOf = (text: string, { rows, columns }: Drawn): IRange[] =>
  within(
    text
      .split(/\s+/)
      .map((one) => parseRange(one))
      .filter((range) => range !== undefined)
      .map((range) => ({
        startRow: range.top - 1,
        endRow: range.bottom - 1,
        startColumn: range.left - 1,
        endColumn: range.right - 1,
      })),
    { rows: Math.max(rows, ROWS_TO_COME), columns },
  );

const ERROR_STYLES: Readonly<Record<string, DataValidationErrorStyle>> = {
  stop: DataValidationErrorStyle.STOP,
  warning: DataValidationErrorStyle.WARNING,
  information: DataValidationErrorStyle.INFO,
};

const asFormula = (text: string | undefined): string | undefined => {
  if (text === undefined) return undefined;
  return /^[-+]?[\d.]+(?:[eE][-+]?\d+)?$/.test(text) || text.startsWith("=") ? text : `=${fromFile(text)}`;
};

function listSource(rule: DataValidation): string {
  if (rule.values) return rule.values.join(",");
  const text = rule.formula1 ?? "";
  return text.startsWith('"') && text.endsWith('"') ? text.slice(1, -1).replaceAll('""', '"') : (asFormula(text) ?? "");
}

/** Kinds of rules that compare with numbers. */
const COMPARED: ReadonlySet<string> = new Set(["whole", "decimal", "date", "time", "textLength"]);

const isNumber = (text: string | undefined): boolean =>
  text === undefined || text.trim() === "" || Number.isFinite(Number(text));

/** The grid's own date rule takes texts for dates; where its ends are worked out it is one of numbers, which dates are. */
const gridKind = ({ type, formula1, formula2 }: DataValidation): string =>
  type === "date" && !(isNumber(formula1) && isNumber(formula2)) ? "decimal" : type;

const COMPARISONS: Readonly<Record<string, (one: string, other: string) => string>> = {
  between: (one, other) => `a date from ${one} to ${other}`,
  notBetween: (one, other) => `a date before ${one} or after ${other}`,
  equal: (one) => `the date ${one}`,
  notEqual: (one) => `any date but ${one}`,
  greaterThan: (one) => `a date after ${one}`,
  greaterThanOrEqual: (one) => `a date from ${one} on`,
  lessThan: (one) => `a date before ${one}`,
  lessThanOrEqual: (one) => `a date up to ${one}`,
};

/** Days between the two ways of counting dates (ECMA-376 part 1, 18.17.4.1). */
const DAYS_TO_1904 = 1462;

/** What a rule about dates asks for, in days: the grid would give them as numbers. */
function dateAsked({ operator, formula1, formula2 }: DataValidation, isFrom1904: boolean): string {
  const day = (text = ""): string =>
    isNumber(text) && text.trim() !== "" ? yearFirst(Math.floor(Number(text)) + (isFrom1904 ? DAYS_TO_1904 : 0)) : text;
  return `The file asks for ${COMPARISONS[operator ?? "between"]!(day(formula1), day(formula2))} here.`;
}

/** The file's own sentence, where it has one to show. */
function sentenceOf(
  rule: DataValidation,
  isFrom1904: boolean,
): Pick<ISheetDataValidationRule, "error" | "showErrorMessage"> {
  const { showErrorMessage = false, errorMessage } = rule;
  if (rule.type === "date" && !(showErrorMessage && errorMessage))
    return { error: dateAsked(rule, isFrom1904), showErrorMessage: true };
  return { showErrorMessage, ...(errorMessage !== undefined && { error: errorMessage }) };
}

interface Gathered {
  readonly rule: DataValidation;
  readonly ranges: IRange[];
}

/**
 * Programs that write rules cell by cell leave thousands that ask the same. The grid holds each rule against all others
 * (2,000 of them took longer than 20 s, measured), so that they become one.
 */
function together(rules: readonly DataValidation[], drawn: Drawn): readonly Gathered[] {
  const known = new Map<string, Gathered & { readonly lastByColumns: Map<string, IRange> }>();
  for (const rule of rules) {
    const ranges = rangesOf(rule.range, drawn);
    const [first] = ranges;
    if (!first) continue;
    const meaning = (text: string | undefined) => text && relativeForm(text, first.startRow, first.startColumn);
    const [formula1, formula2] = [meaning(rule.formula1), meaning(rule.formula2)];
    const key = JSON.stringify({ ...rule, range: "", formula1, formula2 });
    const same = known.get(key) ?? { rule, ranges: [], lastByColumns: new Map<string, IRange>() };
    known.set(key, same);
    for (const range of ranges) {
      const columns = `${range.startColumn} ${range.endColumn}`;
      const above = same.lastByColumns.get(columns);
      // the first range stays the first: relative formulas are told from there
      if (above && above.endRow + 1 === range.startRow) above.endRow = range.endRow;
      else {
        same.ranges.push(range);
        same.lastByColumns.set(columns, range);
      }
    }
  }
  return [...known.values()];
}

export const validations = (
  sheet: Sheet,
  sheetId: string,
  drawn: Drawn,
  isFrom1904 = false,
): ISheetDataValidationRule[] =>
  together(sheet.dataValidations ?? [], drawn).map(
    ({ rule, ranges }, index) =>
      ({
        uid: `${sheetId}-validation${index}`,
        type: gridKind(rule),
        ranges,
        // with an operator the grid compares words as numbers, and calls every one of them invalid (0.25.1)
        ...(COMPARED.has(rule.type) && { operator: rule.operator ?? "between" }),
        formula1: rule.type === "list" ? listSource(rule) : asFormula(rule.formula1),
        formula2: asFormula(rule.formula2),
        allowBlank: rule.allowBlank ?? false,
        ...sentenceOf(rule, isFrom1904),
        // a rule that shows no message stops nobody (ECMA-376 part 1, 18.3.1.32)
        errorStyle: rule.showErrorMessage ? ERROR_STYLES[rule.errorStyle ?? "stop"] : DataValidationErrorStyle.INFO,
        showInputMessage: rule.showInputMessage ?? false,
        prompt: rule.inputMessage,
        ...(rule.type === "list" && { renderMode: DataValidationRenderMode.ARROW }),
      }) as ISheetDataValidationRule,
  );

const TEXT_RULES: Readonly<Record<string, string>> = {
  containsText: "containsText",
  notContainsText: "notContainsText",
  beginsWith: "beginsWith",
  endsWith: "endsWith",
  containsBlanks: "containsBlanks",
  notContainsBlanks: "notContainsBlanks",
};

const WORD = /^EXACT\((?:LEFT\(([A-Z]+[0-9]+),([0-9]+)\)|([A-Z]+[0-9]+)),"((?:[^"]|"")*)"\)$/;

/**
 * A formula that only asks whether the cell itself reads certain words, or begins with them, as rules of the grid's own:
 * those are looked at where they are painted, a formula is worked out for every row of the sheet (measured: 280,000 for
 * a caseload of 5,000). Undefined where it asks anything else.
 */
function wordsAsked(
  formula: string,
  cell: string,
): readonly { readonly operator: string; readonly value: string }[] | undefined {
  const all = /^OR\((.*)\)$/.exec(formula);
  const parts = all ? all[1]!.split(/,(?=EXACT\()/) : [formula];
  const asked = parts.map((part) => {
    const [, leftCell, count, plainCell, text] = WORD.exec(part) ?? [];
    const value = text?.replaceAll('""', '"');
    if (value === undefined || value === "" || (leftCell ?? plainCell) !== cell) return undefined;
    if (leftCell === undefined) return { operator: "equal", value };
    return Number(count) === value.length ? { operator: "beginsWith", value } : undefined;
  });
  return asked.every((one) => one !== undefined) ? asked : undefined;
}

const threshold = (one: { type: string; value?: string }) => ({
  type: one.type,
  ...(one.value !== undefined && { value: Number.isFinite(Number(one.value)) ? Number(one.value) : `=${one.value}` }),
});

const firstFormula = (rule: ConditionalRule): string | undefined =>
  typeof rule.formula === "string" ? rule.formula : rule.formula?.[0];

/** In a rule's own style a solid fill is painted in the colour that cells use for the paper (ECMA-376 part 1, 18.8.14). */
function ruleStyle(style: ConditionalRule["style"]): ConditionalRule["style"] {
  const fill = style?.fill;
  if (fill?.type !== "pattern" || !fill.bgColor) return style;
  return { ...style, fill: { type: "pattern", pattern: "solid", fgColor: fill.bgColor } };
}

/** The end of a rule for days that have passed, as this page writes it. In the grid today is the day of opening. */
const BEFORE_TODAY = /^(?:TODAY\(\)|As_of)-1$/i;

/** The rule in the plugin's own form; undefined for kinds it does not have (they stay in the file). */
function highlight(rule: ConditionalRule, theme: readonly string[], today: number): object | undefined {
  const style = gridStyle(ruleStyle(rule.style), theme);
  const cell = (subType: string, more: object = {}) => ({ type: "highlightCell", subType, style, ...more });
  const formula = firstFormula(rule);
  switch (rule.type) {
    case "expression":
      return formula === undefined ? undefined : cell("formula", { value: `=${fromFile(formula)}` });
    case "cellIs": {
      const text = /^"((?:[^"]|"")*)"$/.exec(formula ?? "")?.[1];
      if (text !== undefined)
        return rule.operator === "equal"
          ? cell("text", { operator: "equal", value: text.replaceAll('""', '"') })
          : undefined;
      const ends = Array.isArray(rule.formula) ? rule.formula : [];
      if (rule.operator === "between" && BEFORE_TODAY.test(ends[1] ?? "") && Number.isFinite(Number(ends[0])))
        return cell("number", { operator: "between", value: [Number(ends[0]), today - 1] });
      const numbers = (Array.isArray(rule.formula) ? rule.formula : [rule.formula ?? ""]).map(Number);
      if (numbers.some((value) => !Number.isFinite(value)) || (formula ?? "").trim() === "") return undefined;
      const pair = rule.operator === "between" || rule.operator === "notBetween";
      return cell("number", { operator: rule.operator ?? "equal", value: pair ? numbers : numbers[0] });
    }
    case "duplicateValues":
    case "uniqueValues":
      return cell(rule.type);
    case "colorScale": {
      const scale = rule.colorScale;
      if (!scale) return undefined;
      const config = scale.cfvo.map((one, index) => ({
        index,
        color: `#${(scale.colors[index] ?? "FFFFFF").slice(-6)}`,
        value: threshold(one),
      }));
      return { type: "colorScale", config };
    }
    case "dataBar": {
      const bar = rule.dataBar;
      if (!bar?.cfvo[0] || !bar.cfvo[1]) return undefined;
      const color = rgbOf({ rgb: bar.color }, theme) ?? "#638ec6";
      const [min, max] = [threshold(bar.cfvo[0]), threshold(bar.cfvo[1])];
      const config = { min, max, isGradient: true, positiveColor: color, nativeColor: color };
      return { type: "dataBar", isShowValue: true, config };
    }
    default: {
      const operator = TEXT_RULES[rule.type];
      return operator === undefined ? undefined : cell("text", { operator, value: rule.text ?? "" });
    }
  }
}

/** In the file a lower priority number wins; the plugin lets the first in its list win. */
export const conditionalFormats = (
  sheet: Sheet,
  sheetId: string,
  theme: readonly string[],
  drawn: Drawn,
  today: number,
): object[] =>
  [...(sheet.conditionalRules ?? [])]
    .sort((one, other) => one.priority - other.priority)
    .flatMap((rule, index) => {
      const ranges = rangesOf(rule.range, drawn);
      const [first] = ranges;
      if (!first) return [];
      const cell = cellAddress(first.startRow, first.startColumn);
      const asked = rule.type === "expression" ? wordsAsked(firstFormula(rule) ?? "", cell) : undefined;
      const style = gridStyle(ruleStyle(rule.style), theme);
      const read = asked
        ? asked.map((one) => ({ type: "highlightCell", subType: "text", style, ...one }))
        : [highlight(rule, theme, today)].filter((one) => one !== undefined);
      return read.map((one, part) => ({
        cfId: `${sheetId}-format${index}-${part}`,
        ranges,
        stopIfTrue: rule.stopIfTrue ?? false,
        rule: one,
      }));
    });

export function notes(sheet: Sheet, drawn: Drawn): Record<number, Record<number, object>> | undefined {
  const found: Record<number, Record<number, object>> = {};
  for (const [key, cell] of sheet.cells ?? []) {
    if (!cell.comment) continue;
    const [row, col] = key.split(",").map(Number) as [number, number];
    if (row >= drawn.rows || col >= drawn.columns) continue;
    const note = { id: `note${row}-${col}`, row, col, width: 160, height: 80, note: cell.comment.text, show: false };
    (found[row] ??= {})[col] = note;
  }
  return Object.keys(found).length > 0 ? found : undefined;
}
