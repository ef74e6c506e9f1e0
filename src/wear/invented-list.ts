/** An invented clinic's list for the examples of this family, and nobody's: whose device, days in place, did it fail. */
const devices = [
  ["P1", 40, "yes"],
  ["P1", 55, "yes"],
  ["P1", 62, "yes"],
  ["P1", 90, "no"],
  ["P2", 180, "no"],
  ["P2", 180, "no"],
  ["P2", 120, "no"],
  ["P3", 100, "yes"],
  ["P3", 180, "no"],
  ["P3", 150, "no"],
  ["P3", 30, "no"],
  ["P4", 180, "no"],
  ["P4", 160, "yes"],
  ["P4", 180, "no"],
  ["P5", 75, "yes"],
  ["P5", 130, "yes"],
  ["P5", 180, "no"],
  ["P6", 180, "no"],
  ["P6", 180, "no"],
  ["P6", 95, "yes"],
  ["P6", 20, "no"],
] as const;

/** Of one lot: half of them failed early. */
const ofOneLot = [
  [30, "yes"],
  [35, "yes"],
  [50, "yes"],
  [45, "yes"],
  [90, "no"],
  [60, "no"],
] as const;

// Marked as pure: functions.js has no examples, and its build drops what only they use.
export const invented = {
  ids: /* @__PURE__ */ devices.map(([id]) => [id]),
  days: /* @__PURE__ */ devices.map(([, days]) => [days]),
  failed: /* @__PURE__ */ devices.map(([, , failed]) => [failed]),
};

/** The same list in two lots, and a third behind it. */
const lotted = /* @__PURE__ */ devices
  .map(([, days, failed], i) => [i < 10 ? "A10" : "A11", days, failed] as const)
  .concat(/* @__PURE__ */ ofOneLot.map(([days, failed]) => ["B2291", days, failed] as const) as never);

export const inventedLots = {
  lots: /* @__PURE__ */ lotted.map(([lot]) => [lot]),
  days: /* @__PURE__ */ lotted.map(([, days]) => [days]),
  failed: /* @__PURE__ */ lotted.map(([, , failed]) => [failed]),
};
