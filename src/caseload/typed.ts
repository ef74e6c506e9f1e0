/** Columns that people fill in: texts, dates, numbers, and words to choose from. */
import type { Header } from "./headers";
import type { formula } from "../columns/formula";
import type { Validation } from "./book";
import { DATE, TEXT, type CaseloadColumn, type Slots } from "./column";

type Place = Pick<CaseloadColumn, "group" | "onlyWith" | "rules">;

const LONGEST_TEXT = 999;

/** A text stays as it was typed: "007", "03-04", "1E5". */
export const text = (header: Header, width: number, hint: string, place: Place = {}): CaseloadColumn => ({
  ...place,
  header,
  kind: "typed",
  format: TEXT,
  width,
  validation: () => ({
    kind: "length",
    most: LONGEST_TEXT,
    title: header,
    sentence: "That is a very long text. Keep it?",
    severity: "ask",
    hint,
  }),
});

interface DateRules {
  /** A day that may lie ahead: a booking, an expiry. */
  readonly mayBeAhead?: boolean;
  readonly format?: string;
}

export const date = (header: Header, hint: string, place: Place = {}, rules: DateRules = {}): CaseloadColumn => ({
  ...place,
  header,
  kind: "typed",
  format: DATE,
  width: 12,
  validation: (): Validation => {
    return {
      kind: "date",
      from: "Day_Birth",
      until: rules.mayBeAhead ? "Day_Farthest" : "As_of",
      title: header,
      sentence: rules.mayBeAhead
        ? "Give a date, such as 2026-05-14. It may lie ahead, but not years too far."
        : "Give a date, such as 2026-05-14, not after today.",
      severity: "stop",
      hint,
    };
  },
});

export const number = (
  header: Header,
  [least, most]: readonly [number, number],
  hint: string,
  place: Place = {},
  { format = "0.0", width = 8, isWhole = false }: { format?: string; width?: number; isWhole?: boolean } = {},
): CaseloadColumn => ({
  ...place,
  header,
  kind: "typed",
  format,
  width,
  validation: () => ({
    kind: "number",
    least,
    most,
    ...(isWhole && { isWhole }),
    title: header,
    sentence: `${isWhole ? "A whole number" : "A number"} from ${least} to ${most} is usual. Keep this entry?`,
    severity: "ask",
    hint,
  }),
});

/** Excel shows so many characters of a sentence; the list itself shows every word. */
const LONGEST_SENTENCE = 225;
const fitting = (sentence: string, short: string): string => (sentence.length <= LONGEST_SENTENCE ? sentence : short);

export const list = (
  header: Header,
  words: readonly string[],
  width: number,
  hint: string,
  place: Place = {},
  severity: Validation["severity"] = "stop",
): CaseloadColumn => ({
  ...place,
  header,
  kind: "list",
  format: TEXT,
  width,
  validation: () => ({
    kind: "list",
    words,
    title: header,
    sentence:
      severity === "stop"
        ? fitting(`Choose one of: ${words.join("; ")}.`, "Choose one from the list.")
        : `Usual are: ${words.join("; ")}. Keep this entry?`,
    severity,
    hint,
  }),
});

export const FOR_YOU_ONLY = "For you only: no rule reads it.";

/** A column that nothing else reads says so, so that nobody waits for a word that stands on it. */
export const forYouOnly = (column: CaseloadColumn): CaseloadColumn => ({
  ...column,
  isForYouOnly: true,
  validation: (cell) => {
    const validation = column.validation!(cell);
    return { ...validation, hint: [validation.hint, FOR_YOU_ONLY].filter(Boolean).join(" ") };
  },
});

/** Grey where a cell does not apply. */
export const greyWhen =
  (test: (cell: Slots) => ReturnType<typeof formula>): NonNullable<CaseloadColumn["rules"]> =>
  (cell) => [{ look: "grey", formula: test(cell) }];
