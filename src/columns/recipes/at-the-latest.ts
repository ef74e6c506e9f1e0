import { dateByKind, dateOfRow, dateProblem, settingsOf, type Interval } from "./by-kind";
import { balloonNeeds } from "./not-a-balloon";
import type { Recipe } from "./recipe";

const latest: Interval = (kind) => kind.latest;

export const atTheLatest: Recipe = {
  key: "atTheLatest",
  group: "Change",
  header: "At the latest",
  label: "At the latest",
  help: "The date by which each device must have been changed: last change plus the limit of its kind.",
  needs: [{ role: "last", optional: false }, ...balloonNeeds],
  needsKinds: true,
  functions: ["CHANGEDUE"],
  settings: (kinds) => settingsOf(kinds, latest),
  usesAsOf: false,
  usesDates: true,
  format: "d mmm yyyy",
  words: [],
  template: (slots, using) => dateByKind(slots, using, latest),
  earlier: ({ last, kind }, using) => dateByKind({ ...(last && { last }), ...(kind && { kind }) }, using, latest),
  answer: (row, using) => dateOfRow(row, using, latest),
  problem: (row, using) => dateProblem(row, using, latest),
};
