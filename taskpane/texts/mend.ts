import { count, figure, FROM_1904, inQuotes, notEmptyBeside } from "./pieces";

/** What is said of a column's cells. */
interface Counts {
  readonly of: number;
  readonly changed: number;
  readonly waiting: number;
  readonly good: number;
  readonly blank: number;
  readonly unread: readonly { readonly cells: readonly unknown[] }[];
}

interface Columns {
  readonly put: "beside" | "in place";
  /** The column that is mended. */
  readonly from: string;
  /** The new one. */
  readonly header: string;
}

/** "waits" of one, "wait" of more. */
const verb = (n: number, one: string, many: string): string => (n === 1 ? one : many);

const notRead = ({ unread }: Counts): number => unread.reduce((sum, { cells }) => sum + cells.length, 0);

const figures = (counts: Counts): string => {
  const { of, changed, waiting, good, blank } = counts;
  const other = notRead(counts);
  return [
    `${figure(changed)} of ${count(of, "cell")} mended`,
    ...(waiting > 0 ? [`${figure(waiting)} ${verb(waiting, "waits", "wait")} for your answer`] : []),
    ...(other > waiting ? [`${figure(other)} not read`] : []),
    ...(good > 0 ? [`${figure(good)} good as ${verb(good, "it stands", "they stand")}`] : []),
    ...(blank > 0 ? [`${figure(blank)} blank`] : []),
  ].join("; ");
};

export const mend = {
  column: {
    title: "What to mend",
    column: "Column",
    choose: "Choose a column",
    option: (letters: string, header: string, open: number) =>
      `${letters}: ${header === "" ? "(no header)" : header}${open > 0 ? ` (${figure(open)} to mend)` : ""}`,
    as: "What stands in it",
    ways: { dates: "Dates", sizes: "Sizes in French", kinds: "Kinds of tube" },
    none: "No column of this list holds dates, sizes or kinds that need mending. You can choose one all the same.",
  },
  dates: {
    title: "The dates",
    becomes: (example: string, day: string, cells: number) =>
      cells === 1
        ? `${inQuotes(example)} becomes ${day}.`
        : `${inQuotes(example)} and ${figure(cells - 1)} more written so; the first becomes ${day}.`,
    waits: (example: string, cells: number) =>
      cells === 1
        ? `${inQuotes(example)} waits for your answer.`
        : `${inQuotes(example)} and ${figure(cells - 1)} more written so wait for your answer.`,
    order: (example: string, cells: number) =>
      `${inQuotes(example)}${cells > 1 ? ` and ${figure(cells - 1)} more` : ""}: which comes first?`,
    dayFirst: (day: string | null) => (day === null ? "The day" : `The day: ${day}`),
    monthFirst: (day: string | null) => (day === null ? "The month" : `The month: ${day}`),
    leave: "Leave them as they are",
    proof: ({
      dayFirst,
      monthFirst,
      points,
    }: {
      readonly dayFirst: number;
      readonly monthFirst: number;
      readonly points: number;
    }) => {
      const shown = [
        ...(dayFirst > 0 ? [`${count(dayFirst, "cell")} can only be read with the day first`] : []),
        ...(monthFirst > 0 ? [`${count(monthFirst, "cell")} can only be read with the month first`] : []),
        ...(points > 0
          ? [
              `${count(points, "cell")} ${verb(points, "has", "have")} points between, as countries write that put the day first`,
            ]
          : []),
      ];
      if (shown.length === 0) return "No other cell of this column shows which. Ask who typed them.";
      const both =
        dayFirst > 0 && monthFirst > 0
          ? " Both orders occur here: one answer for all of them may be wrong. Ask who typed them."
          : "";
      return `In this column ${shown.join("; ")}.${both}`;
    },
    century: (example: string, cells: number) =>
      `${inQuotes(example)}${cells > 1 ? ` and ${figure(cells - 1)} more` : ""}: which century?`,
    centuries: {
      "2000s": "20..: 24 is 2024",
      "up to today": "The last such day up to today: 24 is 2024, 75 is 1975 (for birthdays)",
    },
    years: (earliest: number, latest: number) => `The other dates of this column lie from ${earliest} to ${latest}.`,
    noYears: "No other date of this column says its year in full.",
    exchanged: (n: number) =>
      `${count(n, "real date")} may have day and month exchanged. All real dates of this column fall on the 1st to the 12th, and its texts know one order only: a program set to the other order makes exactly that. Compare with the record.`,
    putRight: (n: number) => `I have compared them: exchange day and month in ${n === 1 ? "it" : `these ${figure(n)}`}`,
  },
  sizes: {
    title: "The sizes",
    unread: (n: number) =>
      `${count(n, "wording is", "wordings are")} not read. Say once what each is; those left blank stay as they are.`,
    cells: (n: number) => count(n, "cell"),
    write: (text: string) => `${inQuotes(text)} is (Fr)`,
    hint: (french: string) => `As a diameter in mm it would be about ${french} Fr: read the tube or its label.`,
    becomes: (french: string, mm: string) => `${french} Fr, ${mm} mm`,
    read: (n: number) => `${count(n, "wording")} read`,
    readAs: (text: string, french: string, cells: number) => `${inQuotes(text)}: ${french} Fr, ${count(cells, "cell")}`,
  },
  kinds: {
    title: "The kinds",
    lead: "Each word once. Words without a kind stay as they are.",
  },
  put: {
    title: "Where it goes",
    beside: (header: string) => `A new column, ${inQuotes(header)}`,
    besideNote: "Your own column stays as it is. ‘Add columns’ reads the mended one.",
    inPlace: "Into the cells themselves",
    inPlaceNote: (header: string) => `What stood there goes into a new column, ${inQuotes(header)}.`,
  },
  unread: (n: number) => `Not read: ${figure(n)}`,
  unreadLead: "Put these right in the sheet. They stay as they are.",
  doubts: (n: number) => `To look at: ${figure(n)}`,
  press: (n: number) => `Mend ${count(n, "cell")}`,
  plan: {
    chooseColumn: "Say which column is to be mended, and what stands in it.",
    from1904: FROM_1904,
    noRoom: (way: string) =>
      way === ""
        ? "There is no room right of the list, up to the sheet's last column. Move the list to the left first."
        : notEmptyBeside(way),
    unnamed: (letters: string) => `Column ${letters}`,
    nothing: (counts: Counts) =>
      counts.waiting > 0
        ? "Nothing is mended yet: answer what is asked above."
        : notRead(counts) > 0
          ? "Nothing here can be mended by wording: put the cells listed above right in the sheet."
          : "Every cell holds what it should. There is nothing to mend.",
    says: (
      counts: Counts,
      { put, from, header, letters }: Columns & { readonly letters: string },
    ): readonly string[] => [
      `${figures(counts)}.`,
      put === "beside"
        ? `Adds the column ${inQuotes(header)} (column ${letters}); what was not mended goes along as it stands. Nothing is overwritten.`
        : `Changes ${count(counts.changed, "cell")} of ${inQuotes(from)}; what stood there goes into the new column ${inQuotes(header)} (column ${letters}).`,
    ],
  },
  after: {
    still: (cells: string) => `Still there: ${cells}.`,
    nothing: "Nothing was changed.",
    done: (counts: Counts, { put, from, header }: Columns): readonly string[] => [
      `${figures(counts)}.`,
      put === "beside"
        ? `The column ${inQuotes(header)} stands at the right end of the list.`
        : `${inQuotes(from)} is mended; what stood there is in ${inQuotes(header)}.`,
    ],
  },
  working: "Mending",
  result: {
    title: { done: "Mended", refused: "Nothing was mended", stopped: "Mending was stopped" },
    again: "Mend another column",
  },
};
