import { relativeWear } from "../maths/frailty";
import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { SheetError } from "../worksheet/error";
import { confidenceLevel, deviceColumns, lifeCautions } from "./devices";
import { invented } from "./invented-list";
import { frailtyInWords, ownedBy, unknownPerson, wearersOf } from "./people";

export const WEARRATIO = define(
  {
    name: "WEARRATIO",
    family: "Wear",
    summary: "How many times as fast as the clinic's mean person this one wears devices through, with limits.",
    params: { ...ownedBy(), ...deviceColumns(), level: confidenceLevel(0.9) },
    subject: ["id"],
    result: {
      shape: "row",
      kind: "number",
      columns: ["ratio", "low", "high"],
      help: "2 means: at each age twice the clinic's mean chance to fail",
      blank: "",
    },
    compute: ({ id, ids, days, failed, level }): string | SheetError | Row => {
      const wearers = wearersOf(ids, days, failed);
      if (wearers instanceof SheetError) return wearers;
      const person = wearers.places.get(id);
      if (person === undefined) return unknownPerson;
      const { value, low, high } = relativeWear(wearers.fit, person, level);
      return [value, low, high];
    },
  },
  documented && {
    details: `${frailtyInWords} Devices still in and devices changed as planned count as not failed.`,
    cautions: [
      ...lifeCautions,
      "Limits that contain 1 mean: not known to differ. That does not show that all are alike, only that it cannot be told.",
      "A high ratio is a question to ask (size, volume, fluid, place of the balloon, handling), not an answer.",
      "A person's own interval is set by those responsible, within the device's label.",
    ],
    evidence: "textbook",
    sources: [sources.frailty, sources.claytonKaldor, sources.noSource],
    examples: [
      {
        shows: "defined",
        args: { id: "P1", ...invented },
        gives: [[1.7546858823422, 0.8021677914299, 3.9577678181949]],
        within: 1e-5,
        source: "R 4.2.2: own marginal likelihood by optim for each spread, limits by pgamma and uniroot",
      },
      {
        shows: "range",
        args: { id: [["p2 "], [""], ["P9"]], ...invented },
        gives: [
          [0.65518578244191, 0.04602832269597, 1.21666537852969],
          ["", "", ""],
          [{ error: "#N/A" }, "", ""],
        ],
        within: 1e-5,
        source: "R 4.2.2: own marginal likelihood by optim for each spread, limits by pgamma and uniroot",
      },
      {
        shows: "blank",
        args: { id: "", ids: [["A"]], days: [[100]], failed: [["yes"]] },
        gives: [["", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { id: "A", ids: [["A"], [""]], days: [[100], [50]], failed: [["yes"], ["no"]] },
        gives: [[{ error: "#VALUE!" }, "", ""]],
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { id: "P1", ids: invented.ids.slice(3), days: invented.days.slice(3), failed: invented.failed.slice(3) },
        gives: [[{ error: "#N/A" }, "", ""]],
        source: sources.noSource,
      },
      {
        shows: "boundary",
        args: { id: "A", ids: [["A"]], days: [[100]], failed: [["yes"]] },
        gives: [[{ error: "#N/A" }, "", ""]],
        source: sources.catalogue,
      },
    ],
  },
);
