/** Sums, roundings, the largest and the least. */
import { DIV0, isError, toNumber, type Value } from "../values";
import { fromGiven, fromNumbers, type Given } from "./rule";

/** In cells only numbers count; written out, what can be read as one. */
function numbersIn(given: readonly Given[]): readonly number[] | Value {
  const numbers: number[] = [];
  for (const { value, isInCell } of given) {
    if (isError(value)) return value;
    if (isInCell) {
      if (typeof value === "number") numbers.push(value);
      continue;
    }
    const number = toNumber(value);
    if (isError(number)) return number;
    numbers.push(number);
  }
  return numbers;
}

const ofNumbers = (work: (numbers: readonly number[]) => number) =>
  fromGiven(1, (given) => {
    const numbers = numbersIn(given);
    return Array.isArray(numbers) ? work(numbers as readonly number[]) : (numbers as Value);
  });

const largest = (numbers: readonly number[]): number => numbers.reduce((one, other) => Math.max(one, other));
const least = (numbers: readonly number[]): number => numbers.reduce((one, other) => Math.min(one, other));

/** Halves go away from 0; in decimal digits, of which Excel keeps 15 (1.005 at 2 digits is 1.01). */
function rounded(value: number, digits: number): number {
  const places = Math.trunc(digits);
  const scaled = Number((Math.abs(value) * 10 ** places).toPrecision(15));
  return Number.isFinite(scaled) ? (Math.sign(value) * Math.round(scaled)) / 10 ** places : value;
}

export const numbers = {
  ABS: fromNumbers(1, 1, Math.abs),
  INT: fromNumbers(1, 1, Math.floor),
  /** With the sign of the divisor. */
  MOD: fromNumbers(2, 2, (number, divisor) =>
    divisor === 0 ? DIV0 : number! - divisor! * Math.floor(number! / divisor!),
  ),
  ROUND: fromNumbers(2, 2, rounded),
  MAX: ofNumbers((all) => (all.length === 0 ? 0 : largest(all))),
  MIN: ofNumbers((all) => (all.length === 0 ? 0 : least(all))),
  SUM: ofNumbers((all) => all.reduce((sum, one) => sum + one, 0)),
  COUNT: fromGiven(1, (given) => {
    const isCounted = ({ value, isInCell }: Given) =>
      isInCell ? typeof value === "number" : !isError(value) && !isError(toNumber(value));
    return given.filter(isCounted).length;
  }),
  COUNTA: fromGiven(1, (given) => given.filter(({ value, isInCell }) => !isInCell || value !== null).length),
};
