/** Colours of the states in columns that the pane adds: conditional formats of Excel's own kind "cell value". */
import { states } from "../../../styles/states";
import type { ColumnsTarget } from "../../change/target";
import type { StateRule } from "../../port";
import { rangeOf } from "../place";

const inQuotes = (text: string): string => `"${text.replaceAll('"', '""')}"`;

const condition = (rule: StateRule): Excel.ConditionalCellValueRule =>
  "reads" in rule
    ? { formula1: `=${inQuotes(rule.reads)}`, operator: Excel.ConditionalCellValueOperator.equalTo }
    : { formula1: "=1", formula2: `=${rule.before}-1`, operator: Excel.ConditionalCellValueOperator.between };

/** @returns the ids by which they are taken away again */
export async function colour(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  { data, columns }: ColumnsTarget,
): Promise<readonly string[]> {
  const made = columns.flatMap(({ rules = [] }, i) => {
    const range = rangeOf(sheet, { ...data, left: data.left + i, columns: 1 });
    return rules.map((rule) => {
      const format = range.conditionalFormats.add(Excel.ConditionalFormatType.cellValue);
      const look: { ink: string; ground: string; isBold?: boolean; isItalic?: boolean } = states[rule.state];
      format.cellValue.rule = condition(rule);
      format.cellValue.format.font.color = `#${look.ink}`;
      if (look.isBold) format.cellValue.format.font.bold = true;
      if (look.isItalic) format.cellValue.format.font.italic = true;
      format.cellValue.format.fill.color = `#${look.ground}`;
      format.load("id");
      return format;
    });
  });
  if (made.length > 0) await context.sync();
  return made.map(({ id }) => id);
}

/** Takes away those of ours that are still there; the person's own on the same cells stay. */
export async function uncolour(
  context: Excel.RequestContext,
  range: Excel.Range,
  ids: readonly string[],
): Promise<void> {
  if (ids.length === 0) return;
  const { conditionalFormats } = range;
  conditionalFormats.load("items/id");
  await context.sync();
  for (const format of conditionalFormats.items) if (ids.includes(format.id)) format.delete();
  await context.sync();
}
