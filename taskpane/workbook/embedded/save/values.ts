/** Values of the grid and of the file, compared and turned into one another. */
import { CellError } from "../../../../src/worksheet/error";
import type { CellValue } from "../../package";
import type { Value } from "../../port";

export const fileValue = (value: Value): CellValue => (value instanceof CellError ? { error: value.code } : value);

const isError = (value: CellValue): value is { readonly error: string } => typeof value === "object" && value !== null;

export const isFault = (value: CellValue): boolean => isError(value);

/** The last digits of a result may differ between two programs that both calculate rightly. */
const SAME_DIGITS = 1e-13;

export function sameValue(one: CellValue, other: CellValue): boolean {
  if (one === other) return true;
  if (typeof one === "number" && typeof other === "number") {
    return Math.abs(one - other) <= SAME_DIGITS * Math.max(Math.abs(one), Math.abs(other));
  }
  return isError(one) && isError(other) && one.error === other.error;
}

/** A formula that gives nothing gives "" in one program and an empty result in another. */
export const sameResult = (one: CellValue, other: CellValue): boolean =>
  sameValue(one === "" ? null : one, other === "" ? null : other);
