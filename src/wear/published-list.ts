/**
 * The published list that examples of this family count with: weeks in remission with 6-MP and with placebo, 21 people
 * each, and whether it ended in them. Freireich EJ and others, Blood 1963;21:699 (`sources.freireich`).
 */
const treatedWeeks = [6, 6, 6, 6, 7, 9, 10, 10, 11, 13, 16, 17, 19, 20, 22, 23, 25, 32, 32, 34, 35];
const treatedEnded = [1, 1, 1, 0, 1, 0, 1, 0, 0, 1, 1, 0, 0, 0, 1, 1, 0, 0, 0, 0, 0];
/** All of them ended. */
const placeboWeeks = [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23];

// Marked as pure: functions.js has no examples, and its build drops what only they use.
const column = <T>(values: readonly T[]): T[][] => values.map((value) => [value]);

export const treated = {
  days: /* @__PURE__ */ column(treatedWeeks),
  failed: /* @__PURE__ */ column(treatedEnded),
};

export const placebo = {
  days: /* @__PURE__ */ column(placeboWeeks),
  failed: /* @__PURE__ */ column(/* @__PURE__ */ placeboWeeks.map(() => 1)),
};

export const bothArms = {
  days: /* @__PURE__ */ column(/* @__PURE__ */ treatedWeeks.concat(placeboWeeks)),
  failed: /* @__PURE__ */ column(/* @__PURE__ */ treatedEnded.concat(/* @__PURE__ */ placeboWeeks.map(() => 1))),
  group: /* @__PURE__ */ column(
    /* @__PURE__ */ treatedWeeks.map(() => "6-MP").concat(/* @__PURE__ */ placeboWeeks.map(() => "placebo")),
  ),
};
