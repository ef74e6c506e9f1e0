/**
 * A planned change carried out to an end that can be said. It never throws and never leaves a press waiting: what a host or
 * our own words for it fail at becomes a sentence, and where it is not known what was done nothing says that it was.
 */
import { pane as paneTexts } from "../texts/pane";
import type { Change, Receipt, Progress, Workbook } from "../workbook/port";
import type { Afterwards } from "./action";

export interface CarriedOut {
  readonly receipt: Receipt;
  readonly words: Afterwards;
}

export async function carryOut(
  workbook: Pick<Workbook, "apply">,
  change: Change,
  watch: Progress,
  afterwards: (receipt: Receipt) => Afterwards,
): Promise<CarriedOut> {
  const receipt = await receiptOf(workbook, change, watch);
  try {
    return { receipt, words: afterwards(receipt) };
  } catch (error) {
    return { receipt, words: withoutWords(receipt, error) };
  }
}

async function receiptOf(workbook: Pick<Workbook, "apply">, change: Change, watch: Progress): Promise<Receipt> {
  try {
    return await workbook.apply(change, watch);
  } catch (error) {
    return { outcome: "stopped", sentence: paneTexts.unexpected(String(error)), done: [] };
  }
}

/** What the host says of it stands; that it went well is not claimed, and what was done can be taken back. */
const withoutWords = ({ outcome, sentence, done }: Receipt, error: unknown): Afterwards => ({
  outcome: outcome === "refused" ? "refused" : "stopped",
  sentences: [...(outcome === "done" ? [] : [sentence]), paneTexts.notToldAfterwards(String(error))],
  where: null,
  canTakeBack: done.length > 0,
});
