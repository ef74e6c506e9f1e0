/**
 * The worksheet functions for programs, with named arguments (docs/library.md).
 * Written by `npm run generate` from the functions' own files in src/.
 */
import { named, type Cells, type Day, type DayNumber, type NamedFunction } from "../library/named";

export { functions } from "../../src/index";
export { call, type Answer } from "../../src/worksheet/call";
export type { Cell, Matrix } from "../../src/worksheet/cell";
export { dayOfText, isoText } from "../../src/worksheet/dates";
export type { Documentation, Example, Param, ResultInfo, SheetFunction } from "../../src/worksheet/define";
export { SheetError, type ErrorCode } from "../../src/worksheet/error";
export type { Cells, Day, DayNumber, NamedFunction };

/** Arguments of `frToMm`. */
export interface FrToMmArguments {
  /** Size as a number of French, or as written: 14 Fr, CH14, FG 14, 14,0 (Fr; above 0, at most 60). */
  readonly size: number | string | null;
}

/**
 * Outside diameter in millimetres of a tube whose size is given in French (Charrière).
 *
 * - Read the size on the tube or its label; this only turns the number into millimetres.
 * - A leak is not cured by a larger tube.
 *
 * @returns Outside diameter; mm; null when size is blank; or a SheetError with its sentence.
 */
export const frToMm: NamedFunction<FrToMmArguments, number | null> = named("FRTOMM");

/** Arguments of `mmToFr`. */
export interface MmToFrArguments {
  /** Outside diameter (mm; above 0, at most 20). */
  readonly diameter: number | string | null;
}

/**
 * French (Charrière) size of a tube whose outside diameter is given in millimetres.
 *
 * - A measured diameter cannot tell neighbouring sizes apart: read the size on the tube or its label.
 * - Order by the printed size, never by this figure alone.
 *
 * @returns French size, not rounded; Fr; null when diameter is blank; or a SheetError with its sentence.
 */
export const mmToFr: NamedFunction<MmToFrArguments, number | null> = named("MMTOFR");

/** Arguments of `readPrint`. */
export interface ReadPrintArguments {
  /** What is printed, as it stands there: 14 Fr x 2.3 cm, 5 mL. */
  readonly text: number | string | boolean | null;
  /** Which number (left out: three cells: Fr, cm, mL). */
  readonly part?: "Fr" | "mm" | "cm" | "mL" | null;
}

/**
 * Size, length and balloon volume out of what is printed on a tube or its box.
 *
 * - Never tell the volume from the size: one size, 14 Fr, is filled with 3 to 10 mL depending on its design.
 * - A printed range is for the service to decide: enter the volume agreed for this person, never above the label.
 *
 * @returns The number printed with that unit; what is not printed stays blank; Fr, cm, mL; null when text is blank; or a SheetError with its sentence.
 */
export const readPrint: NamedFunction<ReadPrintArguments, readonly [fr: number | null, cm: number | null, mL: number | null] | number | null> = named("READPRINT");

/** Arguments of `stockSize`. */
export interface StockSizeArguments {
  /** Size of the tube, as in FRTOMM (Fr; above 0, at most 60). */
  readonly size: number | string | null;
  /** Sizes in stock (Fr). */
  readonly stocked: Cells<number | string | null>;
  /** Which size to take (left out: same or smaller). */
  readonly pick?: "same or smaller" | "same or larger" | "nearest" | "next smaller" | null;
  /** A size farther away than this is not offered (Fr; at least 0; left out: 4). */
  readonly most?: number | string | null;
}

/**
 * The size in stock that comes nearest to a tube's size.
 *
 * - The same size first. A smaller tube only holds the opening and is not for feeding until its position is confirmed.
 * - Never a larger one for a leak: it does not cure it.
 * - How it is held, its length and the placing team's word decide as well; a size alone is not a replacement.
 *
 * @returns A size in stock; Fr; null when size is blank; or a SheetError with its sentence.
 */
export const stockSize: NamedFunction<StockSizeArguments, number | null> = named("STOCKSIZE");

/** Arguments of `retention`. */
export interface RetentionArguments {
  /** Is there a valve marked for the balloon, that takes a Luer-slip syringe and no feeding syringe? yes or no. */
  readonly balloonport: number | string | boolean | null;
  /** What else is seen or written: stitched, loop, winged, a second head (left out: ). */
  readonly marks?: number | string | boolean | null;
}

/**
 * How a tube is held inside, told from what can be seen outside: balloon, bumper or ask placing team.
 *
 * - What can be seen may not show how it is held: if in doubt, ask the placing team. Do not pull to find out.
 * - Never feed or medicine into the balloon valve.
 * - Loops, winged and stitched tubes have no balloon valve either: write what is seen into marks.
 *
 * @returns balloon, bumper or ask placing team; "ask placing team" when balloonport is blank; or a SheetError with its sentence.
 */
export const retention: NamedFunction<RetentionArguments, string> = named("RETENTION");

/** Arguments of `removal`. */
export interface RemovalArguments {
  /** How it is held inside: balloon, bumper, or another word of the list. null: not known. */
  readonly retention: number | string | boolean | null;
  /** Where the feed ends: G stomach, GJ bowel through the stomach, J bowel (left out: not known). */
  readonly access?: number | string | boolean | null;
  /** When the opening was made (date; left out: not known). */
  readonly stomamade?: Day | null;
  /** Today, or the day that the answer is for (date; left out: not known). */
  readonly asof?: Day | null;
  /** Is this still the first tube? yes, no or not known (left out: not known). */
  readonly firsttube?: number | string | boolean | null;
  /** Weeks from which an opening counts as mature (weeks; at least 2, at most 104; left out: 12). */
  readonly mature?: number | string | null;
  /** Slow healing (malnutrition, ascites, steroids, immune suppression)? yes, no or not known (left out: not known). */
  readonly slow?: number | string | boolean | null;
}

/**
 * What is known about taking a tube out, by how it is held, where it ends and how old the opening is.
 *
 * - The device's label, the placing team, this person's own plan and local policy decide.
 * - Never pull a tube with the balloon still full: it injures the opening.
 * - A tube through which another runs into the bowel, and a stitched tube: never turn, never change at home.
 * - Weeks are no proof of a firm opening.
 *
 * @returns One of six answers; only one of them tells how; or a SheetError with its sentence.
 */
export const removal: NamedFunction<RemovalArguments, string> = named("REMOVAL");

/** Arguments of `balloonDeviation`. */
export interface BalloonDeviationArguments {
  /** Water drawn out; 0 means that the balloon was empty (mL; at least 0, at most 60). */
  readonly out: number | string | null;
  /** Water put in last time; if not known, the fill agreed for this person (mL; above 0, at most 60). */
  readonly expected: number | string | null;
  /** mL, or % of what was expected (left out: mL). */
  readonly unit?: "mL" | "%" | null;
}

/**
 * How much more or less water came out of the balloon than was put in.
 *
 * - The percentage is a report, not a judgement: no published tolerance in percent was found.
 * - Water also passes through a sound balloon's wall: look at the days since the fill.
 *
 * @returns Water out less water expected; negative: a loss; mL; null when out or expected is blank; or a SheetError with its sentence.
 */
export const balloonDeviation: NamedFunction<BalloonDeviationArguments, number | null> = named("BALLOONDEVIATION");

/** Arguments of `balloonState`. */
export interface BalloonStateArguments {
  /** Water drawn out; 0 means that the balloon was empty (mL; at least 0, at most 60). */
  readonly out: number | string | null;
  /** Water put in last time; if not known, the fill agreed for this person (mL; above 0, at most 60). */
  readonly expected: number | string | null;
  /** Loss above which the balloon reads low (mL; at least 0, at most 5; left out: 0.5 mL for fills up to 5 mL, else 1 mL). */
  readonly action?: number | string | null;
  /** Largest volume printed on the device (mL; above 0, at most 60; left out: not checked). */
  readonly most?: number | string | null;
}

/**
 * What a balloon check found, in a word: empty, half or less, low, more than put in, or as filled.
 *
 * - Hold the tube while the balloon is empty. Do not empty a balloon in a new opening before the placing team's date.
 * - Milky or feed-coloured fluid: the balloon may have burst, or the wrong port was used.
 * - Low: refill to the agreed volume, never above the label; check again the next day. Low twice: plan a change.
 * - Water also passes through a sound balloon's wall: look at the days since the fill.
 * - Only water in a balloon, never feed or medicine, never more than the label says.
 * - Balloons burst without warning: figures that agree today do not show that the balloon will hold.
 *
 * @returns as filled, low, half or less, empty, more than put in, or not measured; "not measured" when out or expected is blank; or a SheetError with its sentence.
 */
export const balloonState: NamedFunction<BalloonStateArguments, string> = named("BALLOONSTATE");

/** Arguments of `checkDue`. */
export interface CheckDueArguments {
  /** When the opening was made (date). */
  readonly stomamade: Day | null;
  /** When the tube now in was put in (date). */
  readonly devicein: Day;
  /** Last balloon check (date; left out: none yet). */
  readonly lastcheck?: Day | null;
  /** No check before this many days after the opening was made (days; whole number, at least 1, at most 180; left out: 28). */
  readonly first?: number | string | null;
  /** Days from one check to the next (days; whole number, at least 1, at most 90; left out: 7). */
  readonly every?: number | string | null;
  /** Days from a change to the first check (days; whole number, at least 0, at most 90; left out: 7). */
  readonly after?: number | string | null;
}

/**
 * Date of the next balloon check.
 *
 * - Do not empty a balloon in a new opening before the placing team's date.
 * - A date is a reminder: a tube that slides more than usual or leaks is checked at once.
 * - Without the date on which the opening was made there is no answer.
 *
 * @returns Next check; format the cell as a date; as a day number; null when stomamade is blank; or a SheetError with its sentence.
 */
export const checkDue: NamedFunction<CheckDueArguments, DayNumber | null> = named("CHECKDUE");

/** Arguments of `balloonTrend`. */
export interface BalloonTrendArguments {
  /** Dates of the checks of the balloon now in, in any order (date). */
  readonly date: Cells<Day | null>;
  /** Water drawn out at each check (mL; at least 0, at most 60). */
  readonly out: Cells<number | string | null>;
  /** Water put in at each check (mL; at least 0, at most 60). */
  readonly in: Cells<number | string | null>;
  /** Identifier of each check, when the checks of several people stand in one list (left out: one balloon's checks). */
  readonly ids?: Cells<number | string | boolean | null>;
  /** The person, or a column of people (left out: all checks). */
  readonly id?: number | string | boolean | null;
}

/**
 * How much water a balloon has been losing in a week, from all its checks.
 *
 * - Only the checks of the balloon now in: a change starts a new balloon.
 * - Most balloons end by bursting (101 of 165 in one study), without a trend. A flat trend does not show that the balloon will hold.
 * - Summed losses hang together, so the limits are narrower than they look.
 * - Water also passes through a sound balloon's wall: 1.2 of 5 mL in two weeks on the bench.
 *
 * @returns Loss of water a week with its 95% limits; negative: more came out than was put in; mL a week; loss a week, low, high, checks used; or a SheetError with its sentence.
 */
export const balloonTrend: NamedFunction<BalloonTrendArguments, readonly [lossAWeek: number | null, low: number | null, high: number | null, checksUsed: number | null]> = named("BALLOONTREND");

/** Arguments of `balloonHalf`. */
export interface BalloonHalfArguments {
  /** Dates of the checks of the balloon now in, in any order (date). */
  readonly date: Cells<Day | null>;
  /** Water drawn out at each check (mL; at least 0, at most 60). */
  readonly out: Cells<number | string | null>;
  /** Water put in at each check (mL; at least 0, at most 60). */
  readonly in: Cells<number | string | null>;
  /** Water put in last time; if not known, the fill agreed for this person (mL; above 0, at most 60). */
  readonly expected: number | string | null;
  /** Share of expected to look for (above 0, below 1; left out: 0.5). */
  readonly share?: number | string | null;
}

/**
 * Day on which a leaking balloon would be down to half, losing as fast as its checks allow.
 *
 * - Not a date until which the balloon is sound. It never puts a check or a change off.
 * - A balloon that leaks is refilled, checked again the next day and, twice low, planned for a change.
 * - Only the checks of the balloon now in.
 *
 * @returns A day; format the cell as a date; as a day number; null when expected is blank; or a SheetError with its sentence.
 */
export const balloonHalf: NamedFunction<BalloonHalfArguments, DayNumber | null> = named("BALLOONHALF");

/** Arguments of `balloonDiameter`. */
export interface BalloonDiameterArguments {
  /** Water in the balloon (mL; at least 0, at most 100). */
  readonly volume: number | string | null;
  /** Size of the tube that runs through it, as in FRTOMM (Fr; above 0, at most 60; left out: no tube). */
  readonly size?: number | string | null;
}

/**
 * Diameter of a balloon filled with so much water, if it were a sphere round the tube.
 *
 * - A real balloon is no sphere. This is a picture of how large it is inside, not a way to choose a volume.
 * - Never above the volume on the label: a larger balloon can block the way out of the stomach and bursts sooner.
 *
 * @returns Outside diameter of the balloon; mm; null when volume is blank; or a SheetError with its sentence.
 */
export const balloonDiameter: NamedFunction<BalloonDiameterArguments, number | null> = named("BALLOONDIAMETER");

/** Arguments of `changeDue`. */
export interface ChangeDueArguments {
  /** When the tube now in was put in (date). */
  readonly lastchange: Day | null;
  /** How long until the next change, as your service has set it for this kind of tube (whole number, above 0, at most 60 months, 260 weeks or 1,830 days). */
  readonly interval: number | string;
  /** What the interval counts (left out: months). */
  readonly unit?: "months" | "weeks" | "days" | null;
  /** Days on which the clinic is shut: dates, or day names such as Sat (left out: no closed days). */
  readonly closed?: Cells<number | string | boolean | null>;
}

/**
 * Date on which a tube is due for change: the last change plus the interval that your service has set.
 *
 * - A date is a reminder. It does not show that a tube is sound: balloons burst without warning.
 * - The device's label, the placing team, this person's own plan and local policy decide.
 * - Never one interval for a mixed list: balloon, bumper and jejunal tubes have different ones.
 *
 * @returns Due date; format the cell as a date; as a day number; null when lastchange is blank; or a SheetError with its sentence.
 */
export const changeDue: NamedFunction<ChangeDueArguments, DayNumber | null> = named("CHANGEDUE");

/** Arguments of `dueDates`. */
export interface DueDatesArguments {
  /** When the tube now in was put in (date). */
  readonly lastchange: Day | null;
  /** How long from one change to the next, as your service has set it for this kind of tube (whole number, above 0, at most 60 months, 260 weeks or 1,830 days). */
  readonly interval: number | string;
  /** How many dates (whole number, at least 1, at most 1000). */
  readonly count: number | string;
  /** What the interval counts (left out: months). */
  readonly unit?: "months" | "weeks" | "days" | null;
}

/**
 * The next planned changes as a column of dates, all counted from one change.
 *
 * - Dates for planning supplies and clinics. Each change moves those behind it.
 * - A date is a reminder. It does not show that a tube is sound: balloons burst without warning.
 *
 * @returns One date below the other; format the cells as dates; as a day number; null when lastchange is blank; or a SheetError with its sentence.
 */
export const dueDates: NamedFunction<DueDatesArguments, readonly (readonly [due: DayNumber | null])[] | null> = named("DUEDATES");

/** Arguments of `dueState`. */
export interface DueStateArguments {
  /** Due date (date). null: not known. */
  readonly due: Day | null;
  /** Today, or the day that the answer is for (date). */
  readonly asof: Day | null;
  /** Days before the due date that count as soon (days; whole number, at least 0; left out: 14). */
  readonly soon?: number | string | null;
  /** Date by which the change must have been done (date; left out: no limit). */
  readonly latest?: Day | null;
}

/**
 * Where a due date stands today, in a word: past limit, overdue, due soon or later.
 *
 * - Later is a comparison of dates. It does not show that a tube is sound or in the right place.
 * - Let today stand in one cell (the name As_of) instead of TODAY() in every formula.
 *
 * @returns past limit, overdue, due soon, later or no date; "no date" when asof is blank; or a SheetError with its sentence.
 */
export const dueState: NamedFunction<DueStateArguments, string> = named("DUESTATE");

/** Arguments of `nearestOpen`. */
export interface NearestOpenArguments {
  /** The day wished for (date). */
  readonly date: Day | null;
  /** Days on which the clinic is shut: dates, or day names such as Sat. */
  readonly closed: Cells<number | string | boolean | null>;
  /** Which way to look (left out: earlier). */
  readonly direction?: "earlier" | "later" | null;
}

/**
 * The nearest day on which the clinic is open: the day itself, or the one before or after it.
 *
 * - Later may go past a limit: compare the result with the latest date.
 * - A date is a reminder only.
 *
 * @returns An open day; format the cell as a date; as a day number; null when date is blank; or a SheetError with its sentence.
 */
export const nearestOpen: NamedFunction<NearestOpenArguments, DayNumber | null> = named("NEARESTOPEN");

/** Arguments of `tractState`. */
export interface TractStateArguments {
  /** When the opening was made; closed and made again: the new date (date). */
  readonly stomamade: Day | null;
  /** Today, or the day that the answer is for (date). */
  readonly asof: Day | null;
  /** Weeks below which an opening is immature (weeks; at least 1, at most 104; left out: 6). */
  readonly immature?: number | string | null;
  /** Weeks from which an opening counts as mature (weeks; at least 8, at most 104; left out: 12). */
  readonly mature?: number | string | null;
  /** Slow healing (malnutrition, ascites, steroids, immune suppression)? yes, no or not known (left out: not known). */
  readonly slow?: number | string | boolean | null;
}

/**
 * How old an opening is, in a word: immature, uncertain or mature by weeks.
 *
 * - Weeks are not proof: replacements have gone astray, with deaths, through old openings too.
 * - Tube out or half out: urgent at any age of the opening.
 * - Closed and made again: the date starts anew.
 *
 * @returns immature, uncertain, mature by weeks or no date; "no date" when stomamade or asof is blank; or a SheetError with its sentence.
 */
export const tractState: NamedFunction<TractStateArguments, string> = named("TRACTSTATE");

/** Arguments of `changeLoad`. */
export interface ChangeLoadArguments {
  /** Next due date of each tube (date). */
  readonly due: Cells<Day | null>;
  /** Months from one change to the next, for each tube or one for all (months; whole number, above 0, at most 60). */
  readonly interval: Cells<number | string | null>;
  /** Any day of the first month (date). */
  readonly from: Day | null;
  /** How many months (whole number, at least 1, at most 240). */
  readonly months: number | string;
}

/**
 * How many planned changes fall into each month, from the due dates of all tubes.
 *
 * - Planned changes only: add your own unplanned ones. Most balloons end by bursting, before their date.
 * - For staff, rooms and supplies; not a list of who is due.
 *
 * @returns A row a month; format the first column as dates; first of month, changes expected; null when from is blank; or a SheetError with its sentence.
 */
export const changeLoad: NamedFunction<ChangeLoadArguments, readonly (readonly [firstOfMonth: number | string | null, changesExpected: number | string | null])[] | null> = named("CHANGELOAD");

/** Arguments of `book`. */
export interface BookArguments {
  /** Due date of each person, in one column (date). */
  readonly due: Cells<Day | null>;
  /** Dates of the sessions (date). */
  readonly sessions: Cells<Day | null>;
  /** Places in each session, or one number for all; blank or 0: closed (whole number, at least 0). */
  readonly places: Cells<number | string | null>;
  /** First day on which each person may come (date; left out: any day). */
  readonly earliest?: Cells<Day | null>;
  /** Day by which each change must have been done (date; left out: no limit). */
  readonly latest?: Cells<Day | null>;
  /** Who comes first (left out: worst first). */
  readonly rule?: "worst first" | "most in time" | null;
  /** Today: sessions before it are over and book nobody (date; left out: every session is still to come). */
  readonly asof?: Day | null;
}

/**
 * Books people into clinic sessions with so many places each: a session date for everybody, or no place.
 *
 * - Without today, a session that is already over books people too.
 * - No place is a finding: open a session or arrange another way.
 * - Most in time leaves those already overdue until last: look at them first.
 * - A booking does not say that waiting is without risk; symptoms go before dates.
 *
 * @returns One row for each row of due: a session, no place, or a blank where due is blank; format as dates; as a day number; or a SheetError with its sentence.
 */
export const book: NamedFunction<BookArguments, readonly (readonly [session: DayNumber | "no place" | null])[] | null> = named("BOOK");

/** Arguments of `stomaLength`. */
export interface StomaLengthArguments {
  /** Opening measured lying (cm; above 0, at most 10). */
  readonly lying: number | string | null;
  /** Opening measured sitting; may be blank under the rule lying only (cm; above 0, at most 10). null: not known. */
  readonly sitting: number | string | null;
  /** Lengths in stock (cm; above 0, at most 10). */
  readonly lengths: Cells<number | string | null>;
  /** Larger: not below the larger reading nor the mean plus slack; mean: not below the mean plus slack; lying only: for somebody who cannot sit (left out: larger). */
  readonly rule?: "larger" | "mean" | "lying only" | null;
  /** Slack above the mean (cm; at least 0, at most 2; left out: 0.2). */
  readonly slack?: number | string | null;
  /** Most slack above the larger reading (cm; at least 0, at most 5; left out: 0.5). */
  readonly most?: number | string | null;
}

/**
 * The shortest low-profile length in stock that is in range for an opening measured lying and sitting.
 *
 * - In 28 adults the opening was longer sitting than lying: 4.9 against 3.6 cm on average. Lying alone may be too short.
 * - Too short is worse than too long: a tight tube can be buried. Look at the skin after the change.
 * - Measure again at every change, when weight changes, and in growing children.
 *
 * @returns One of the lengths in stock; cm; null when lying is blank; or a SheetError with its sentence.
 */
export const stomaLength: NamedFunction<StomaLengthArguments, number | null> = named("STOMALENGTH");

/** Arguments of `stomaFit`. */
export interface StomaFitArguments {
  /** Length of the tube now in (cm; above 0, at most 10). */
  readonly length: number | string | null;
  /** Opening measured lying (cm; above 0, at most 10). */
  readonly lying: number | string | null;
  /** Opening measured sitting (cm; above 0, at most 10). */
  readonly sitting: number | string | null;
  /** Least slack above the mean of both readings (cm; at least 0, at most 2; left out: 0.2). */
  readonly least?: number | string | null;
  /** Most slack above the larger reading (cm; at least 0, at most 5; left out: 0.5). */
  readonly most?: number | string | null;
}

/**
 * Whether a low-profile tube's length still goes with the opening: too short, in range or too long.
 *
 * - In range compares numbers as old as the measurement: weight and growth change them. Look at the skin.
 * - Tight, marked skin, pain, or a tube that will not turn: stop the feed and call; do not force.
 * - In and out movement, leakage or overgrown skin can mean too long. A leak is not cured by more water.
 *
 * @returns too short, in range, too long or not measured; "not measured" when length or lying or sitting is blank; or a SheetError with its sentence.
 */
export const stomaFit: NamedFunction<StomaFitArguments, string> = named("STOMAFIT");

/** Arguments of `freePlay`. */
export interface FreePlayArguments {
  /** From the bolster to the skin (mm; at least 0, at most 200). */
  readonly gap: number | string | null;
  /** Below this it is tight (mm; above 0, at most 30; left out: 5). */
  readonly least?: number | string | null;
  /** Above this it is loose (mm; above 0, at most 60; left out: 20). */
  readonly most?: number | string | null;
}

/**
 * Whether the outer bolster of a long tube stands at a good distance from the skin: tight, in range, loose.
 *
 * - Tight, and it also will not turn or push in, hurts, leaks or feeds slowly: stop the feed and call, it may be buried. Do not force.
 * - In range does not show that a bumper is not buried.
 * - Leave the bolster of a new tube alone until the placing team's date. Never turn a tube with a part in the bowel, nor a stitched one.
 *
 * @returns tight, in range, loose or not measured; "not measured" when gap is blank; or a SheetError with its sentence.
 */
export const freePlay: NamedFunction<FreePlayArguments, string> = named("FREEPLAY");

/** Arguments of `markShift`. */
export interface MarkShiftArguments {
  /** Mark at the skin when the tube was put in, counted from the inner end (cm; at least 0, at most 60). */
  readonly then: number | string | null;
  /** Mark at the skin now, counted from the inner end; 0: none of it is inside (cm; at least 0, at most 60). */
  readonly now: number | string | null;
  /** A difference up to this counts as the same mark (cm; at least 0, at most 5; left out: 1). */
  readonly tolerance?: number | string | null;
}

/**
 * Whether the centimetre mark at the skin has moved: same mark, further out or further in.
 *
 * - Further out: treat as coming out; stop the feed until the position is confirmed. Do not push it back.
 * - Further in: with vomiting or a full belly the tube may block the way out of the stomach; call the team.
 * - The same mark does not show that the inner end lies in the right place.
 *
 * @returns same mark, further out, further in or not measured; "not measured" when then or now is blank; or a SheetError with its sentence.
 */
export const markShift: NamedFunction<MarkShiftArguments, string> = named("MARKSHIFT");

/** Arguments of `lifeTable`. */
export interface LifeTableArguments {
  /** Days in place, one row a device; still in: the days up to now (days; above 0). */
  readonly days: Cells<number | string | null>;
  /** Did it fail: yes or no (1 or 0); burst, leak, broken: yes; still in, planned change, out for another reason: no. */
  readonly failed: Cells<number | string | boolean | null>;
  /** Confidence level of the limits, two-sided (above 0, below 1; left out: 0.95). */
  readonly level?: number | string | null;
}

/**
 * Share of devices still working after each day on which one failed, with limits (Kaplan-Meier).
 *
 * - Enter every device, also those still in and those changed as planned, or the answer is wrong.
 * - How long others lasted does not show that the tube in place is sound.
 * - With few devices at risk, at the end of the list, the share jumps: look at the limits.
 *
 * @returns One row for each day on which a device failed; day, at risk, failed, share still working, low, high; null when days is blank; or a SheetError with its sentence.
 */
export const lifeTable: NamedFunction<LifeTableArguments, readonly (readonly [day: number | null, atRisk: number | null, failed: number | null, shareStillWorking: number | null, low: number | null, high: number | null])[] | null> = named("LIFETABLE");

/** Arguments of `lifeQuantile`. */
export interface LifeQuantileArguments {
  /** Days in place, one row a device; still in: the days up to now (days; above 0). */
  readonly days: Cells<number | string | null>;
  /** Did it fail: yes or no (1 or 0); burst, leak, broken: yes; still in, planned change, out for another reason: no. */
  readonly failed: Cells<number | string | boolean | null>;
  /** Share that has failed by then (above 0, at most 1; left out: 0.5). */
  readonly share?: number | string | null;
  /** Confidence level of the limits, two-sided (above 0, below 1; left out: 0.95). */
  readonly level?: number | string | null;
}

/**
 * Day by which a share of the devices has failed, half of them if not said otherwise, with limits.
 *
 * - Enter every device, also those still in and those changed as planned, or the answer is wrong.
 * - How long others lasted does not show that the tube in place is sound.
 * - A median is not an interval for change: by then half have failed.
 * - Published lives differ by kind and size of device (median 148 to 262 days in one study): do not mix kinds.
 *
 * @returns Day and its limits; a cell is blank where so many have not failed; days; days, low, high; null when days is blank; or a SheetError with its sentence.
 */
export const lifeQuantile: NamedFunction<LifeQuantileArguments, readonly [days: number | null, low: number | null, high: number | null]> = named("LIFEQUANTILE");

/** Arguments of `lifeCompare`. */
export interface LifeCompareArguments {
  /** Days in place, one row a device; still in: the days up to now (days; above 0). */
  readonly days: Cells<number | string | null>;
  /** Did it fail: yes or no (1 or 0); burst, leak, broken: yes; still in, planned change, out for another reason: no. */
  readonly failed: Cells<number | string | boolean | null>;
  /** Group of each device, such as its kind or size; upper and lower case are alike. */
  readonly group: Cells<number | string | boolean | null>;
}

/**
 * Do groups of devices last equally long: the log-rank test.
 *
 * - Enter every device, also those still in and those changed as planned, or the answer is wrong.
 * - How long others lasted does not show that the tube in place is sound.
 * - A large p does not show that kinds last equally long: a few devices cannot tell.
 * - Groups may differ in more than the device: who wears it, and why it was chosen.
 *
 * @returns Test of equal lives; a small p speaks for a difference; chi-square, degrees of freedom, p; null when days is blank; or a SheetError with its sentence.
 */
export const lifeCompare: NamedFunction<LifeCompareArguments, readonly [chiSquare: number | null, degreesOfFreedom: number | null, p: number | null]> = named("LIFECOMPARE");

/** Arguments of `lifeWeibull`. */
export interface LifeWeibullArguments {
  /** Days in place, one row a device; still in: the days up to now (days; above 0). */
  readonly days: Cells<number | string | null>;
  /** Did it fail: yes or no (1 or 0); burst, leak, broken: yes; still in, planned change, out for another reason: no. */
  readonly failed: Cells<number | string | boolean | null>;
  /** Confidence level of the limits, two-sided (above 0, below 1; left out: 0.95). */
  readonly level?: number | string | null;
}

/**
 * Shape and scale of the Weibull distribution that fits the lives of devices best, with limits.
 *
 * - Enter every device, also those still in and those changed as planned, or the answer is wrong.
 * - How long others lasted does not show that the tube in place is sound.
 * - The curve is a model: compare it with LIFETABLE before you believe it, above all far from your own data.
 * - Do not mix kinds or sizes of device: a mixture looks as if devices wore out less than each kind does.
 *
 * @returns Shape above 1: wears out with age; 1: fails at any age alike; the scale is in days; shape, low, high, scale, low, high; null when days is blank; or a SheetError with its sentence.
 */
export const lifeWeibull: NamedFunction<LifeWeibullArguments, readonly [shape: number | null, low: number | null, high: number | null, scale: number | null, low: number | null, high: number | null]> = named("LIFEWEIBULL");

/** Arguments of `failBy`. */
export interface FailByArguments {
  /** Days in place, one row a device; still in: the days up to now (days; above 0). */
  readonly days: Cells<number | string | null>;
  /** Did it fail: yes or no (1 or 0); burst, leak, broken: yes; still in, planned change, out for another reason: no. */
  readonly failed: Cells<number | string | boolean | null>;
  /** Share that may have failed by then: 0.1 is one in ten (above 0, below 1). */
  readonly risk: number | string;
  /** Confidence level of the lower limit, one-sided (at least 0.5, below 1; left out: 0.95). */
  readonly level?: number | string | null;
}

/**
 * Day by which a given share of devices fails, from a fitted Weibull distribution, with its lower limit.
 *
 * - Evidence for a clinic's own interval, never a reason to exceed the device's label or the clinic's limit.
 * - Enter every device, also those still in and those changed as planned, or the answer is wrong.
 * - How long others lasted does not show that the tube in place is sound.
 * - A risk smaller than one in the number of devices lies outside the data: only the model speaks there.
 * - Do not mix kinds or sizes of device.
 *
 * @returns Day, its one-sided lower limit, and the number of failures it rests on; days; days, lower limit, failures; null when days is blank; or a SheetError with its sentence.
 */
export const failBy: NamedFunction<FailByArguments, readonly [days: number | null, lowerLimit: number | null, failures: number | null]> = named("FAILBY");

/** Arguments of `wearRatio`. */
export interface WearRatioArguments {
  /** The person, or a column of people. */
  readonly id: number | string | boolean | null;
  /** Whose device it was, one row a device. */
  readonly ids: Cells<number | string | boolean | null>;
  /** Days in place, one row a device; still in: the days up to now (days; above 0). */
  readonly days: Cells<number | string | null>;
  /** Did it fail: yes or no (1 or 0); burst, leak, broken: yes; still in, planned change, out for another reason: no. */
  readonly failed: Cells<number | string | boolean | null>;
  /** Confidence level of the limits, two-sided (above 0, below 1; left out: 0.9). */
  readonly level?: number | string | null;
}

/**
 * How many times as fast as the clinic's mean person this one wears devices through, with limits.
 *
 * - Enter every device, also those still in and those changed as planned, or the answer is wrong.
 * - How long others lasted does not show that the tube in place is sound.
 * - Limits that contain 1 mean: not known to differ. That does not show that all are alike, only that it cannot be told.
 * - A high ratio is a question to ask (size, volume, fluid, place of the balloon, handling), not an answer.
 * - A person's own interval is set by those responsible, within the device's label.
 *
 * @returns 2 means: at each age twice the clinic's mean chance to fail; ratio, low, high; null when id is blank; or a SheetError with its sentence.
 */
export const wearRatio: NamedFunction<WearRatioArguments, readonly [ratio: number | null, low: number | null, high: number | null]> = named("WEARRATIO");

/** Arguments of `failById`. */
export interface FailByIdArguments {
  /** The person, or a column of people. */
  readonly id: number | string | boolean | null;
  /** Whose device it was, one row a device. */
  readonly ids: Cells<number | string | boolean | null>;
  /** Days in place, one row a device; still in: the days up to now (days; above 0). */
  readonly days: Cells<number | string | null>;
  /** Did it fail: yes or no (1 or 0); burst, leak, broken: yes; still in, planned change, out for another reason: no. */
  readonly failed: Cells<number | string | boolean | null>;
  /** Share that may have failed by then: 0.1 is one in ten (above 0, below 1). */
  readonly risk: number | string;
  /** Confidence level of the limits, two-sided (above 0, below 1; left out: 0.9). */
  readonly level?: number | string | null;
}

/**
 * Day by which a given share of this person's devices fails, from the person's own past and the clinic's.
 *
 * - Only ever a reason to change earlier than agreed, never later, and never past the device's label.
 * - Enter every device, also those still in and those changed as planned, or the answer is wrong.
 * - How long others lasted does not show that the tube in place is sound.
 * - A risk smaller than one in the number of devices lies outside the data: only the model speaks there.
 * - A person's own interval is set by those responsible.
 *
 * @returns Day with limits, the person's wear beside the clinic's mean with limits, and the counts behind them; days, low, high, relative wear, low, high, devices, failures; null when id is blank; or a SheetError with its sentence.
 */
export const failById: NamedFunction<FailByIdArguments, readonly [days: number | null, low: number | null, high: number | null, relativeWear: number | null, low: number | null, high: number | null, devices: number | null, failures: number | null]> = named("FAILBYID");

/** Arguments of `ageReplace`. */
export interface AgeReplaceArguments {
  /** Days in place, one row a device; still in: the days up to now (days; above 0). */
  readonly days: Cells<number | string | null>;
  /** Did it fail: yes or no (1 or 0); burst, leak, broken: yes; still in, planned change, out for another reason: no. */
  readonly failed: Cells<number | string | boolean | null>;
  /** What an unplanned change costs over a planned one (visits, hours): 3 is three times (above 1). */
  readonly costratio: number | string;
  /** Confidence level of the limits, two-sided (above 0, below 1; left out: 0.9). */
  readonly level?: number | string | null;
}

/**
 * Does a planned change pay, and when: the day at which planned and unplanned changes together cost least.
 *
 * - Only ever a reason to change earlier than agreed. A later day is no reason to wait: the agreed interval and the label stand.
 * - Enter every device, also those still in and those changed as planned, or the answer is wrong.
 * - How long others lasted does not show that the tube in place is sound.
 * - It counts visits or hours, not what an unplanned change means to the person: a tract can close.
 * - Do not mix kinds or sizes of device.
 *
 * @returns Day, share of devices that fail before it, changes a year for 100 people, and the day's limits; day, share failing before it, planned a year, unplanned a year, low, high; null when days is blank; or a SheetError with its sentence.
 */
export const ageReplace: NamedFunction<AgeReplaceArguments, readonly [day: number | null, shareFailingBeforeIt: number | null, plannedAYear: number | null, unplannedAYear: number | null, low: number | null, high: number | null]> = named("AGEREPLACE");

/** Arguments of `lotSignal`. */
export interface LotSignalArguments {
  /** The lot, or a column of lots. */
  readonly lot: number | string | boolean | null;
  /** Each device's lot, one row a device; blank where it is not known. */
  readonly lots: Cells<number | string | boolean | null>;
  /** Days in place, one row a device; still in: the days up to now (days; above 0). */
  readonly days: Cells<number | string | null>;
  /** Did it fail: yes or no (1 or 0); burst, leak, broken: yes; still in, planned change, out for another reason: no. */
  readonly failed: Cells<number | string | boolean | null>;
  /** Failures that would be expected of the lot's devices by their agreed intervals; fixed when first looked at (above 0, at most 1000). */
  readonly expectedtotal: number | string;
  /** Chance of a false signal among all lots of the list together (above 0, below 0.5; left out: 0.05). */
  readonly level?: number | string | null;
  /** Fewest failures that can signal (whole number, at least 1, at most 100; left out: 4). */
  readonly least?: number | string | null;
}

/**
 * Do devices of one lot fail more often than their age explains, looked at again and again.
 *
 * - A signal is a reason to look at the lot (fluid, handling, people, transport), never a finding that it is faulty.
 * - No signal does not show that a lot is sound, and no sign of it is needed to report a device.
 * - A device without a lot is counted among the others: it cannot be ruled out.
 * - Enter every device, also those still in and those changed as planned, or the answer is wrong.
 * - How long others lasted does not show that the tube in place is sound.
 *
 * @returns Failures seen and expected, their ratio with limits, and: look at this lot, no signal, too few to say; seen, expected, ratio, low, high, signal; null when lot is blank; or a SheetError with its sentence.
 */
export const lotSignal: NamedFunction<LotSignalArguments, readonly [seen: number | string | null, expected: number | string | null, ratio: number | string | null, low: number | string | null, high: number | string | null, signal: number | string | null]> = named("LOTSIGNAL");

/** Arguments of `unplanned`. */
export interface UnplannedArguments {
  /** Days that each device has been in, one row a device now in (days; at least 0). */
  readonly age: Cells<number | string | null>;
  /** Days to look ahead (days; above 0). */
  readonly window: number | string | null;
  /** Days in place, one row a device; still in: the days up to now (days; above 0). */
  readonly days: Cells<number | string | null>;
  /** Did it fail: yes or no (1 or 0); burst, leak, broken: yes; still in, planned change, out for another reason: no. */
  readonly failed: Cells<number | string | boolean | null>;
  /** Share of cases in which the number is enough: 0.9 is nine months in ten (above 0, below 1; left out: 0.9). */
  readonly share?: number | string | null;
}

/**
 * How many of the devices now in fail within a window: the number that is not exceeded in a given share of cases.
 *
 * - A device of unknown age is left out: count such rows and add them in mind, or the number is too small.
 * - One failure for each device at most: what is put in instead and fails too is not counted.
 * - Enter every device, also those still in and those changed as planned, or the answer is wrong.
 * - How long others lasted does not show that the tube in place is sound.
 *
 * @returns Unplanned changes that are not exceeded in that share; null when window is blank; or a SheetError with its sentence.
 */
export const unplanned: NamedFunction<UnplannedArguments, number | null> = named("UNPLANNED");

/** Arguments of `noSpare`. */
export interface NoSpareArguments {
  /** Days that the device has been in (days; at least 0). */
  readonly age: number | string | null;
  /** Days until an ordered spare is there (days; above 0). */
  readonly lead: number | string;
  /** Days in place, one row a device; still in: the days up to now (days; above 0). */
  readonly days: Cells<number | string | null>;
  /** Did it fail: yes or no (1 or 0); burst, leak, broken: yes; still in, planned change, out for another reason: no. */
  readonly failed: Cells<number | string | boolean | null>;
}

/**
 * Chance that the device now in fails before a spare ordered today is there.
 *
 * - A small chance is no reason to leave anybody without a spare: it only says whose order comes first.
 * - Enter every device, also those still in and those changed as planned, or the answer is wrong.
 * - How long others lasted does not show that the tube in place is sound.
 * - It knows the clinic's devices, not this person: who wears them through fast stands first whatever it says.
 *
 * @returns A chance between 0 and 1: rank people without a spare by it; null when age is blank; or a SheetError with its sentence.
 */
export const noSpare: NamedFunction<NoSpareArguments, number | null> = named("NOSPARE");

/** Arguments of `tubeDays`. */
export interface TubeDaysArguments {
  /** Day on which the tube was put in (date). */
  readonly in: Day | null;
  /** Day on which it came out; blank when still in (date). null: still in. */
  readonly out: Day | null;
  /** First day of the period (date). */
  readonly from: Day;
  /** Last day of the period, no later than the day up to which your list is complete (date). */
  readonly to: Day;
}

/**
 * Days on which a tube was in place within a period.
 *
 * - A tube whose end was not written down counts as still in and makes every rate look better.
 * - A person with two tubes at once gives two tube-days a day: the published definition counts a person once a day.
 *
 * @returns Tube-days within the period; days; null when in is blank; or a SheetError with its sentence.
 */
export const tubeDays: NamedFunction<TubeDaysArguments, number | null> = named("TUBEDAYS");

/** Arguments of `rate`. */
export interface RateArguments {
  /** How many events, such as unplanned changes (whole number, at least 0, at most 1000000000). */
  readonly events: number | string | null;
  /** Tube-days in which they happened (tube-days; above 0). */
  readonly tubedays: number | string;
  /** Tube-days that the rate is given for (tube-days; above 0; left out: 1000). */
  readonly per?: number | string | null;
  /** Confidence level of the limits, two-sided (above 0, below 1; left out: 0.95). */
  readonly level?: number | string | null;
}

/**
 * Events for every 1,000 tube-days, with exact limits.
 *
 * - A rate is no better than the log behind it: events that were not written down make it look good.
 * - No published rate of unplanned changes at home was found to compare with: compare with your own earlier months.
 * - Below about 750 tube-days a rate says little: give the time since the last event instead.
 * - 0 events is not a rate of 0: read the upper limit.
 *
 * @returns Rate and its limits, per 1,000 tube-days if not said otherwise; rate, low, high; null when events is blank; or a SheetError with its sentence.
 */
export const rate: NamedFunction<RateArguments, readonly [rate: number | null, low: number | null, high: number | null]> = named("RATE");

/** Arguments of `rateRatio`. */
export interface RateRatioArguments {
  /** Events of A: this year, say (whole number, at least 0, at most 1000000000). */
  readonly eventsa: number | string | null;
  /** Tube-days of A (tube-days; above 0). */
  readonly daysa: number | string;
  /** Events of B: last year, say (whole number, at least 0, at most 1000000000). */
  readonly eventsb: number | string;
  /** Tube-days of B (tube-days; above 0). */
  readonly daysb: number | string;
  /** Confidence level of the limits, two-sided (above 0, below 1; left out: 0.95). */
  readonly level?: number | string | null;
}

/**
 * How many times as high rate A is as rate B, with exact limits and p.
 *
 * - A rate is no better than the log behind it: events that were not written down make it look good.
 * - No published rate of unplanned changes at home was found to compare with: compare with your own earlier months.
 * - Periods and services differ in more than the care: in the people, the kinds of tube, and what was written down.
 * - A large p does not show that the rates are equal.
 *
 * @returns Ratio, its limits and p; blank where infinite; ratio, low, high, p; null when eventsa is blank; or a SheetError with its sentence.
 */
export const rateRatio: NamedFunction<RateRatioArguments, readonly [ratio: number | null, low: number | null, high: number | null, p: number | null]> = named("RATERATIO");

/** Arguments of `rateChart`. */
export interface RateChartArguments {
  /** Events of each month, 0 where there was none (whole number, at least 0). */
  readonly events: Cells<number | string | null>;
  /** Tube-days of each month (tube-days; above 0). */
  readonly tubedays: Cells<number | string | null>;
  /** Tube-days that the rate is given for (tube-days; above 0; left out: 1000). */
  readonly per?: number | string | null;
}

/**
 * Control chart of a rate month by month: which months are out of line with the others (u chart).
 *
 * - A rate is no better than the log behind it: events that were not written down make it look good.
 * - No published rate of unplanned changes at home was found to compare with: compare with your own earlier months.
 * - Below limits can also mean that events were not written down.
 * - A blank signal does not mean that all is well: a rate can be high every month.
 * - With fewer than about 20 months the limits are provisional; with few events a month they catch little.
 *
 * @returns A row a month; signal: above limits, below limits, or a blank; rate, centre, lower, upper, signal; null when tubedays is blank; or a SheetError with its sentence.
 */
export const rateChart: NamedFunction<RateChartArguments, readonly (readonly [rate: number | string | null, centre: number | string | null, lower: number | string | null, upper: number | string | null, signal: number | string | null])[] | null> = named("RATECHART");

/** Arguments of `stockLevel`. */
export interface StockLevelArguments {
  /** Pieces used in a month, on average, planned and unplanned (at least 0, at most 1000000). */
  readonly permonth: number | string | null;
  /** Days from order to delivery (days; at least 0, at most 3660). */
  readonly leaddays: number | string;
  /** Days from one look at the stock to the next (days; at least 0, at most 3660; left out: 0). */
  readonly reviewdays?: number | string | null;
  /** Chance that it is enough, of 1 (above 0, below 1; left out: 0.95). */
  readonly service?: number | string | null;
}

/**
 * How many pieces to have, in stock and on order together, so that they rarely run out before a delivery.
 *
 * - Count use of one size and kind: a 14 Fr does not stand in for a 16 Fr.
 * - The mean must come from your own log; a bad batch or a new group of people breaks it.
 * - One spare for each person is another matter: this counts the clinic's shelf.
 *
 * @returns Order up to this number; pieces; null when permonth is blank; or a SheetError with its sentence.
 */
export const stockLevel: NamedFunction<StockLevelArguments, number | null> = named("STOCKLEVEL");

/** Arguments of `supplyNeed`. */
export interface SupplyNeedArguments {
  /** Pieces, or mL, used in a day (at least 0, at most 1000000). */
  readonly perday: number | string | null;
  /** Days to be covered (days; whole number, at least 0, at most 3660). */
  readonly days: number | string;
  /** Pieces, or mL, in a pack (above 0, at most 1000000). */
  readonly pack: number | string;
  /** What becomes of the rest of an opened pack (left out: kept). */
  readonly opened?: "kept" | "discarded daily" | null;
  /** Packs in a case, when only whole cases are delivered (whole number, above 0, at most 1000000; left out: 1). */
  readonly case?: number | string | null;
}

/**
 * How many packs cover so many pieces a day for so many days.
 *
 * - Nothing is added for loss or a late delivery: order earlier, or cover more days.
 * - Whether an opened pack may be kept, and how long, stands on its label.
 *
 * @returns Packs to order; packs; null when perday is blank; or a SheetError with its sentence.
 */
export const supplyNeed: NamedFunction<SupplyNeedArguments, number | null> = named("SUPPLYNEED");

/** Arguments of `readCode`. */
export interface ReadCodeArguments {
  /** What the scanner gave, or the line with brackets under the bar code. */
  readonly code: number | string | boolean | null;
  /** Which part of the label. */
  readonly part: "item" | "lot" | "made" | "expiry" | "serial" | "quantity";
  /** A day near the label's dates, such as today: years are read from 49 before to 50 after it (date; left out: years 1976 to 2075). */
  readonly asof?: Day | null;
}

/**
 * One part of a scanned or typed GS1 label code: item number, lot, dates, serial number or quantity.
 *
 * - Compare lot and expiry with the print before you rely on them.
 * - Some scanners drop the separator: then a lot runs on into what follows. Set the scanner to send GS (ASCII 29).
 * - Other coding systems are refused: type lot and expiry from the print.
 * - Excel cuts long numbers: format the cell as text before you scan.
 *
 * @returns Item, lot and serial number as text; made and expiry as dates (format the cell); quantity as a number; null when code is blank; or a SheetError with its sentence.
 */
export const readCode: NamedFunction<ReadCodeArguments, number | string | null> = named("READCODE");

/** Arguments of `restEnergy`. */
export interface RestEnergyArguments {
  /** M or F; also male, female, man, woman, boy, girl. */
  readonly sex: number | string | boolean | null;
  /** Age (years; at least 0, at most 120). */
  readonly age: number | string;
  /** Weight (kg; at least 0.3, at most 400). */
  readonly weight: number | string;
  /** Height (cm; at least 30, at most 250; left out: not used). */
  readonly height?: number | string | null;
  /** Equation (left out: Mifflin-St Jeor when height is given, else Schofield). */
  readonly method?: "Mifflin-St Jeor" | "Schofield" | "Henry" | null;
}

/**
 * Energy that a body needs at rest in a day, by one of three published equations.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - No equation is reliable for one person. In severe cerebral palsy needs may be 60 to 70% of the typical (from memory).
 * - Energy at rest is not the target for feeding: activity, growth, illness and the risk of refeeding come on top.
 *
 * @returns Energy at rest; kcal a day; null when sex is blank; or a SheetError with its sentence.
 */
export const restEnergy: NamedFunction<RestEnergyArguments, number | null> = named("RESTENERGY");

/** Arguments of `fluidGoal`. */
export interface FluidGoalArguments {
  /** Weight (kg; at least 0.3, at most 400). */
  readonly weight: number | string | null;
  /** Holliday-Segar, 4-2-1, or a number of mL per kg; there is no default (a number: at least 5, at most 200). */
  readonly method: number | string;
}

/**
 * Fluid for a day by weight: a children's rule, or so many mL per kg.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - Not under 14 days of age. Not for heart or kidney disease, fever, losses or a fluid limit.
 * - It counts all fluid: feed, flushes, medicines, drinks and drips.
 *
 * @returns Fluid for a day; mL a day; null when weight is blank; or a SheetError with its sentence.
 */
export const fluidGoal: NamedFunction<FluidGoalArguments, number | null> = named("FLUIDGOAL");

/** Arguments of `feedPlan`. */
export interface FeedPlanArguments {
  /** Energy to be given in a day (kcal; above 0, at most 6000). */
  readonly energytarget: number | string | null;
  /** Energy of the feed, from the pack (kcal/mL; at least 0.1, at most 3). */
  readonly density: number | string;
  /** Hours that the feed runs in a day (hours; above 0, at most 24). */
  readonly hours: number | string;
  /** Water in the feed, from the pack: 85 for 85% (%; at least 40, at most 100). */
  readonly waterpercent: number | string;
  /** Protein of the feed, from the pack; 0: not worked out (g/L; at least 0, at most 500). */
  readonly proteinperlitre: number | string;
  /** Fluid to be given in a day (mL; above 0, at most 20000). */
  readonly fluidgoal: number | string;
  /** Water given as flushes in a day (mL; at least 0, at most 20000; left out: 0). */
  readonly flush?: number | string | null;
  /** Step of the pump (mL/h; above 0, at most 100; left out: 1). */
  readonly step?: number | string | null;
  /** Weight (kg; at least 0.3, at most 400; left out: energy and rate are not compared with it). */
  readonly weight?: number | string | null;
  /** Fastest rate that this person's plan allows (mL/h; above 0, at most 2000; left out: 400, and 25 for each kg of weight). */
  readonly fastest?: number | string | null;
}

/**
 * From an energy target to a rate of the pump, and all that this rate gives in a day.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - Density, protein and water come from the pack; there is no default.
 * - Somebody who has eaten little for days starts lower: look at the risk of refeeding problems.
 *
 * @returns Everything follows from the rate that the pump can be set to; mL a day, mL an hour, kcal, protein g, water from feed mL, water in all mL, water still to give mL; null when energytarget is blank; or a SheetError with its sentence.
 */
export const feedPlan: NamedFunction<FeedPlanArguments, readonly [mLADay: number | null, mLAnHour: number | null, kcal: number | null, proteinG: number | null, waterFromFeedML: number | null, waterInAllML: number | null, waterStillToGiveML: number | null]> = named("FEEDPLAN");

/** Arguments of `feedGives`. */
export interface FeedGivesArguments {
  /** Feed given in a day (mL; above 0, at most 20000). */
  readonly volume: number | string | null;
  /** Energy of the feed, from the pack (kcal/mL; at least 0.1, at most 3). */
  readonly density: number | string;
  /** Protein of the feed, from the pack; 0: not worked out (g/L; at least 0, at most 500). */
  readonly proteinperlitre: number | string;
  /** Water in the feed, from the pack: 85 for 85% (%; at least 40, at most 100). */
  readonly waterpercent: number | string;
  /** Weight (kg; at least 0.3, at most 400). */
  readonly weight: number | string;
  /** Water given as flushes in a day (mL; at least 0, at most 20000; left out: 0). */
  readonly flush?: number | string | null;
}

/**
 * What the feed now running gives in a day, in all and for each kg of weight.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - What was ordered is not always what was given: enter what was given.
 * - An old weight gives old figures.
 *
 * @returns What the feed and the flushes give in a day; kcal, kcal per kg, protein g, protein g per kg, water mL, water mL per kg; null when volume is blank; or a SheetError with its sentence.
 */
export const feedGives: NamedFunction<FeedGivesArguments, readonly [kcal: number | null, kcalPerKg: number | null, proteinG: number | null, proteinGPerKg: number | null, waterML: number | null, waterMLPerKg: number | null]> = named("FEEDGIVES");

/** Arguments of `pumpRate`. */
export interface PumpRateArguments {
  /** Feed to be given (mL; above 0, at most 20000). */
  readonly volume: number | string | null;
  /** Hours in which it is to run (hours; above 0, at most 24). */
  readonly hours: number | string;
  /** Step of the pump (mL/h; above 0, at most 100; left out: 1). */
  readonly step?: number | string | null;
  /** Highest rate for this person (mL/h; above 0, at most 2000; left out: none; a rate above 400 is then refused). */
  readonly cap?: number | string | null;
}

/**
 * Rate of the pump that gives a volume in so many hours, to the pump's own step.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - Rounding changes what is given: the rate times the hours is what runs in.
 * - Into the bowel rates go up slowly and only as the team orders.
 *
 * @returns A rate that the pump can be set to; mL an hour; null when volume is blank; or a SheetError with its sentence.
 */
export const pumpRate: NamedFunction<PumpRateArguments, number | null> = named("PUMPRATE");

/** Arguments of `bolusPlan`. */
export interface BolusPlanArguments {
  /** Feed to be given in a day (mL; above 0, at most 20000). */
  readonly volume: number | string | null;
  /** Largest bolus that this person takes (mL; above 0, at most 20000). */
  readonly largest: number | string;
}

/**
 * The least number of equal bolus feeds in a day, none above the largest that is taken.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - No bolus into the bowel: never through a GJ or J tube.
 * - More and smaller feeds if there is vomiting, pain or leaking.
 *
 * @returns Equal feeds; feeds a day, mL each; null when volume is blank; or a SheetError with its sentence.
 */
export const bolusPlan: NamedFunction<BolusPlanArguments, readonly [feedsADay: number | null, mLEach: number | null]> = named("BOLUSPLAN");

/** Arguments of `dropRate`. */
export interface DropRateArguments {
  /** Feed to run in (mL; above 0, at most 20000). */
  readonly volume: number | string | null;
  /** In so many minutes (minutes; above 0, at most 1440). */
  readonly minutes: number | string;
  /** Drops that make 1 mL, from the pack of the giving set (drops; above 0, at most 100). */
  readonly dropspermillilitre: number | string;
}

/**
 * Drops a minute that let a volume of feed run in by gravity in so many minutes.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - The pack decides how many drops make a mL: a wrong figure is a wrong rate by a third or more.
 * - Thick feed drips otherwise than thin; count again after some minutes.
 * - Nobody is left alone with feed running by gravity unless the plan says so.
 *
 * @returns Drops to count in a minute; drops a minute; null when volume is blank; or a SheetError with its sentence.
 */
export const dropRate: NamedFunction<DropRateArguments, number | null> = named("DROPRATE");

/** Arguments of `flushTotal`. */
export interface FlushTotalArguments {
  /** Routine flushes in a day (whole number, at least 0, at most 100). */
  readonly routine: number | string | null;
  /** Water in each routine flush (mL; at least 0, at most 20000). */
  readonly volume: number | string;
  /** Rounds of medicines in a day (whole number, at least 0, at most 50; left out: 0). */
  readonly rounds?: number | string | null;
  /** Medicines in each round (whole number, at least 0, at most 50; left out: 1). */
  readonly drugs?: number | string | null;
  /** Water before and again after each round (mL; above 0, at most 1000; left out: needed when rounds are given). */
  readonly around?: number | string | null;
  /** Water between two medicines of a round (mL; at least 0, at most 20000; left out: 0). */
  readonly between?: number | string | null;
}

/**
 * Water that flushes add up to in a day: routine ones, and those round medicines.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - Flushes count towards the day's fluid.
 * - Water in which a medicine is dissolved is not counted here.
 *
 * @returns Water from flushes; mL a day; null when routine is blank; or a SheetError with its sentence.
 */
export const flushTotal: NamedFunction<FlushTotalArguments, number | null> = named("FLUSHTOTAL");

/** Arguments of `waterGap`. */
export interface WaterGapArguments {
  /** Fluid to be given in a day (mL; above 0, at most 20000). */
  readonly goal: number | string | null;
  /** Feed given in a day (mL; at least 0, at most 20000). */
  readonly feed: number | string;
  /** Water in the feed, from the pack: 85 for 85% (%; at least 40, at most 100). null: 0. */
  readonly waterpercent: number | string | null;
  /** Water given as flushes in a day (mL; at least 0, at most 20000; left out: 0). */
  readonly flush?: number | string | null;
  /** Other fluid in a day: drinks, medicines, drips (mL; at least 0, at most 20000; left out: 0). */
  readonly other?: number | string | null;
}

/**
 * Water still to give in a day: the goal less the water in feed, flushes and all else.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - Too much water does harm too: not for heart or kidney disease, or a fluid limit.
 * - A blank flush or other counts as none: enter what was given.
 *
 * @returns Negative: the goal is passed; mL a day; null when goal is blank; or a SheetError with its sentence.
 */
export const waterGap: NamedFunction<WaterGapArguments, number | null> = named("WATERGAP");

/** Arguments of `feedSteps`. */
export interface FeedStepsArguments {
  /** First rate (mL/h; above 0, at most 2000). */
  readonly start: number | string | null;
  /** How much more at each step (mL/h; above 0, at most 2000). */
  readonly step: number | string;
  /** Hours from one step to the next (hours; above 0, at most 168). */
  readonly everyhours: number | string;
  /** Rate to be reached (mL/h; above 0, at most 2000). */
  readonly goal: number | string;
}

/**
 * A table of rising rates, from the start to the goal.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - A step is taken only if the one before was well borne.
 * - Somebody who has eaten little for days starts lower and slower: look at the risk of refeeding problems.
 *
 * @returns A row a step; the last row is the goal; hour, mL an hour, mL given by then; null when start is blank; or a SheetError with its sentence.
 */
export const feedSteps: NamedFunction<FeedStepsArguments, readonly (readonly [hour: number | null, mLAnHour: number | null, mLGivenByThen: number | null])[] | null> = named("FEEDSTEPS");

/** Arguments of `catchupRate`. */
export interface CatchupRateArguments {
  /** Feed to be given in the day (mL; above 0, at most 20000). */
  readonly goal: number | string | null;
  /** Feed given so far (mL; at least 0, at most 20000). */
  readonly given: number | string;
  /** Hours left of the day's feeding (hours; above 0, at most 24). */
  readonly hoursleft: number | string;
  /** Highest rate, set by the dietitian for this person (mL/h; above 0, at most 2000). */
  readonly cap: number | string;
}

/**
 * Rate that would still give the day's volume after a break, never above this person's cap.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - Not overnight unattended, not into the bowel, not for children, unless the dietitian sets it.
 * - At the cap the day's volume is not reached.
 *
 * @returns Never below 0 or above the cap; mL an hour; null when goal is blank; or a SheetError with its sentence.
 */
export const catchupRate: NamedFunction<CatchupRateArguments, number | null> = named("CATCHUPRATE");

/** Arguments of `hangFills`. */
export interface HangFillsArguments {
  /** Rate of the pump (mL/h; above 0, at most 2000). */
  readonly rate: number | string | null;
  /** Hours that the feed runs in a day (hours; above 0, at most 24). */
  readonly hours: number | string;
  /** Hours that a fill may hang, as your service has set it for this kind of feed (hours; above 0, at most 48). */
  readonly limit: number | string;
}

/**
 * How often a container is filled anew, so that no feed hangs longer than it may.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - The clinic sets the limit for each kind of feed; warm rooms and open feeds shorten it.
 * - Giving sets have limits of their own.
 *
 * @returns Fills in a day and the largest of them; fills, mL each at most; null when rate is blank; or a SheetError with its sentence.
 */
export const hangFills: NamedFunction<HangFillsArguments, readonly [fills: number | null, mLEachAtMost: number | null]> = named("HANGFILLS");

/** Arguments of `refeedingRisk`. */
export interface RefeedingRiskArguments {
  /** Age (years; at least 0, at most 120). null: not known. */
  readonly age: number | string | null;
  /** Body mass index (kg/m2; at least 5, at most 150). null: not known. */
  readonly bmi: number | string | null;
  /** Weight lost without wanting to in the last 3 to 6 months: 15 for 15%; negative: gained (%; not between 0 and 1, at most 100). null: not known. */
  readonly losspercent: number | string | null;
  /** Days with little or no intake (days; at least 0, at most 3650). null: not known. */
  readonly dayslittle: number | string | null;
  /** Potassium, phosphate or magnesium low before feeding? yes, no or not known (left out: not known). */
  readonly lowelectrolytes?: number | string | boolean | null;
  /** Alcohol misuse, or insulin, chemotherapy, antacids or diuretics? yes, no or not known (left out: not known). */
  readonly history?: number | string | boolean | null;
}

/**
 * Which of NICE's criteria for the risk of refeeding problems an adult meets.
 *
 * - A starting point for a dietitian: the figures do not know the illness.
 * - Criteria not met is not a statement that feeding is without risk.
 * - Adults only: children have other criteria.
 * - At risk: a dietitian plans a slow start, with blood tests.
 * - High or very high: a dietitian and a doctor plan the start, with blood tests, before any feed.
 *
 * @returns very high, high, at risk, criteria not met, incomplete or adults only; or a SheetError with its sentence.
 */
export const refeedingRisk: NamedFunction<RefeedingRiskArguments, string> = named("REFEEDINGRISK");

/** Arguments of `cameOut`. */
export interface CameOutArguments {
  /** When the opening was made; closed and made again: the new date (date). null: not known. */
  readonly stomamade: Day | null;
  /** Today, or the day that the page is for (date). null: not known. */
  readonly asof: Day | null;
  /** How it is held inside: balloon, bumper, or another word of the list. null: not known. */
  readonly retention: number | string | boolean | null;
  /** Where the feed ends: G stomach, GJ bowel through the stomach, J bowel. null: not known. */
  readonly access: number | string | boolean | null;
  /** Is this still the first tube? yes, no or not known (left out: not known). */
  readonly firsttube?: number | string | boolean | null;
  /** Slow healing (malnutrition, ascites, steroids, immune suppression)? yes, no or not known (left out: not known). */
  readonly slow?: number | string | boolean | null;
  /** Weeks below which an opening is immature (weeks; at least 1, at most 104; left out: 6). */
  readonly immature?: number | string | null;
  /** Weeks from which an opening counts as mature (weeks; at least 2, at most 104; left out: 12). */
  readonly mature?: number | string | null;
  /** Number to call, as text (left out: the number on the emergency card). */
  readonly phone?: number | string | boolean | null;
}

/**
 * What to do now if this person's tube comes out, in sentences for a hand-out.
 *
 * - A template for trained staff and for hand-outs: assess it under your service's own rules before use.
 * - Services differ: some teach families to hold even a new opening. This person's own written plan decides.
 * - Half out, longer than usual, or turned: the same as out. Do not push it back.
 * - Print it again after every change: weeks are counted for the day that stands in it.
 *
 * @returns A paragraph; a blank or unreadable argument gives the hospital; or a SheetError with its sentence.
 */
export const cameOut: NamedFunction<CameOutArguments, string> = named("CAMEOUT");

/** Arguments of `plainWords`. */
export interface PlainWordsArguments {
  /** How it is held inside: balloon, bumper, or another word of the list. null: not known. */
  readonly retention: number | string | boolean | null;
  /** Size, as in FRTOMM (Fr; above 0, at most 60). null: not known. */
  readonly size: number | string | null;
  /** Length of a low-profile tube (cm; above 0, at most 10; left out: not written down). */
  readonly length?: number | string | null;
  /** Water in the balloon, as agreed for this person (mL; above 0, at most 60; left out: not written down). */
  readonly volume?: number | string | null;
  /** When the next change is planned (date; left out: not written down). */
  readonly due?: Day | null;
  /** Where the feed ends: G stomach, GJ bowel through the stomach, J bowel (left out: not known). */
  readonly access?: number | string | boolean | null;
  /** What is seen outside (long or low-profile; left out: not known). */
  readonly shape?: number | string | null;
  /** Today, or the day that the page is for: the next change must lie behind it (date; left out: not compared). */
  readonly asof?: Day | null;
}

/**
 * The tube explained to the person who lives with it, in a short paragraph.
 *
 * - For reading together, not for sending: add the number to call and hand over the sheet for a tube that comes out.
 * - The figures are those written down; compare them with the tube before you print.
 * - Only water in a balloon, never more than the label says.
 *
 * @returns A paragraph that ends with what is not written down; or a SheetError with its sentence.
 */
export const plainWords: NamedFunction<PlainWordsArguments, string> = named("PLAINWORDS");
