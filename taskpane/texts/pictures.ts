/** What each picture says in words, before it is drawn. Counts first, limits with every estimate, and no comparison with others. */
import type { WhyLeftOut } from "../../src/pictures/devices";
import type { ListPart } from "../../src/pictures/own-columns";
import type { Meaning } from "../../src/pictures/own-devices";
import { LEAST_DEVICES, LEAST_FAILURES } from "../../src/wear/devices";
import { intervalAdvice } from "./interval-advice";
import { capital, count, figure, rowList, together } from "./pieces";

const whole = (n: number): string => figure(Math.round(n));
const rate = (n: number): string => n.toFixed(n < 10 ? 1 : 0);
const percent = (share: number): string => `${Math.round(100 * share)}%`;
const between = (low: string, high: string): string => `${low} to ${high}`;
const one = (n: number): string => n.toFixed(1);
/** "12 in 100 such comparisons": a chance in words. */
const byChance = (p: number): string =>
  p < 0.001
    ? "in fewer than 1 of 1,000 such comparisons"
    : p < 0.01
      ? "in fewer than 1 of 100 such comparisons"
      : `in ${Math.round(100 * p)} of 100 such comparisons`;

export const pictures = {
  noList: "No list was found here. Go to a sheet with a list of tubes, or set up a caseload.",
  from1904: "This workbook counts its days from 1904: its dates would come out four years wrong.",
  noPutIn: (list: string) =>
    `${capital(list)} has no column for the day on which each tube was put in: nothing can be counted. Name one ‘Last change’, or ‘Device in’.`,
  noDevices: "No device with a usable day stands here yet.",
  questions: "What do you want to know?",
  names: {
    due: "What comes due?",
    life: "How long do they last?",
    unplanned: "What is our unplanned rate?",
    reasons: "Why do they come out?",
    intervals: "Planned, or before?",
    wear: "Who wears them fast?",
    checks: "What do checks find?",
    person: "One person",
  },
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
  put: "Put in the sheet",
  putAgain: "Put in once more",
  putAs: (sheet: string, hasChart: boolean) =>
    `The sheet ‘${sheet}’ is there, behind the last one${hasChart ? "; its chart is drawn by Excel and in the saved file, not in this page’s grid" : ""}.`,
  sheets: {
    due: "Due by month",
    life: "Lives",
    unplanned: "Unplanned changes",
    reasons: "Reasons",
    intervals: "Intervals",
    wear: "Wear by person",
    checks: "Checks by person",
    person: "One person",
  },
  print: "Print these pictures",
  printOne: "Print this picture",
  printTitle: "Pictures of the caseload",
  leftOut: (n: number) => `${count(n, "row")} cannot be counted:`,
  whyLeftOut: {
    "no ID": "no ID",
    "dates missing or wrong": "dates missing or wrong",
    "reason missing or not known": "no reason, or one that is not known",
    "no day since when": "away, and no day since when",
    "a later row of the same person": "not out by this list, though a later row of the same person is in",
  } satisfies Record<WhyLeftOut, string>,
  uncounted: (n: number) =>
    `${count(n, "past device")} cannot be counted (named below), of any kind: there may have been more.`,
  leftOutOf: { changes: "Changes", tubes: "Tubes in use" },
  leftOutOfOwn: { changes: "Came out", tubes: "Still in" },
  leftOutLine: (sheet: string, why: string, rows: readonly number[]) => `${sheet}, ${rowList(rows)}: ${why}.`,
  tooFew: (failures: number, devices: number) =>
    `Too few to say: ${count(failures, "failure")} of ${count(devices, "device")}; at least ${LEAST_FAILURES} failures of ${LEAST_DEVICES} devices are needed.`,
  caution:
    "How long others lasted does not show that the tube in place is sound. Nothing here is a reason to change later than agreed or than the label allows.",

  own: {
    read: (list: string, found: readonly string[]) => `Read from the ${list}: ${found.join("; ")}.`,
    part: {
      person: "person",
      kind: "kind",
      shape: "shape",
      lot: "lot",
      putIn: "put in",
      cameOut: "came out",
      reason: "why",
      due: "due",
    } satisfies Record<ListPart, string>,
    pair: (part: string, header: string) => `${part} ‘${header}’`,
    /** What cannot be told without a column. */
    without: {
      person:
        "No column names the person (‘ID’): each row counts as a person of its own, and nobody’s wear can be told.",
      cameOut: "No column says when a tube came out (‘Came out’): every row counts as still in.",
      reason: "No column says why a tube came out (‘Reason’): those that came out cannot be counted.",
      due: "No column says when the change is due (‘Change due’; ‘My list’ adds it), nor after how many months (‘Change every months’).",
    },
    reasons: "What do these reasons mean?",
    reasonsLead: "Their rows are counted once you have said it. Kept until another workbook is opened.",
    rowsOf: (word: string, n: number) => `${word} (${count(n, "row")})`,
    open: "not said",
    meanings: {
      failed: "the device failed",
      unplanned: "unplanned, not the device",
      planned: "planned, or no longer needed",
    } satisfies Record<Meaning, string>,
    noChecks: "This list holds no balloon checks day by day: they need a ready-made caseload.",
  },

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
    compare: "Compare",
    ways: { none: "all together", kind: "by kind", shape: "by shape" },
    group: (name: string, said: string) => `${capital(name)}: ${said}`,
    groupColumn: "Group",
    none: (by: string) =>
      `Too few to compare by ${by}: two groups with at least ${LEAST_FAILURES} failures of ${LEAST_DEVICES} devices each are needed.`,
    small: (groups: readonly string[]) => `Too small to compare: ${together(groups)}.`,
    counted: (name: string, failures: number, devices: number) => `${name} (${failures} of ${devices} failed)`,
    differ: (p: number) =>
      `A difference as large as this would come by chance alone ${byChance(p)} (log-rank): they last unlike. Why cannot be told from it: who gets which is no accident.`,
    alike: (p: number) =>
      `A difference as large as this would come by chance alone ${byChance(p)} (log-rank): no difference is known, which does not show that there is none.`,
    noTest: "Failures on one day only: they cannot be compared.",
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
    columns: [
      "Period",
      "Unplanned",
      "Tube-days",
      "For each 1,000",
      "Low (95%)",
      "High (95%)",
      "Chance from",
      "Chance to",
    ],
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
  intervals: {
    title: "The planned interval, and what comes before it",
    agreed: (days: number, tubes: number) =>
      `Agreed now: ${whole(days)} days (median of ${count(tubes, "tube")} with a date).`,
    noneAgreed: "No interval is agreed for any of them in this list.",
    failing: (share: number, low: string, high: string) =>
      `${percent(share)} fail before it (${between(low, high)}, 90% limits).`,
    notKnown: "not known",
    planned: (n: number, middle: number) =>
      `${count(n, "device")} came out as planned or for another reason, after ${whole(middle)} days (median)`,
    late: (n: number) => (n === 0 ? ", none later than agreed." : `, ${figure(n)} later than agreed.`),
    cost: "An unplanned change costs you as much as",
    costs: {
      none: "not said",
      "2": "2 planned ones",
      "3": "3 planned ones",
      "5": "5 planned ones",
      "10": "10 planned ones",
    },
    costHint: "Visits and hours, as you count them. Only this ratio matters.",
    earlier: (day: number, low: string, high: string) =>
      `Then a change at day ${whole(day)} (${between(low, high)}, 90% limits) would cost least, earlier than agreed: something to discuss, within the label.`,
    notEarlier: intervalAdvice.notEarlier,
    never:
      "No planned change pays in these data: devices fail at any age alike. The agreed interval and the label stand.",
    columns: [
      "Changed after",
      "Fail before it",
      "90% limits",
      "Planned a year, 100 people",
      "90% limits",
      "Unplanned a year, 100 people",
      "90% limits",
    ],
    months: (n: number) => count(n, "month"),
    share: percent,
    one,
    limits: between,
    agreedMark: "agreed",
    days: "days in place",
    legend: { planned: "came out as planned", failed: "failed" },
    bars: "devices",
  },
  wear: {
    title: "Who wears devices through fast",
    sentence: (fast: number, told: number, people: number) =>
      fast === 0
        ? `None of the ${count(told, "person", "people")} with two failures or more is known to wear devices through faster than the mean; of ${count(people, "person", "people")} in all.`
        : `${count(fast, "person wears", "people wear")} devices through faster than the clinic’s mean: their limits lie above 1.`,
    nobody: "Nobody has had two failures yet: nobody’s own wear can be told.",
    noPerson: "No column names the person: nobody’s wear can be told.",
    drawn: (drawn: number, of: number) => `The ${figure(drawn)} fastest of ${figure(of)} are drawn.`,
    all: "Identifiers stand here so that the person can be asked; leave this picture out of what you hand round.",
    columns: ["ID", "Failed of", "Wear", "90% limits", "Agreed days", "One in ten fails by day (90% limits)"],
    failed: (failures: number, devices: number) => `${failures} of ${devices}`,
    times: (value: number) => one(value),
    limits: (low: number, high: number) => between(one(low), one(high)),
    noAgreed: "none",
    days: (value: number, low: number, high: number) => `${whole(value)} (${between(whole(low), whole(high))})`,
    notEarlier: "not earlier than agreed",
    axis: "wear beside the clinic’s mean, which is 1",
    of: (id: string, said: string) => `${id}: ${said}`,
  },
  checks: {
    title: "What was missing at balloon checks",
    sentence: (low: number, people: number) =>
      low === 0
        ? `By the latest check of each of ${count(people, "person", "people")} no balloon is low.`
        : `By the latest check ${count(low, "balloon is", "balloons are")} low, of ${count(people, "person", "people")} checked.`,
    notTold: (n: number) =>
      `${count(n, "latest check")} cannot tell: not measured, or figures that do not go together.`,
    none: "No check is written down in this period.",
    drawn: (drawn: number, of: number) =>
      `${figure(drawn)} of ${figure(of)} are drawn, those that lost most first; all stand in the figures.`,
    line: "Dashed: the clinic’s limit. Hollow: not measured. At the top: three times the limit or more.",
    columns: ["ID", "Checks", "Latest", "Missing mL", "Limit mL", "State"],
    notMeasured: "not measured",
    noLimit: "not known",
    ml: (n: number) => `${n.toFixed(1)} mL`,
  },
  person: {
    title: "One person’s devices",
    named: (id: string) => `Devices of ${id}`,
    id: "ID",
    idHint: "As in the list.",
    unknown: (id: string) => `${id} has no device that can be counted here.`,
    show: "Show",
    bar: (days: number, ended: string) => `${count(days, "day")}, ${ended}`,
    ask: "Type an ID to see one person’s devices in a row.",
    sentence: (devices: number, failures: number, unplanned: number) =>
      `${count(devices, "device")}: ${figure(failures)} failed, ${figure(unplanned)} came out unplanned for another reason.`,
    gaps: (n: number) => `${count(n, "gap")} in what is written down (hatched).`,
    columns: ["In", "Out", "Days", "Kind", "How it ended"],
    ended: {
      failed: "failed",
      unplanned: "unplanned",
      planned: "planned or other",
      in: "in now",
      away: "in when last seen",
    },
    because: (ended: string, reason: string) => (reason === "" ? ended : `${ended}: ${reason}`),
  },
};
