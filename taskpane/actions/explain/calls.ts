/** One of our functions in the formula, argument by argument. */
import { AS_OF } from "../../../src/columns/as-of";
import { clinicSettings } from "../../../src/settings/index";
import { NAMESPACE } from "../../../src/formula/ours";
import { SheetError } from "../../../src/worksheet/error";
import type { Overview } from "../../workbook/port";
import type { CallExplained, Given } from "./interface";
import type { Node } from "../../../src/formula/tree";
import { cellsOf, spoken, type Cells, type Standing } from "./references";
import { NOT_WORKED_OUT } from "./sentences";
import { answerText, anyText, unitShown, type Unit } from "./values";
import { unitOfAnswer, type Call, type Found, type Offset } from "./work-out";

const settingOf = (name: string) => clinicSettings.find((one) => one.name.toLowerCase() === name.toLowerCase());

/** Where a piece of the formula comes from. */
export function fromText(
  node: Node | undefined,
  standing: Standing,
  overview: Overview,
  at: Offset | null = null,
): string {
  if (!node) return "left out";
  switch (node.is) {
    case "nothing":
      return "left out";
    case "reference": {
      const cells = cellsOf(node.text, standing, overview);
      return cells ? spoken(at ? cellAtOffset(cells, at) : cells, standing, overview) : node.text;
    }
    case "name": {
      if (node.text.toLowerCase() === AS_OF.toLowerCase()) return "today’s date in this workbook";
      const label = settingOf(node.text)?.label;
      return `the name ${node.text}${label ? ` (${label})` : ""}`;
    }
    case "number":
    case "text":
    case "boolean":
    case "array":
      return "written in the formula";
    default:
      return `worked out from ${node.text}`;
  }
}

const cellAtOffset = (cells: Cells, { row, column }: Offset): Cells =>
  cells.area.rows === 1 && cells.area.columns === 1
    ? cells
    : { ...cells, area: { top: cells.area.top + row, left: cells.area.left + column, rows: 1, columns: 1 } };

/** What is used where an argument is left out; lists of nothing say nothing. */
const fallbackText = (fallback: unknown): string | null =>
  typeof fallback === "object" || fallback === undefined ? null : `${String(fallback)} is used`;

/** The unit of a setting's number, for names read outside of our functions. */
export const unitOfName = (name: string): string | undefined => {
  const unit = settingOf(name)?.unit;
  return unit === "text" ? undefined : unit;
};

/** A date is what the function takes for one, or what its cell shows as one. */
export function foundText(found: Found & { readonly known: true }, unit?: Unit): string {
  const { value, dates = [] } = found;
  if (unit === "date") return anyText(value, unit);
  return Array.isArray(value)
    ? anyText(value, (column) => (dates[column] ? "date" : unit))
    : anyText(value, unitShown(value, dates[0] ?? false, unit));
}

export function explainedCall(worked: Call, standing: Standing, overview: Overview): CallExplained {
  const { node, definition, given, at, answer } = worked;
  const fault = answer instanceof SheetError ? answer.about : undefined;
  const explained = definition.order.flatMap(({ name, param }, i): Given[] => {
    const argument = node.args[i];
    const found: Found | undefined = given[i];
    const isLeftOut = argument === undefined || argument.is === "nothing";
    if (isLeftOut && param.optional) {
      const fallback = param.fallbackHelp ?? fallbackText(param.fallback);
      if (fallback === null) return [];
      return [{ name, help: param.help, value: "left out", from: fallback, isAtFault: false }];
    }
    const value = found?.known ? foundText(found, param.unit) : isLeftOut ? "missing" : NOT_WORKED_OUT;
    return [
      {
        name,
        help: param.help,
        value,
        from: fromText(argument, standing, overview, param.mode === "each" ? at : null),
        isAtFault: name === fault,
      },
    ];
  });
  return {
    formula: node.text,
    name: `${NAMESPACE}.${definition.name}`,
    summary: definition.summary,
    given: explained,
    result:
      answer === null
        ? `Not worked out: ${NOT_WORKED_OUT}.`
        : answerText(definition, answer, (column) => unitOfAnswer(worked, column)),
    isError: answer instanceof SheetError,
    cautions: definition.documentation?.cautions ?? [],
  };
}
