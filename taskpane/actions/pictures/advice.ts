/** A person's own past in words, beside the interval that was agreed for them. */
import type { IntervalAdvice } from "../../../src/pictures/advice";
import { intervalAdvice as words } from "../../texts/interval-advice";

/**
 * @param agreed days; null where none is agreed
 * @param kind as the list says it
 */
export function adviceSentences(advice: IntervalAdvice, agreed: number | null, kind: string): readonly string[] {
  if (advice.is === "too few") return [words.tooFew(advice.failures, advice.devices)];
  const compared = agreed === null ? words.noneAgreed : advice.isEarlier ? words.earlier(agreed) : words.notEarlier;
  if (advice.is === "clinic") {
    const few = words.fewOwn(advice.failures, advice.devices);
    return advice.isEarlier ? [few, words.ofTheClinic(kind, advice.day), words.agreedIs(agreed!)] : [few, compared];
  }
  const failed = words.failedBy(advice.failures, advice.devices, advice.failedBy);
  /* A day later than the agreed one is not said: it could be taken for leave to wait. */
  return [advice.isEarlier ? `${failed}; ${words.oneInTen(advice.day.value)}.` : `${failed}.`, compared];
}
