/**
 * Nothing that stands in a cell asks for anything outside the page. The grid (0.25.1) has one function that would: IMAGE
 * asks for its address as soon as it is worked out, also in a file that is only opened. It is no function here: a file's
 * stored value is shown, and the formula stays in the file. tests/browser/grid-alone.test.ts listens for requests.
 */
import { IFunctionService } from "@univerjs/engine-formula";
import { IDescriptionService } from "@univerjs/sheets-formula";
import type { Engine } from "../engine";

const FETCHING = ["IMAGE"];

/** Once the engine's services stand: they come with its first workbook. */
export function leaveFetchingOut({ injector }: Engine): void {
  injector.get(IFunctionService).unregisterExecutors(...FETCHING);
  injector.get(IDescriptionService).unregisterDescriptions(FETCHING);
}
