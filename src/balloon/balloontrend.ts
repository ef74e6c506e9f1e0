import { sources } from "../sources";
import { define, type Param, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault, notAvailable, SheetError } from "../worksheet/error";
import { reading } from "../worksheet/parameters";
import { sameText, textColumn, type TextColumn } from "../worksheet/rows";
import { checkColumns, checkRows, FOR_LIMITS, lossTrend, type Checks } from "./checks";

const DAYS_A_WEEK = 7;

/** Filled rows by identifier; the whole block is sorted into people once, not once for each of them. */
const grouped = new WeakMap<TextColumn, Map<string, number[]>>();

function rowsByPerson(ids: TextColumn, rows: Uint32Array): Map<string, number[]> | SheetError {
  const known = grouped.get(ids);
  if (known) return known;
  const people = new Map<string, number[]>();
  for (const row of rows) {
    const id = ids.values[row]!;
    if (id === "") return fault`${argument("ids")} is missing in row ${row + 1}`;
    const own = people.get(id);
    if (own) own.push(row);
    else people.set(id, [row]);
  }
  grouped.set(ids, people);
  return people;
}

function rowOf(checks: Checks, rows: Iterable<number>): Row | SheetError {
  const trend = lossTrend(checks, rows);
  if (trend instanceof SheetError) return trend;
  const few = trend.checks < FOR_LIMITS;
  const weekly = (perDay: number): number => perDay * DAYS_A_WEEK;
  return [weekly(trend.slope), few ? "" : weekly(trend.low), few ? "" : weekly(trend.high), trend.checks];
}

export const BALLOONTREND = define(
  {
    name: "BALLOONTREND",
    family: "Balloon",
    summary: "How much water a balloon has been losing in a week, from all its checks.",
    params: {
      ...checkColumns(),
      ids: {
        ...textColumn("Identifier of each check, when the checks of several people stand in one list"),
        optional: true,
        fallbackHelp: "one balloon's checks",
      } as Param<TextColumn | undefined>,
      id: reading<string, { optional: true; fallbackHelp: string }>(
        "The person, or a column of people",
        { optional: true, fallbackHelp: "all checks" },
        (cell) => (cell === 0 ? null : sameText(cell)),
      ),
    },
    subject: [],
    result: {
      shape: "row",
      kind: "number",
      unit: "mL a week",
      columns: ["loss a week", "low", "high", "checks used"],
      help: "Loss of water a week with its 95% limits; negative: more came out than was put in",
      blank: "",
    },
    compute: ({ date, out, in: putIn, ids, id }) => {
      const checks: Checks = { date, out, in: putIn };
      const rows = checkRows(checks);
      if (rows instanceof SheetError) return rows;
      if (ids === undefined) return id === undefined ? rowOf(checks, rows) : fault`${argument("ids")} is missing`;
      if (ids.values.length !== date.values.length)
        return fault`${argument("ids")} and ${argument("date")} must have as many cells`;
      if (id === undefined) return [""];
      const people = rowsByPerson(ids, rows);
      if (people instanceof SheetError) return people;
      const own = people.get(id);
      return own ? rowOf(checks, own) : notAvailable("no check of this id");
    },
  },
  documented && {
    details:
      "Loss between two checks is what was put in last time less what came out now. The slope is Theil and Sen's: the " +
      "median of the slopes between all pairs of checks, of the summed loss against days, times 7; checks of one day make " +
      "no pair. Limits are Sen's 95% interval; they are blank below 5 checks. Fewer than 3 checks: #N/A. With ids and id, " +
      "one row for each person.",
    cautions: [
      "Only the checks of the balloon now in: a change starts a new balloon.",
      "Most balloons end by bursting (101 of 165 in one study), without a trend. A flat trend does not show that the balloon will hold.",
      "Summed losses hang together, so the limits are narrower than they look.",
      "Water also passes through a sound balloon's wall: 1.2 of 5 mL in two weeks on the bench.",
    ],
    evidence: "study",
    sources: [sources.sen, sources.senSmall, sources.permeation, sources.michaud],
    examples: [
      {
        shows: "defined",
        args: {
          date: [["2026-03-02"], ["2026-03-09"], ["2026-03-16"]],
          out: [[5], [4.5], [4.5]],
          in: [[5], [5], [5]],
        },
        gives: [[0.5, "", "", 3]],
        source: "by hand: 0.5 mL lost in each of two weeks",
      },
      {
        shows: "range",
        args: {
          date: [["2026-03-02"], ["2026-03-09"], ["2026-03-16"], ["2026-03-23"], ["2026-03-30"], [""]],
          out: [[5], [4.9], [4.8], [4.9], [4], [""]],
          in: [[5], [5], [5], [5], [5], [""]],
        },
        gives: [[0.175, 0.1, 1, 5]],
        within: 1e-9,
        source:
          "by hand: sums 0, 0.1, 0.3, 0.4, 1.4; of the ten slopes the middle two are 0.15 and 0.2, the ends 0.1 and 1",
      },
      {
        shows: "use",
        args: {
          date: [["2026-03-16"], ["2026-03-02"], ["2026-03-09"], ["2026-03-09"]],
          out: [[4.5], [5], [4.5], [6]],
          in: [[5], [5], [5], [6]],
          ids: [["D-001"], ["D-001"], ["d-001 "], ["D-002"]],
          id: [["D-001"], [""], ["D-002"], ["D-003"]],
        },
        gives: [
          [0.5, "", "", 3],
          ["", "", "", ""],
          [{ error: "#N/A" }, "", "", ""],
          [{ error: "#N/A" }, "", "", ""],
        ],
        source: "by hand: the first example's checks in another order, beside another person's",
      },
      {
        shows: "blank",
        args: { date: [[""], [""]], out: [[""], [""]], in: [[""], [""]] },
        gives: [[{ error: "#N/A" }, "", "", ""]],
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { date: [["2026-03-02"], ["2026-03-09"]], out: [[5], [4.5]], in: [[5], [""]] },
        gives: [[{ error: "#VALUE!" }, "", "", ""]],
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: {
          date: [["2026-03-02"], ["2026-03-09"], ["2026-03-16"]],
          out: [[5], [450], [4]],
          in: [[5], [5], [5]],
        },
        gives: { error: "#VALUE!", says: "out in row 2 must be at least 0, at most 60" },
        source: `${sources.noSource}: no balloon holds that much`,
      },
      {
        shows: "boundary",
        args: {
          date: [["2026-03-02"], ["2026-03-02"], ["2026-03-02"]],
          out: [[5], [4.5], [4.5]],
          in: [[5], [5], [5]],
        },
        gives: [[{ error: "#N/A" }, "", "", ""]],
        source: "defined by this function's rule: checks of one day make no pair",
      },
    ],
  },
);
