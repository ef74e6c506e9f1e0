/** One conditional format of the kind "cell value" (ECMA-376 part 1, 18.3.1.10). */
import type { CellRule } from "../../edits";
import { escapeAttribute, escapeText } from "../../../xlsx/xml/characters";

const inQuotes = (text: string): string => `"${text.replaceAll('"', '""')}"`;

export function ruleText(rule: CellRule, priority: number, style: number, tag: (local: string) => string): string {
  const [operator, formulas] =
    "equals" in rule ? (["equal", [inQuotes(rule.equals)]] as const) : (["between", rule.between] as const);
  const inside = formulas.map((one) => `<${tag("formula")}>${escapeText(one)}</${tag("formula")}>`).join("");
  return (
    `<${tag("conditionalFormatting")} sqref="${escapeAttribute(rule.range)}">` +
    `<${tag("cfRule")} type="cellIs" dxfId="${style}" priority="${priority}" operator="${operator}">${inside}</${tag("cfRule")}>` +
    `</${tag("conditionalFormatting")}>`
  );
}
