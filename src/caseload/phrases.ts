/**
 * Phrases of formulas that stand in many columns, as Excel shows them. No phrase passes an error on: a cell in error is
 * neither blank nor a number nor a known word. A text is larger than any number, in Excel as in LibreOffice, so `text<5`
 * is FALSE and needs no question before it.
 *
 * The grid's engine (Univer 0.25.1), a witness beside the reader, differs from Excel in a few places, so that formulas are
 * written as all of them agree: a blank text is 0 there (ISNUMBER first, or LEN; T around a cell whose blank text is passed
 * on), a minus before a name is #NAME? (`0-Over_Read`), a text is found among numbers (N, below), and MAXIFS without a
 * number is none (N around it). tests/hosts/caseload holds them together.
 */
import type { AllShown, Shown } from "./shown";

/** TRUE where nothing was entered; spaces are nothing. */
export const isBlank = <const Text extends string>(cell: Shown<Text>): string => `IFERROR(LEN(TRIM(${cell})),1)=0`;

/** A word without letter case and outer spaces; an error is no word. */
export const wordOf = <const Text extends string>(cell: Shown<Text>): string => `IFERROR(LOWER(TRIM(${cell})),"?")`;

/** FIND and not MATCH, because MATCH takes ? and * as wildcards, and `?` is what people type for what they do not know. */
export const isOneOf = <const Text extends string>(text: Shown<Text>, words: readonly string[]): string =>
  `ISNUMBER(FIND("|"&${text}&"|","|${words.join("|")}|"))`;

/** A word of the list in small letters; for all else, a blank too, the other word. */
export const knownWord = <const Text extends string>(
  cell: Shown<Text>,
  words: readonly string[],
  other = "not known",
): string => `IF(${isOneOf(wordOf<string>(cell), words)},LOWER(TRIM(${cell})),"${other}")`;

/** A day that can be, in one of the pairs of days on the settings sheet (settings-sheet.ts): from the first, before the second. */
const isBetween = (cell: string, days: "Days_Past" | "Days_Ahead" | "Days_Born"): string =>
  `IFERROR(MATCH(N(${cell}),${days},1),0)=1`;
/** Not after today and not absurdly long ago. */
export const isPast = <const Text extends string>(cell: Shown<Text>): string => isBetween(cell, "Days_Past");
/** May lie ahead, but not beyond belief: a booking, an expiry, a date that somebody has set. */
export const isAhead = <const Text extends string>(cell: Shown<Text>): string => isBetween(cell, "Days_Ahead");
export const isBirth = <const Text extends string>(cell: Shown<Text>): string => isBetween(cell, "Days_Born");

/** The day, or why there is none. */
export const dayOf = <const Text extends string>(cell: Shown<Text>): string =>
  `IF(${isPast<string>(cell)},INT(${cell}),IF(${isBlank<string>(cell)},"no date","check date"))`;

/**
 * So many whole months later, at most the month's last day. EOMONTH beside EDATE, because the grid's engine (Univer 0.25.1)
 * turns 31 August and six months into 3 March.
 */
export const monthsAfter = <const Day extends string, const Months extends string>(
  day: Shown<Day>,
  months: Shown<Months>,
): string => `MIN(EDATE(${day},${months}),EOMONTH(${day},${months}))`;

/** An identifier that no criterion reads as a number, a date or a wildcard. */
export const identityOf = <const Text extends string>(cell: Shown<Text>): string =>
  `SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(${wordOf<string>(cell)},"*","·"),"?","·"),"~","·")`;

/** A result for rows that count today only (tubes/live.ts). */
export const ifLive = <const Text extends string>(text: Shown<Text>): string => `IF([@Live]="live",${text},"")`;

/** Sentences one after the other. */
export const joined = <const Parts extends readonly string[]>(...parts: AllShown<Parts>): string =>
  `TEXTJOIN("; ",TRUE,${parts.join(",")})`;
export const sentence = <const Text extends string>(when: Shown<Text>, says: string): string =>
  `IF(${when},"${says}","")`;
