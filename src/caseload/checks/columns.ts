/** Balloon checks: one row is a check. */
import type { CaseloadColumn } from "../column";
import { person } from "../identity";
import { date, forYouOnly, list, number, text } from "../typed";
import * as words from "../words";
import { deviceIn, deviceSteps } from "./device";
import { daysSinceFill, expectedMl, expectedSteps } from "./expected";
import { leftColumns } from "./left";
import { orderColumns } from "./order";
import { lossAWeek, lossMl, lowInARow, lowSteps, state, stateSteps } from "./states";

export const checkColumns: readonly CaseloadColumn[] = [
  text("ID", 11, "As in Tubes in use."),
  list("Access", words.accesses, 8, "Only for somebody with two devices."),
  date("Checked on", "Not after today, not before the device came in."),
  number("Out mL", [0, 60], "Water drawn out. 0 means that it was empty; not measured: leave it blank."),
  list("Looked", words.looks, 16, "What came out looked like.", {}, "ask"),
  number("Put in mL", [0, 60], "Water put back in. Never above the label."),
  forYouOnly(list("Water", words.waters, 13, "", {}, "ask")),
  forYouOnly(list("By", words.checkers, 9, "", {}, "ask")),
  forYouOnly(list("How known", words.howKnown, 10, "", {}, "ask")),
  forYouOnly(text("Note", 30, "No names.")),
  ...[deviceIn, daysSinceFill, expectedMl, lossMl, lossAWeek, state, lowInARow],
  ...[person, ...deviceSteps, ...orderColumns, ...expectedSteps, ...leftColumns, ...stateSteps, ...lowSteps],
];
