/** What may be entered, and words in colour: both reach well below the last row, so that rows added later have them. */
import type { ColumnRule, SheetDescription, TableDescription, Validation } from "../../../src/caseload/book";
import { cellAddress, inA1, quoted, type FormulaTemplate } from "../../../src/columns/formula";
import { callsOurs } from "../../../src/formula/ours";
import { tokens } from "../../../src/formula/tokens";
import { inFile } from "./formula";
import type { Lists } from "./lists";
import { ruleStyle } from "./styles";
import { asText, counted, element } from "./xml";

/** A clinic's list for many years; the whole column would slow every program that paints it. */
const LEAST_ROWS = 10_000;
const ROWS_BELOW = 5_000;

const rulesReach = (table: TableDescription): number =>
  table.top + Math.max(LEAST_ROWS, table.rows.length + ROWS_BELOW);

/** Where a rule holds, and the row and column that its formula is written for. */
interface Ground {
  readonly row: number;
  readonly column: number;
  /** Of the table; where there is none, of the sheet. */
  readonly left: number;
  readonly range: string;
}

const groundOf = (table: TableDescription, index: number): Ground => {
  const [row, column] = [table.top + 1, table.left + index];
  const range = `${cellAddress(row, column)}:${cellAddress(rulesReach(table), column)}`;
  return { row, column, left: table.left, range };
};

/** Rules are worked out by the program alone: they call no add-in, and name a table's column only by a defined name. */
function formulaAt(template: FormulaTemplate, { row, left }: Ground): string {
  const text = inA1(template, row, left);
  if (callsOurs(text)) throw new Error(`A rule cannot call our functions: ${text}`);
  if (tokens(text).some(({ kind }) => kind === "bracket")) throw new Error(`A rule cannot hold Table[Column]: ${text}`);
  return inFile(text);
}

/** Excel's own limits for a rule. */
const LONGEST = { title: 32, sentence: 225, hint: 255, formula: 255 };

/** A title is a label that stands beside the cell anyway; sentences and hints are never cut. */
function titleOf({ title }: Validation): string {
  if (title.length <= LONGEST.title) return title;
  const start = title.slice(0, LONGEST.title);
  return `${start.slice(0, start.lastIndexOf(" ")).replace(/[,:;]$/, "")}…`;
}

function refuseLong(rule: Validation): void {
  for (const key of ["sentence", "hint"] as const) {
    const text = rule[key] ?? "";
    if (text.length > LONGEST[key]) throw new Error(`The ${key} of a rule is longer than ${LONGEST[key]}: ${text}`);
  }
}

/** A date with a time of day still counts as that day. */
const NEARLY_A_DAY = "0.99999";

function conditions(rule: Validation, ground: Ground, lists: Lists) {
  switch (rule.kind) {
    case "list":
      return { type: "list", first: lists.source(rule.words) };
    case "number":
      return { type: rule.isWhole ? "whole" : "decimal", first: String(rule.least), second: String(rule.most) };
    case "length":
      return { type: "textLength", operator: "lessThanOrEqual", first: String(rule.most) };
    case "date":
      return { type: "date", first: inFile(rule.from), second: `${inFile(rule.until)}+${NEARLY_A_DAY}` };
    case "formula": {
      const first = formulaAt(rule.formula, ground);
      if (first.length > LONGEST.formula)
        throw new Error(`A rule's formula is longer than ${LONGEST.formula}: ${first}`);
      return { type: "custom", first };
    }
  }
}

function validation(rule: Validation, ground: Ground, lists: Lists): string {
  refuseLong(rule);
  const { type, operator, first, second } = {
    operator: undefined,
    second: undefined,
    ...conditions(rule, ground, lists),
  };
  return element(
    "dataValidation",
    {
      type,
      operator,
      errorStyle: rule.severity === "ask" ? "warning" : undefined,
      allowBlank: 1,
      showInputMessage: rule.hint === undefined ? undefined : 1,
      showErrorMessage: 1,
      errorTitle: titleOf(rule),
      error: rule.sentence,
      promptTitle: rule.hint === undefined ? undefined : titleOf(rule),
      prompt: rule.hint,
      sqref: ground.range,
    },
    [`<formula1>${asText(first)}</formula1>`, second === undefined ? "" : `<formula2>${asText(second)}</formula2>`],
  );
}

export function validationsXml({ cells, table }: SheetDescription, lists: Lists): string {
  const inTable = (table?.columns ?? []).flatMap((column, index) =>
    column.validation ? [validation(column.validation, groundOf(table!, index), lists)] : [],
  );
  const alone = cells.flatMap(({ row, column, validation: rule }) =>
    rule ? [validation(rule, { row, column, left: table?.left ?? 0, range: cellAddress(row, column) }, lists)] : [],
  );
  return counted("dataValidations", [...inTable, ...alone]);
}

/** EXACT, because "=" takes ? and * for any letters in the grid's engine, and no letter case in Excel. */
function reads(word: string, cell: string): string {
  if (!word.endsWith("…")) return `EXACT(${cell},${quoted(word)})`;
  const start = word.slice(0, -1);
  return `EXACT(LEFT(${cell},${start.length}),${quoted(start)})`;
}

function conditionOf({ words = [], formula }: ColumnRule, ground: Ground): string {
  if (formula) return formulaAt(formula, ground);
  const each = words.map((word) => reads(word, cellAddress(ground.row, ground.column)));
  return each.length === 1 ? each[0]! : `OR(${each.join(",")})`;
}

/** In each column the first rule that holds wins. */
export function conditionalFormatsXml({ table }: SheetDescription): string {
  let priority = 0;
  const ofColumn = (rules: readonly ColumnRule[], ground: Ground): string =>
    element(
      "conditionalFormatting",
      { sqref: ground.range },
      rules.map((rule) =>
        element(
          "cfRule",
          { type: "expression", dxfId: ruleStyle(rule.look), priority: ++priority, stopIfTrue: 1 },
          `<formula>${asText(conditionOf(rule, ground))}</formula>`,
        ),
      ),
    );
  return (table?.columns ?? [])
    .map(({ rules = [] }, index) => (rules.length === 0 ? "" : ofColumn(rules, groundOf(table!, index))))
    .join("");
}

/** Identifiers and lots are texts on purpose, also where they look like numbers: Excel need not mark each of them. */
export function ignoredErrorsXml({ table }: SheetDescription): string {
  const texts = (table?.columns ?? []).flatMap(({ format }, index) =>
    format === "@" ? [groundOf(table!, index).range] : [],
  );
  if (texts.length === 0) return "";
  return element("ignoredErrors", {}, element("ignoredError", { sqref: texts.join(" "), numberStoredAsText: 1 }));
}
