import { fitSharedRate, shrunkenRatio, type SharedRate } from "../maths/shrinkage";
import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, notAvailable, SheetError } from "../worksheet/error";
import { reading } from "../worksheet/parameters";
import { rememberLast } from "../worksheet/remember";
import { sameText, textColumn, type NumberColumn, type TextColumn } from "../worksheet/rows";
import { confidenceLevel, deviceColumns, lifeCautions, lifetimes } from "./devices";

interface Caseload {
  readonly people: ReadonlyMap<string, { failures: number; days: number }>;
  readonly rate: SharedRate | undefined;
}

const caseloadOf = rememberLast((ids: TextColumn, days: NumberColumn, failed: NumberColumn): Caseload | SheetError => {
  const lives = lifetimes({ ids, days, failed });
  if (lives instanceof SheetError) return lives;
  const people = new Map<string, { failures: number; days: number }>();
  for (let i = 0; i < lives.rows.length; i++) {
    const name = ids.values[lives.rows[i]!]!;
    const own = people.get(name) ?? { failures: 0, days: 0 };
    own.failures += lives.failed[i]!;
    own.days += lives.days[i]!;
    people.set(name, own);
  }
  const seen = [...people.values()];
  return {
    people,
    rate: fitSharedRate({
      events: Float64Array.from(seen, (one) => one.failures),
      time: Float64Array.from(seen, (one) => one.days),
    }),
  };
});

const unknown = notAvailable([argument("id"), " does not stand in ", argument("ids")]);
const onePerson = notAvailable("needs the devices of at least 2 people");
const noSpread = notAvailable(
  "these people differ no more than chance makes them differ: too few failures to tell one from another",
);
const noFailure = notAvailable("no device of the caseload has failed yet: nothing to compare");

export const WEARRATIO = define(
  {
    name: "WEARRATIO",
    family: "Wear",
    summary: "Does this person wear devices through faster than the caseload: failures a day over the caseload's mean.",
    params: {
      id: reading("The person, or a column of people", {}, (cell) => (cell === 0 ? null : sameText(cell))),
      ids: textColumn("Whose device it was, one row a device"),
      ...deviceColumns(),
      level: confidenceLevel(0.9),
    },
    subject: ["id"],
    result: {
      shape: "row",
      kind: "number",
      columns: ["ratio", "low", "high"],
      help: "2 means: twice as many failures a day as the caseload's mean",
      blank: "",
    },
    compute: ({ id, ids, days, failed, level }): string | SheetError | Row => {
      const caseload = caseloadOf(ids, days, failed);
      if (caseload instanceof SheetError) return caseload;
      const person = caseload.people.get(id);
      if (!person) return unknown;
      if (caseload.people.size < 2) return onePerson;
      if (!caseload.rate) return noFailure;
      if (caseload.rate.spread === 0) return noSpread;
      const { ratio, low, high } = shrunkenRatio(caseload.rate, person.failures, person.days, level);
      return [ratio, low, high];
    },
  },
  documented && {
    details:
      "A person's failures over the days in place, drawn towards the caseload's mean the more, the less is known of the " +
      "person: one early burst makes nobody a fast wearer. How far people differ at all is estimated from the caseload " +
      "itself. Where they differ no more than chance makes them differ, nobody's ratio can be told: #N/A.",
    cautions: [
      ...lifeCautions,
      "Limits that contain 1 mean: not known to differ. #N/A does not show that all are alike, only that it cannot be told.",
      "A high ratio is a question to ask (size, volume, fluid, place of the balloon, handling), not an answer.",
      "A person's own interval is set by those responsible, within the device's label.",
    ],
    evidence: "textbook",
    sources: [sources.claytonKaldor, sources.lipCancer, sources.noSource],
    examples: [
      {
        shows: "range",
        args: {
          id: [["P1"], ["p4 "], [""], ["P9"]],
          ids: [["P1"], ["P1"], ["P2"], ["P3"], ["P4"], ["P4"]],
          days: [[400], [400], [800], [800], [100], [700]],
          failed: [["yes"], ["yes"], ["yes"], ["no"], ["yes"], ["no"]],
        },
        gives: [
          [{ error: "#N/A" }, "", ""],
          [{ error: "#N/A" }, "", ""],
          ["", "", ""],
          [{ error: "#N/A" }, "", ""],
        ],
        source: "worked by hand: 2, 1, 0 and 1 failures in 800 days each vary less than chance would make them",
      },
      {
        shows: "defined",
        args: {
          id: "A",
          ids: [["A"], ["B"], ["C"], ["A"], ["A"], ["A"]],
          days: [[25], [100], [100], [25], [25], [25]],
          failed: [["yes"], ["no"], ["no"], ["yes"], ["yes"], ["yes"]],
        },
        gives: [[2.681899943616, 0.9550139379466, 5.115868657481]],
        within: 1e-6,
        source: "R 4.2.2: 4, 0 and 0 failures in equal times; gamma prior by dnbinom and uniroot, limits by qgamma",
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
        args: { id: "A", ids: [["A"], ["B"]], days: [[100], [100]], failed: [["no"], ["no"]] },
        gives: [[{ error: "#N/A" }, "", ""]],
        source: sources.catalogue,
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
