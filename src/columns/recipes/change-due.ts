import { dateByKind, dateOfRow, dateProblem, settingsOf, type Interval } from "./by-kind";
import { balloonNeeds } from "./not-a-balloon";
import type { Recipe } from "./recipe";

const due: Interval = (kind) => kind.due;

export const changeDue: Recipe = {
  key: "changeDue",
  group: "Change",
  header: "Change due",
  label: "Change due",
  help: "The date on which each device is due for its change: last change plus the months of its kind.",
  needs: [{ role: "last", optional: false }, ...balloonNeeds],
  needsKinds: true,
  functions: ["CHANGEDUE"],
  settings: (kinds) => settingsOf(kinds, due),
  usesAsOf: false,
  usesDates: true,
  format: "d mmm yyyy",
  words: [],
  template: (slots, using) => dateByKind(slots, using, due),
  earlier: ({ last, kind }, using) => dateByKind({ ...(last && { last }), ...(kind && { kind }) }, using, due),
  answer: (row, using) => dateOfRow(row, using, due),
  problem: (row, using) => dateProblem(row, using, due),
};
