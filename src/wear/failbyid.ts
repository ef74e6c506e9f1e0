import { dayByWhich, relativeWear } from "../maths/frailty";
import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { SheetError } from "../worksheet/error";
import { number } from "../worksheet/parameters";
import { confidenceLevel, deviceColumns, lifeCautions } from "./devices";
import { invented } from "./invented-list";
import { frailtyInWords, ownedBy, unknownPerson, wearersOf } from "./people";

export const FAILBYID = define(
  {
    name: "FAILBYID",
    family: "Wear",
    summary: "Day by which a given share of this person's devices fails, from the person's own past and the clinic's.",
    params: {
      ...ownedBy(),
      ...deviceColumns(),
      risk: number("Share that may have failed by then: 0.1 is one in ten", { above: 0, below: 1 }),
      level: confidenceLevel(0.9),
    },
    subject: ["id"],
    result: {
      shape: "row",
      kind: "number",
      columns: ["days", "low", "high", "relative wear", "low", "high", "devices", "failures"],
      help: "Day with limits, the person's wear beside the clinic's mean with limits, and the counts behind them",
      blank: "",
    },
    compute: ({ id, ids, days, failed, risk, level }): string | SheetError | Row => {
      const wearers = wearersOf(ids, days, failed);
      if (wearers instanceof SheetError) return wearers;
      const person = wearers.places.get(id);
      if (person === undefined) return unknownPerson;
      const { fit } = wearers;
      const day = dayByWhich(fit, person, risk, level);
      const wear = relativeWear(fit, person, level);
      const counts = [fit.devices[person]!, fit.failures[person]!];
      return [day.value, day.low, day.high, wear.value, wear.low, wear.high, ...counts];
    },
  },
  documented && {
    details:
      `${frailtyInWords} The limits of the day are the same day at the limits of the person's wear. With fewer than 2 ` +
      "failures of their own the day is nearly the clinic's, not the person's.",
    cautions: [
      "Only ever a reason to change earlier than agreed, never later, and never past the device's label.",
      ...lifeCautions,
      "A risk smaller than one in the number of devices lies outside the data: only the model speaks there.",
      "A person's own interval is set by those responsible.",
    ],
    evidence: "textbook",
    sources: [sources.frailty, sources.claytonKaldor, sources.noSource],
    examples: [
      {
        shows: "defined",
        args: { id: "P1", ...invented, risk: 0.1 },
        gives: [
          [
            43.2657141565266, 26.7892608098265, 66.5210663383826, 1.7546858823422, 0.8021677914299, 3.9577678181949, 4,
            3,
          ],
        ],
        within: 1e-4,
        source: "R 4.2.2: own marginal likelihood by optim for each spread, limits by pgamma and uniroot",
      },
      {
        shows: "range",
        args: { id: [["p2 "], [""], ["P9"]], ...invented, risk: 0.1 },
        gives: [
          [
            76.2715461326897, 52.498419825524, 333.338439310958, 0.65518578244191, 0.04602832269597, 1.21666537852969,
            3, 0,
          ],
          ["", "", "", "", "", "", "", ""],
          [{ error: "#N/A" }, "", "", "", "", "", "", ""],
        ],
        within: 1e-4,
        source: "R 4.2.2: own marginal likelihood by optim for each spread, limits by pgamma and uniroot",
      },
      {
        shows: "blank",
        args: { id: "", ...invented, risk: 0.1 },
        gives: [["", "", "", "", "", "", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { id: "P1", ...invented, risk: 10 },
        gives: [[{ error: "#VALUE!" }, "", "", "", "", "", "", ""]],
        source: sources.input,
      },
      {
        shows: "boundary",
        args: {
          id: "P1",
          ids: invented.ids.slice(0, 19),
          days: invented.days.slice(0, 19),
          failed: invented.failed.slice(0, 19),
          risk: 0.1,
        },
        gives: [[{ error: "#N/A" }, "", "", "", "", "", "", ""]],
        source: sources.noSource,
      },
    ],
  },
);
