/** The last weekly checks of everybody whose balloon has no story: little is missing, as it is most weeks. */
import type { CaseloadRow } from "../rows";
import { chance } from "./random";

const SEED = 13;
const MOST_CHECKS = 5;

export function weeklyChecks(asOf: number, tubes: readonly CaseloadRow[], told: readonly CaseloadRow[]): CaseloadRow[] {
  const by = chance(SEED);
  const ownStory = new Set(told.map((row) => row.ID));
  return tubes
    .filter((tube) => tube.Status === "active" && typeof tube["Fill mL"] === "number" && !ownStory.has(tube.ID!))
    .filter((tube) => tube["Checked by"] !== "not arranged" && typeof tube["Device in"] === "number")
    .flatMap((tube) => {
      const fill = Number(tube["Fill mL"]);
      const byNurse = tube["Checked by"] === "nurse";
      const last = asOf - by.whole(0, 6);
      const days = Array.from({ length: MOST_CHECKS }, (_, i) => last - 7 * (MOST_CHECKS - 1 - i));
      return days
        .filter((day) => day >= Number(tube["Device in"]) + 7)
        .map((day, i, all) => ({
          ...{
            ID: tube.ID!,
            "Checked on": day,
            "Out mL": Math.round(10 * (fill - by.pick([0, 0.1, 0.1, 0.2, 0.3]))) / 10,
          },
          ...{ Looked: by.next() < 0.05 && i < all.length - 1 ? "cloudy" : "clear", "Put in mL": fill },
          ...{ Water: byNurse || by.next() < 0.8 ? "fresh" : "same put back", By: byNurse ? "nurse" : "carer" },
          "How known": byNurse ? "seen" : "phone",
        }));
    });
}
