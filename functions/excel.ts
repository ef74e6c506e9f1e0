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
const SINGLE_AS_BLOCK = false;

/**
 * Some builds of Excel lose a whole spill to one error in it (office-js issue 2174). Where that is so, the build with
 * `--env errorsAsText` puts the code and the sentence there as a text; `call` still takes that for an error. An error
 * that stands alone stays one. Off by default: a text is no error to IFERROR or COUNT.
 */
declare const ERRORS_AS_TEXT: boolean | undefined;
const hasTextsForErrors = typeof ERRORS_AS_TEXT !== "undefined" && ERRORS_AS_TEXT;

/** Excel shows a sentence for #VALUE! and #N/A only, so these are the two that leave. */
const errorForExcel = ({ code, message }: SheetError) =>
  new CustomFunctions.Error(
    code === "#N/A" ? CustomFunctions.ErrorCode.notAvailable : CustomFunctions.ErrorCode.invalidValue,
    message,
  );

const inSpill = (error: SheetError): unknown =>
  hasTextsForErrors ? `${error.code} ${error.message}` : errorForExcel(error);

for (const definition of functions) {
  CustomFunctions.associate(definition.name, (...cells: unknown[]) => {
    const answer = call(definition, cells, inSpill);
    if (Array.isArray(answer)) return answer;
    if (SINGLE_AS_BLOCK) return [[answer instanceof SheetError ? errorForExcel(answer) : answer]];
    /* Microsoft's documents throw an error that stands alone and return one inside a block; a returned one goes over
       the wire in the shape of newer data types, which Excel 2021 does not have. */
    if (answer instanceof SheetError) throw errorForExcel(answer);
    return answer;
  });
}
