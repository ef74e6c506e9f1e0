/**
 * Registers every worksheet function with Excel. The whole of functions.js: it needs nothing but the global
 * `CustomFunctions`, and Excel loads it before the pane.
 */
import { functions } from "../src/index";
import { call } from "../src/worksheet/call";
import { SheetError } from "../src/worksheet/error";

/**
 * Every function is declared to give a block, because a range spills. A single value may then go back as it is or as a
 * block of one; which of them works inside tables only a real Excel can tell (docs/manual-test.md). Both are tested
 * with Microsoft's runtime; this constant decides.
 */
export const SINGLE_AS_BLOCK = false;

/** Excel shows a sentence for #VALUE! and #N/A only, so these are the two that leave. */
const forExcel = (value: unknown): unknown =>
  value instanceof SheetError
    ? new CustomFunctions.Error(
        value.code === "#N/A" ? CustomFunctions.ErrorCode.notAvailable : CustomFunctions.ErrorCode.invalidValue,
        value.message,
      )
    : value;

for (const definition of functions) {
  CustomFunctions.associate(definition.name, (...cells: unknown[]) => {
    const answer = call(definition, cells);
    if (Array.isArray(answer)) return answer.map((row) => row.map(forExcel));
    return SINGLE_AS_BLOCK ? [[forExcel(answer)]] : forExcel(answer);
  });
}
