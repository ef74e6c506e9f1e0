/** Tubes in use: one row is a device. States stand left beside the identifier; columns for formulas stand last, hidden. */
import type { CaseloadColumn } from "../column";
import { key, person } from "../identity";
import { shown } from "../shown";
import { date, forYouOnly, greyWhen, list, number, text } from "../typed";
import * as words from "../words";
import { balloon, balloonSteps, checkDue } from "./balloon";
import { bookingColumns } from "./booking";
import { atTheLatest, change, changeDue, changeSteps, daysLeft } from "./change";
import { fit, fitSteps, mark } from "./fit";
import { kindColumns } from "./kind";
import { liveColumns } from "./live";
import { gapColumns, missing } from "./missing";
import { lastCheck, lossMl, newestSteps, outMl, putInMl } from "./newest";
import { age, firstTube, sizeMm, tract } from "./opening";
import { dayColumns, rowColumns, wordColumns } from "./read";
import { reviewColumns } from "./review";
import { behind, keyColumns, steps, toDo, urgency } from "./to-do/columns";

const grouped = (group: string, columns: readonly CaseloadColumn[], onlyWith?: CaseloadColumn["onlyWith"]) =>
  columns.map((column): CaseloadColumn => ({ ...column, group, ...(onlyWith && !column.onlyWith && { onlyWith }) }));

const greyWithoutBalloon = { rules: greyWhen(shown(`[@Held]<>"balloon"`)) };
const greyUnlessLong = { rules: greyWhen(shown(`[@Form]="low-profile"`)) };
const greyUnlessLow = { rules: greyWhen(shown(`[@Form]="long"`)) };

const states = grouped("States", [
  text("ID", 11, "The clinic's own identifier, no name. ID and Access together are one row."),
  toDo,
  list("Status", words.statuses, 15, "Only active rows are counted and reminded of."),
  changeDue,
  atTheLatest,
  daysLeft,
  change,
  date("Booked for", "The day booked for the change.", {}, { mayBeAhead: true }),
  tract,
  balloon,
  missing,
]);

const personColumns = grouped("1 Person", [
  date("Born", "For privacy the first of the month will do."),
  age,
  number("Weight kg", [0.4, 300], "Look at the day beside it.", {}, { format: "0.00" }),
  date("Weighed on", "The day of this weight."),
]);

const stoma = grouped("2 Stoma", [
  list(
    "Access",
    words.accesses,
    8,
    "Where the feed ends: G stomach, GJ bowel through the stomach, J straight in the bowel.",
  ),
  date("Stoma made", "The day the opening was made. Closed and made again: the new date."),
  forYouOnly(list("Placed by", words.placers, 12, "How it was placed says nothing about how it is held.", {}, "ask")),
  list(
    "Slow healing",
    words.yesNoNotKnown,
    11,
    "Steroids, ascites, malnutrition, immune suppression. Blank counts as not known.",
    {},
    "ask",
  ),
]);

const device = grouped("3 Device", [
  list("Held by", words.holds, 12, "What holds it inside, not how it was placed. In doubt: not known."),
  list("Known from", words.knownFrom, 11, "How this is known.", {}, "ask"),
  list("Shape", words.shapes, 11, "Long, or low-profile (flat on the skin)."),
  number("Size Fr", [5, 30], "As printed on the tube. Odd sizes exist."),
  sizeMm,
  number("Length cm", [0.5, 10], "Low-profile only, as printed.", greyUnlessLow),
  date("Device in", "The day this device was put in: the last change."),
  firstTube,
  text("Lot", 14, "As printed. Kept as text."),
  forYouOnly(text("Item", 16, "From the scan, or blank.")),
]);

const balloonColumns = grouped("4 Balloon", [
  number("Fill mL", [0.5, 30], "Agreed for this person, never above the label.", greyWithoutBalloon),
  number("Most mL", [0.5, 60], "The largest volume printed on the label.", greyWithoutBalloon),
  list("Checked by", words.checkedBy, 16, "Who checks the water.", greyWithoutBalloon, "ask"),
  lastCheck,
  outMl,
  putInMl,
  lossMl,
  checkDue,
]);

const fitColumns = grouped(
  "5 Fit",
  [
    number("Lying cm", [0.5, 10], "The opening, measured lying.", greyUnlessLow),
    number("Sitting cm", [0.5, 10], "The opening, measured sitting. Below lying: read again.", greyUnlessLow),
    date("Measured on", "The day of these measurements."),
    number("Weight then kg", [0.4, 300], "Weight on the day of measuring.", {}, { format: "0.00" }),
    number(
      "Mark then cm",
      [0, 30],
      "Long tubes: mark at the skin when it was put in, counted from the inner end.",
      greyUnlessLong,
    ),
    number("Mark now cm", [0, 30], "Long tubes: mark at the skin now.", greyUnlessLong),
    number("Play mm", [0, 60], "Long tubes: from the bolster to the skin.", greyUnlessLong, { format: "0" }),
    fit,
    mark,
  ],
  "fit",
);

const planOnly = { onlyWith: "plan" } as const;
const plan = grouped("6 Plan", [
  number(
    "Own interval months",
    [1, 60],
    "This person's own interval overrides the clinic's; who and why in Notes.",
    planOnly,
    {
      format: "0",
      isWhole: true,
    },
  ),
  date("Date set by placing team", "Overrides the clinic's interval and the own one.", planOnly, { mayBeAhead: true }),
  list("Changed by", words.changers, 15, "Who is to change it. GJ, J and bumper: never the carer."),
  list("Trained for tube out", words.trained, 16, "Name the trained in Notes, never patients.", planOnly, "ask"),
  list("Own tube-out plan", ["yes", "no"], 10, "Written and dated.", planOnly, "ask"),
  list(
    "Cannot wait",
    words.cannotWait,
    18,
    "What cannot be missed if the feed stops. Several: apart by commas.",
    planOnly,
    "ask",
  ),
  list("Turning", words.turning, 13, "GJ, J and stitched: never.", planOnly, "ask"),
]);

const spareOnly = { onlyWith: "spare" } as const;
const spare = grouped("7 Spare, site", [
  list("Spare at home", words.spares, 12, "Blank counts as not known."),
  number("Spare Fr", [5, 30], "As printed.", spareOnly),
  number("Spare cm", [0.5, 10], "Low-profile only.", spareOnly),
  text("Spare lot", 14, "For a recall. Kept as text.", spareOnly),
  date("Spare expires", "As printed; a month without a day ends with its last day.", spareOnly, { mayBeAhead: true }),
  list("Site", words.sites, 13, "How the site looked.", spareOnly, "ask"),
  date("Site seen on", "The day it was seen.", spareOnly),
  text("Notes", 40, "No names. A text never becomes a formula."),
]);

const status = grouped("8 Status", [
  date("Status since", "On hold or in hospital: since when. After the clinic's days To do asks."),
]);

export const tubeColumns: readonly CaseloadColumn[] = [
  ...states,
  ...personColumns,
  ...stoma,
  ...device,
  ...balloonColumns,
  ...fitColumns,
  ...plan,
  ...spare,
  ...status,
  ...[person, key, ...liveColumns, ...rowColumns, ...wordColumns, ...dayColumns],
  ...[...newestSteps, ...kindColumns, ...changeSteps, ...fitSteps, ...balloonSteps, ...gapColumns],
  ...[...reviewColumns, ...bookingColumns, ...steps, ...keyColumns, ...behind, urgency],
];
