/** Colours of the states in columns that the pane adds: rules of the grid's own, as they will stand in the file. */
import type { IMutationInfo } from "@univerjs/core";
import {
  AddConditionalRuleMutation,
  ConditionalFormattingRuleModel,
  DeleteConditionalRuleMutation,
  type IConditionFormattingRule,
} from "@univerjs/sheets-conditional-formatting";
import { states, type StateLook } from "../../../styles/states";
import { bottom } from "../../area";
import type { ColumnsTarget } from "../../change/target";
import type { CellRule } from "../../package";
import { rangeText } from "../../package";
import type { SheetId, StateRule } from "../../port";
import type { Engine } from "../engine";
import type { Desk } from "./write";

/** Tells them from the rules of the file. */
const OURS = "state-rule-";
/** Rows that are typed in below a table come under its rules too. Our choice. */
const ROWS_TO_COME = 1_000;

const gridStyle = ({ ink, ground, isBold, isItalic }: StateLook) => ({
  cl: { rgb: `#${ink}` },
  bg: { rgb: `#${ground}` },
  ...(isBold && { bl: 1 }),
  ...(isItalic && { it: 1 }),
});

/** In the grid today is the day of opening, a number: its own rules take no formulas. */
const condition = (rule: StateRule, today: number) =>
  "reads" in rule
    ? { subType: "text", operator: "equal", value: rule.reads }
    : { subType: "number", operator: "between", value: [1, today - 1] };

/** @returns what takes them away again */
export function addStateRules(desk: Desk, { sheet, table, data, columns }: ColumnsTarget): (again: Desk) => void {
  const ids = { unitId: desk.unitId, subUnitId: sheet };
  const last = bottom(data) - 1 + (table === null ? 0 : ROWS_TO_COME);
  const added: string[] = [];
  columns.forEach(({ rules = [] }, i) => {
    const column = data.left + i;
    const range = { startRow: data.top, endRow: last, startColumn: column, endColumn: column };
    for (const rule of rules) {
      const cfId = `${OURS}${rule.state}-${desk.unique()}`;
      const style = gridStyle(states[rule.state]);
      const made = { type: "highlightCell", style, ...condition(rule, desk.today) };
      desk.step.do(
        {
          id: AddConditionalRuleMutation.id,
          params: { ...ids, rule: { cfId, ranges: [range], stopIfTrue: false, rule: made } },
        },
        removal(desk, sheet, cfId),
      );
      added.push(cfId);
    }
  });
  return (again) => {
    const rules = again.engine.injector.get(ConditionalFormattingRuleModel);
    for (const cfId of added) {
      const rule = rules.getRule(again.unitId, sheet, cfId);
      if (!rule) continue;
      again.step.do(removal(again, sheet, cfId), {
        id: AddConditionalRuleMutation.id,
        params: { unitId: again.unitId, subUnitId: sheet, rule },
      });
    }
  };
}

const removal = (desk: Desk, subUnitId: SheetId, cfId: string): IMutationInfo => ({
  id: DeleteConditionalRuleMutation.id,
  params: { unitId: desk.unitId, subUnitId, cfId },
});

/** Those of a sheet that the file does not have yet. @param today how formulas call it */
export function stateRules(engine: Engine, unitId: string, sheet: SheetId, today: string): readonly CellRule[] {
  const rules = engine.injector.get(ConditionalFormattingRuleModel).getSubunitRules(unitId, sheet) ?? [];
  return rules.flatMap((rule) => (rule.cfId.startsWith(OURS) ? cellRules(rule, today) : []));
}

function cellRules({ cfId, ranges, rule }: IConditionFormattingRule, today: string): readonly CellRule[] {
  const state = cfId.slice(OURS.length).split("-")[0] as keyof typeof states;
  const { subType, value } = rule as unknown as { readonly subType: string; readonly value: unknown };
  const asks = subType === "text" ? { equals: String(value) } : { between: ["1", `${today}-1`] as const };
  return ranges.map(({ startRow, endRow, startColumn, endColumn }) => ({
    range: rangeText({ top: startRow + 1, bottom: endRow + 1, left: startColumn + 1, right: endColumn + 1 }),
    look: states[state],
    ...asks,
  }));
}
