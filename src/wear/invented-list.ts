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

export const invented = {
  ids: devices.map(([id]) => [id]),
  days: devices.map(([, days]) => [days]),
  failed: devices.map(([, , failed]) => [failed]),
};

/** The same list in two lots, and a third behind it. */
export const inventedLots = {
  lots: [...devices.map((_, i) => [i < 10 ? "A10" : "A11"]), ...ofOneLot.map(() => ["B2291"])],
  days: [...invented.days, ...ofOneLot.map(([days]) => [days])],
  failed: [...invented.failed, ...ofOneLot.map(([, failed]) => [failed])],
};
