/** What each picture says in words, before it is drawn. Counts first, limits with every estimate, and no comparison with others. */
import type { WhyLeftOut } from "../../src/pictures/devices";
import { count, figure, rowList, together } from "./pieces";

const whole = (n: number): string => figure(Math.round(n));
const rate = (n: number): string => n.toFixed(n < 10 ? 1 : 0);
const percent = (share: number): string => `${Math.round(100 * share)}%`;
const between = (low: string, high: string): string => `${low} to ${high}`;

export const pictures = {
  noCaseload: "Pictures need a ready-made caseload with its list of changes.",
  noDevices: "No device stands in the caseload yet.",
  kind: "Kind of device",
  allKinds: "All kinds",
  period: "Period",
  periods: { "12": "Last 12 months", "24": "Last 24 months", all: "All" },
  by: "By",
  lengths: { month: "month", quarter: "quarter" },
  figures: "The figures",
  copy: "Copy picture",
  copied: "Copied.",
  notCopied: "This program does not let a page copy a picture. Save it instead.",
  save: "Save picture",
  print: "Print these pictures",
  printTitle: "Pictures of the caseload",
  leftOut: (n: number) => `${count(n, "row")} cannot be counted:`,
  whyLeftOut: {
    "no ID": "no ID",
    "dates missing or wrong": "dates missing or wrong",
    "reason missing or not known": "no reason, or one that the settings do not have",
    "no day since when": "away, and no day since when",
  } satisfies Record<WhyLeftOut, string>,
  uncounted: (n: number) =>
    `${count(n, "past device")} cannot be counted (named below), of any kind: there may have been more.`,
  leftOutOf: { changes: "Changes", tubes: "Tubes in use" },
  leftOutLine: (sheet: string, why: string, rows: readonly number[]) => `${sheet}, ${rowList(rows)}: ${why}.`,
  tooFew: (failures: number, devices: number) =>
    `Too few to say: ${count(failures, "failure")} of ${count(devices, "device")}; at least 8 failures of 20 devices are needed.`,
  caution:
    "How long others lasted does not show that the tube in place is sound. Nothing here is a reason to change later than agreed or than the label allows.",

  due: {
    title: "Changes due by month",
    sentence: (past: number, first: number, month: string, without: number) => {
      const parts = [
        past > 0 && `${count(past, "change")} ${past === 1 ? "is" : "are"} past ${past === 1 ? "its" : "their"} day`,
        `${first === 0 ? "none comes" : first === 1 ? "1 comes" : `${first} come`} due in the rest of ${month}`,
        without > 0 && `${count(without, "tube")} ${without === 1 ? "has" : "have"} no day`,
      ].filter((part) => part !== false);
      return `${together(parts)}.`.replace(/^./, (letter) => letter.toUpperCase());
    },
    forecast: (n: number, month: string) =>
      `Beside them, ${count(n, "unplanned change")} or fewer would come in ${month} in nine cases of ten, if devices last as they did so far.`,
    noForecast: (failures: number, devices: number) =>
      `How many unplanned ones will come cannot be said: ${count(failures, "failure")} of ${count(devices, "device")} are too few.`,
    columns: ["When", "Due or booked", "Unplanned, nine months in ten"],
    past: "past",
    later: "later",
    without: "no day",
    legend: { due: "due or booked", past: "past its day", without: "no day known", unplanned: "+ unplanned, at most" },
  },
  life: {
    title: "How long devices have lasted",
    half: (day: number, low: string, high: string) =>
      `Half of them lasted ${whole(day)} days (${between(low, high)}, 95% limits)`,
    quarter: (day: number, low: string, high: string) =>
      `Three quarters lasted ${whole(day)} days (${between(low, high)}, 95% limits); half has not been reached`,
    neither: "Fewer than a quarter have failed",
    counts: (failures: number, devices: number, stillIn: number) =>
      `${failures} of ${devices} failed, ${stillIn} ${stillIn === 1 ? "is" : "are"} still in.`,
    open: "not reached",
    day: (day: number) => whole(day),
    cut: (day: number, watched: number) => `Cut at day ${whole(day)}: after it fewer than ${watched} are watched.`,
    columns: ["Day", "Still watched", "Still working", "95% limits"],
    days: "days in place",
    watched: "watched",
    share: percent,
  },
  unplanned: {
    title: "Unplanned changes for each 1,000 tube-days",
    sentence: (events: number, tubeDays: number, value: number, low: number, high: number) =>
      `${count(events, "unplanned change")} in ${count(tubeDays, "tube-day")}: ${rate(value)} for each 1,000 (${between(rate(low), rate(high))}, 95% limits).`,
    noSignal: "No period stands out from what chance alone would make.",
    signal: (periods: readonly string[], isAbove: boolean) =>
      `${together(periods)} ${periods.length === 1 ? "lies" : "lie"} ${isAbove ? "above" : "below"} what chance alone would make: ask why.`,
    fewDays: (periods: number) =>
      `${count(periods, "period")} with fewer than 750 tube-days: a rate says little there.`,
    nothing: "No tube-day lies in this period.",
    columns: ["Period", "Unplanned", "Tube-days", "For each 1,000", "95% limits", "Chance alone"],
    rate,
  },
  reasons: {
    title: "Why devices came out unplanned",
    sentence: (unplanned: number, planned: number) =>
      `${count(unplanned, "device")} came out unplanned, ${figure(planned)} as planned or for another reason.`,
    first: (reason: string, n: number) => `Most often: ${reason} (${n}).`,
    none: "No unplanned change is written down in this period.",
    columns: ["Reason", "Devices"],
  },
  wear: {
    title: "Who wears devices through fast",
    sentence: (fast: number, told: number, people: number) =>
      fast === 0
        ? `None of the ${count(told, "person", "people")} with two failures or more is known to wear devices through faster than the mean; of ${count(people, "person", "people")} in all.`
        : `${count(fast, "person wears", "people wear")} devices through faster than the clinic’s mean: their limits lie above 1.`,
    nobody: "Nobody has had two failures yet: nobody’s own wear can be told.",
    all: "Identifiers stand here so that the person can be asked; leave this picture out of what you hand round.",
    columns: ["ID", "Failed of", "Wear (90% limits)", "One in ten fails by day (90% limits)"],
    failed: (failures: number, devices: number) => `${failures} of ${devices}`,
    times: (value: number, low: number, high: number) =>
      `${value.toFixed(1)} (${between(low.toFixed(1), high.toFixed(1))})`,
    days: (value: number, low: number, high: number) => `${whole(value)} (${between(whole(low), whole(high))})`,
    axis: "wear beside the clinic’s mean, which is 1",
    advice: (id: string, failures: number, devices: number, day: number) =>
      `${id}: ${failures} of ${devices} failed; one in ten would by day ${whole(day)}. Only ever a reason to change earlier than agreed.`,
  },
};
