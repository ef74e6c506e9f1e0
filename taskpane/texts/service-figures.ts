import { count, figure } from "./pieces";

const rate = (n: number): string => n.toFixed(n < 10 ? 1 : 0);
const times = (n: number): string => (Number.isFinite(n) ? n.toFixed(1) : "any number");

/** How the service does. Counts that could tell of single people are held back, and that is said. */
export const serviceFigures = {
  noCaseload: "Service figures need a ready-made caseload with its list of changes.",
  noPeriod: "No quarter is over yet in which a device was in.",
  period: "Period that is over",
  quarter: (first: string, last: string) => `${first} to ${last}`,
  year: (year: string) => `the year ${year}`,
  title: (period: string) => `Service figures, ${period}`,
  figures: "Figures",
  print: "Print the board page",
  board: (service: string) => (service === "" ? "Feeding tubes: board page" : `${service}: feeding tubes`),
  columns: (now: string, before: string) => ["", now, before] as readonly string[],
  rows: {
    people: "People with a tube",
    tubeDays: "Tube-days",
    planned: "Planned changes",
    unplanned: "Unplanned changes",
    rate: "Unplanned for each 1,000 tube-days (95% limits)",
    visits: "Unplanned changes with a visit",
    nights: "Nights in hospital after them",
  },
  under: (least: number) => `under ${least}`,
  heldBack: "not shown",
  noBefore: "–",
  value: figure,
  rate: (value: number, low: number, high: number) => `${rate(value)} (${rate(low)} to ${rate(high)})`,
  sentence: (period: string, unplanned: number, value: number, low: number, high: number) =>
    `In ${period} ${count(unplanned, "change was", "changes were")} unplanned: ${rate(value)} for each 1,000 tube-days (${rate(low)} to ${rate(high)}, 95% limits).`,
  tooFew: (period: string, least: number) =>
    `In ${period} fewer than ${least} changes were unplanned, or their number would give a smaller one away: no rate is shown.`,
  higher: (ratio: number, low: number, high: number) =>
    `That is more than in the period before: ${times(ratio)} times as often (${times(low)} to ${times(high)}). Ask why.`,
  lower: (ratio: number, low: number, high: number) =>
    `That is less than in the period before: ${times(ratio)} times as often (${times(low)} to ${times(high)}). Ask first whether every change was written down.`,
  alike: (ratio: number, low: number, high: number) =>
    `Beside the period before, ${times(ratio)} times as often (${times(low)} to ${times(high)}): chance alone may make such a difference.`,
  noComparison: "It is not compared with the period before: one of the two is not shown, or nobody had a tube then.",
  tables: {
    reasons: "Why devices came out unplanned",
    where: "Where unplanned changes were seen to",
    position: "How the position was confirmed",
  },
  rateTitle: "Unplanned changes for each 1,000 tube-days",
  tableColumns: ["", "Changes"] as readonly string[],
  rateColumns: ["Period", "Unplanned", "For each 1,000 (95% limits)"] as readonly string[],
  others: "Others, together",
  none: (least: number) => `No row has ${least} or more that can be shown.`,
  hidden: (least: number) =>
    `Counts under ${least} are not shown, nor those that would give one away, on this page or beside another.`,
  written: {
    where: (n: number) => `Where it was seen to is written for ${n === 10 ? "all" : `${n} of 10`} unplanned changes`,
    position: (n: number) => `how the position was confirmed, for ${n === 10 ? "all" : `${n} of 10`} changes`,
  },
  complete: (parts: readonly string[]) => (parts.length === 0 ? "" : `${parts.join("; ")}.`),
  uncounted: (n: number) =>
    n === 0 ? "" : `${count(n, "past device")} cannot be counted in any period: dates or reason missing or wrong.`,
  caution:
    "A rate is no better than the list behind it: what nobody wrote down makes it look good. Compare with your own earlier periods; services differ.",
};
