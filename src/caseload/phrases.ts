/**
 * Phrases of formulas that stand in many columns, as Excel shows them. No phrase passes an error on: a cell in error is
 * neither blank nor a number nor a known word. A text is larger than any number, in Excel as in LibreOffice, so `text<5`
 * is FALSE and needs no question before it.
 */

/** TRUE where nothing was entered; spaces are nothing. */
export const isBlank = (cell: string): string => `IFERROR(LEN(TRIM(${cell})),1)=0`;

/** A word without letter case and outer spaces; an error is no word. */
export const wordOf = (cell: string): string => `IFERROR(LOWER(TRIM(${cell})),"?")`;

/** FIND and not MATCH, because MATCH takes ? and * as wildcards, and `?` is what people type for what they do not know. */
export const isOneOf = (text: string, words: readonly string[]): string =>
  `ISNUMBER(FIND("|"&${text}&"|","|${words.join("|")}|"))`;

/** A word of the list in small letters; for all else, a blank too, the other word. */
export const knownWord = (cell: string, words: readonly string[], other = "not known"): string =>
  `IF(${isOneOf(wordOf(cell), words)},LOWER(TRIM(${cell})),"${other}")`;

/** A day that can be, in one of the pairs of days on the settings sheet (settings-sheet.ts): from the first, before the second. */
const isBetween = (cell: string, days: "Days_Past" | "Days_Ahead" | "Days_Born"): string =>
  `IFERROR(MATCH(${cell},${days},1),0)=1`;
/** Not after today and not absurdly long ago. */
export const isPast = (cell: string): string => isBetween(cell, "Days_Past");
/** May lie ahead, but not beyond belief: a booking, an expiry, a date that somebody has set. */
export const isAhead = (cell: string): string => isBetween(cell, "Days_Ahead");
export const isBirth = (cell: string): string => isBetween(cell, "Days_Born");

/** The day, or why there is none. */
export const dayOf = (cell: string): string =>
  `IF(${isPast(cell)},INT(${cell}),IF(${isBlank(cell)},"no date","check date"))`;

/**
 * So many whole months later, at most the month's last day. EOMONTH beside EDATE, because the grid's engine (Univer 0.25.1)
 * turns 31 August and six months into 3 March.
 */
export const monthsAfter = (day: string, months: string): string =>
  `MIN(EDATE(${day},${months}),EOMONTH(${day},${months}))`;

/** An identifier that no criterion reads as a number, a date or a wildcard. */
export const identityOf = (cell: string): string =>
  `SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(${wordOf(cell)},"*","·"),"?","·"),"~","·")`;

/** A result for rows that count today only (tubes/live.ts). */
export const ifLive = (text: string): string => `IF([@Live]="live",${text},"")`;

/** Sentences one after the other. */
export const joined = (...parts: readonly string[]): string => `TEXTJOIN("; ",TRUE,${parts.join(",")})`;
export const sentence = (when: string, says: string): string => `IF(${when},"${says}","")`;
