/** Cells of a caseload as people typed them: what cannot be read is told apart from what is blank, and never guessed. */
import { access, type Access } from "../../../src/device/access";
import { held, type Held } from "../../../src/device/retention-words";
import { readFrench } from "../../../src/sizes/french";
import { readDate } from "../../../src/worksheet/dates";
import { CellError, SheetError } from "../../../src/worksheet/error";
import { numberOfText } from "../../../src/worksheet/numbers";
import type { Value } from "../../workbook/port";

/** A cell that holds something that is not what its column is for. */
export interface Unreadable {
  readonly unreadable: string;
}

export type Read<T> = T | null | Unreadable;

export const isUnreadable = (read: unknown): read is Unreadable =>
  typeof read === "object" && read !== null && "unreadable" in read;

/** What was read, or null for a blank and for what cannot be read. */
export const known = <T>(read: Read<T>): T | null => (isUnreadable(read) ? null : read);

/** As a person would see it; inner white space squeezed. */
export const textOf = (value: Value): string =>
  value instanceof CellError ? value.code : value === null ? "" : String(value).replace(/\s+/gu, " ").trim();

/** One of a list's words, letter case and white space aside; "" for a blank or another word. */
export const wordOf = <W extends string>(value: Value, words: readonly W[]): W | "" => {
  const text = textOf(value).toLowerCase();
  return words.find((word) => word.toLowerCase() === text) ?? "";
};

/** A whole day; the number 0 is a blank, as in worksheet functions. */
export function dateOf(value: Value): Read<number> {
  if (textOf(value) === "") return null;
  if (value instanceof CellError) return { unreadable: value.code };
  const read = readDate(value as string | number | boolean);
  return read instanceof SheetError ? { unreadable: textOf(value) } : read;
}

/** A number within limits; 0 counts as one where it is allowed. */
export function numberOf(value: Value, least: number, most: number, units: readonly string[] = []): Read<number> {
  const text = textOf(value);
  if (text === "") return null;
  const read = typeof value === "number" ? value : typeof value === "string" ? numberOfText(value, units) : null;
  return typeof read === "number" && read >= least && read <= most ? read : { unreadable: text };
}

/** A French size by the rules of FRTOMM. */
export function frenchOf(value: Value): Read<number> {
  if (textOf(value) === "") return null;
  if (value instanceof CellError) return { unreadable: value.code };
  const read = readFrench(value as string | number | boolean);
  return read instanceof SheetError ? { unreadable: textOf(value) } : read;
}

const accessParam = access();
const heldParam = held();

/** By the rule of the worksheet functions: whatever else stands there is not known. */
export const accessOf = (value: Value): Access =>
  typeof value === "string" ? (accessParam.read(value) as Access) : "not known";

export const heldOf = (value: Value): Held =>
  typeof value === "string" ? (heldParam.read(value) as Held) : "not known";
