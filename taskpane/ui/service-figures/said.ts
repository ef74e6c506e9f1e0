/** What the board says in words: its period, its sentence, each count as it may be shown. */
import type { Board, BoardFigures, BoardLength, Told } from "../../../src/service/board";
import type { Period } from "../../../src/pictures/months";
import { serviceFigures as words } from "../../texts/service-figures";
import { longMonth, monthText, yearText } from "../parts/dates";

export const periodText = ({ from, end }: Period, length: BoardLength, locale: string): string =>
  length === "year"
    ? words.year(yearText(from, locale))
    : words.quarter(longMonth(from, locale), monthText(end - 1, locale));

export const toldText = ({ shown, value }: Told, least: number): string =>
  value !== null ? words.value(value) : shown === "under" ? words.under(least) : words.heldBack;

export const rateText = ({ rate, tubeDays }: BoardFigures): string =>
  rate ? words.rate(rate.value, rate.low, rate.high) : tubeDays === 0 ? words.noBefore : words.heldBack;

/** The rate, and whether it differs from before by more than chance may make. */
export function boardSentences({ now, ratio, length }: Board, least: number, locale: string): readonly string[] {
  const period = periodText(now, length, locale);
  if (!now.rate || now.unplanned.value === null) return [words.tooFew(period, least)];
  const { value, low, high } = now.rate;
  const first = words.sentence(period, now.unplanned.value, value, low, high);
  if (!ratio) return [first, words.noComparison];
  const says = ratio.low > 1 ? words.higher : ratio.high < 1 ? words.lower : words.alike;
  return [first, says(ratio.ratio, ratio.low, ratio.high)];
}
