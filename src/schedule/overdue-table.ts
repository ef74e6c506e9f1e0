/** How many devices are overdue, due, or have no date, counted by what their rows say. Whatever is not known counts as no date. */

export const standings = ["overdue", "due soon", "no date", "later"] as const;
export type Standing = (typeof standings)[number];

const OF_WORDS: Readonly<Record<string, Standing>> = {
  "past limit": "overdue",
  overdue: "overdue",
  "due soon": "due soon",
  later: "later",
  /* Nobody plans a routine change of such a device: nothing is missing. */
  "no set change": "later",
};

/** @param word of a column *Change*; another one, a blank and an error have no date that could be used */
export const standingOf = (word: string): Standing => OF_WORDS[word.trim().toLowerCase()] ?? "no date";

/** @param due as a day number; null where there is none that can be used */
export const standingOn = (due: number | null, asOf: number, soonDays: number): Standing =>
  due === null ? "no date" : due < asOf ? "overdue" : due <= asOf + soonDays ? "due soon" : "later";

export interface StandingCounts {
  readonly by: string;
  readonly counts: Readonly<Record<Standing, number>>;
  readonly all: number;
}

/** One line for each word, those with the most overdue first. */
export function overdueTable(
  rows: readonly { readonly by: string; readonly standing: Standing }[],
): readonly StandingCounts[] {
  const words = [...new Set(rows.map(({ by }) => by))];
  const lines = words.map((by): StandingCounts => {
    const own = rows.filter((row) => row.by === by);
    const of = (standing: Standing): number => own.filter((row) => row.standing === standing).length;
    return {
      by,
      counts: { overdue: of("overdue"), "due soon": of("due soon"), "no date": of("no date"), later: of("later") },
      all: own.length,
    };
  });
  return lines.sort((a, b) => b.counts.overdue - a.counts.overdue || b.all - a.all || (a.by < b.by ? -1 : 1));
}
