import { count, figure, together } from "./pieces";

const percent = (share: number): string => `${Number((100 * share).toPrecision(2))}%`;

/** Lots watched. A signal is a reason to look, never a finding; no signal is never said to be good news. */
export const lotsWatched = {
  title: "Lots watched",
  signals: (lots: readonly string[]) => `Look at ${lots.length === 1 ? "this lot" : "these lots"}: ${together(lots)}.`,
  none: (n: number) =>
    n === 0
      ? "No lot has devices enough to be watched yet."
      : `No signal from ${count(n, "lot")}; that does not show that they are sound.`,
  columns: ["Lot", "Failed", "Expected", "Ratio (95% limits)", "Signal"] as readonly string[],
  seen: (seen: number, devices: number) => `${figure(seen)} of ${figure(devices)}`,
  expected: (n: number) => n.toFixed(1),
  ratio: (value: number, low: number, high: number) => `${value.toFixed(1)} (${low.toFixed(1)} to ${high.toFixed(1)})`,
  look: "look at this lot",
  noSignal: "no signal",
  how: (n: number, each: number) =>
    `${count(n, "lot")} with at least 4 devices looked at together, at a level of 5% in all (${percent(each)} each): expected by the age of its devices, from other devices of its kind. Looking now and then instead of always makes false signals rarer still.`,
  left: (small: number, notToTell: number, withoutLot: number, leftOut: number) =>
    `${[
      `${count(small, "lot")} with fewer than 4 devices cannot signal`,
      notToTell > 0 && `of ${count(notToTell, "lot")} too few others of the kind have failed to say what is expected`,
      `${count(withoutLot, "device")} without a lot count among the others`,
      leftOut > 0 && `${count(leftOut, "past device")} cannot be counted`,
    ]
      .filter((part) => part !== false)
      .join("; ")}.`,
  caution:
    "A signal is a reason to look at the lot, the water, the handling and the people, never a finding. Report a device without waiting for one.",
};
