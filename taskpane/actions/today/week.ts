/** The week on paper: who is called now, whose day comes, what is to be arranged, what is to be asked. Nobody is left out in silence. */
import type { UrgencyClass } from "../../../src/caseload/urgency";
import type { Value } from "../../workbook/port";
import type { Day, TodayRow } from "./index";

const WEEK = 7;

export interface WeekRow extends TodayRow {
  /** The day of the change as booked, else as due; null where there is none. */
  readonly day: number | null;
  readonly isBooked: boolean;
}

export interface Week {
  readonly from: number;
  readonly until: number;
  /** Call now. */
  readonly act: readonly WeekRow[];
  /** Due or booked in these seven days, or past; also where the word asks for nothing yet. */
  readonly due: readonly WeekRow[];
  /** Asks for something soon, but for no day in this week. */
  readonly arrange: readonly WeekRow[];
  /** Something is missing or contradictory: nothing can be ruled out. */
  readonly ask: readonly WeekRow[];
}

const dayOf = (value: Value): number | null => (typeof value === "number" && value > 0 ? Math.floor(value) : null);

/** @param today as a day number: the first of the seven days */
export function weekOf({ rows }: Day, today: number): Week {
  const until = today + WEEK - 1;
  const all = rows.map((row): WeekRow => {
    const booked = dayOf(row.bookedFor);
    return { ...row, day: booked ?? dayOf(row.due), isBooked: booked !== null };
  });
  const asks = (...wanted: readonly UrgencyClass[]) => all.filter((row) => wanted.includes(row.asks));
  const isThisWeek = ({ day }: WeekRow) => day !== null && day <= until;
  return {
    from: today,
    until,
    act: asks("act"),
    due: asks("soon", "arranged", "quiet").filter(isThisWeek),
    arrange: asks("soon").filter((row) => !isThisWeek(row)),
    ask: asks("missing"),
  };
}
