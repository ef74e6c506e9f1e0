import { logRank } from "../maths/logrank";
import { countByDay, type Lifetimes } from "../maths/survival";
import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault, notAvailable, SheetError } from "../worksheet/error";
import { textColumn } from "../worksheet/rows";
import { censoring, deviceColumns, lifeCautions, lifetimes } from "./devices";
import { bothArms } from "./published-list";

/** More words than this in a column are not kinds of device but something else; the work grows with their square. */
const MOST_GROUPS = 50;

const tooManyGroups = fault`${argument("group")} has more than ${MOST_GROUPS} different words: give the kind of device`;
const oneGroup = notAvailable("needs two groups with devices in place when one failed, and failures on different days");

/** Rows of each group, in the order in which the groups first appear. */
function byGroup(lives: Lifetimes & { readonly rows: Uint32Array }, names: readonly string[]): number[][] {
  const groups = new Map<string, number[]>();
  for (let i = 0; i < lives.rows.length; i++) {
    const name = names[lives.rows[i]!]!;
    const own = groups.get(name);
    if (own) own.push(i);
    else groups.set(name, [i]);
  }
  return [...groups.values()];
}

export const LIFECOMPARE = define(
  {
    name: "LIFECOMPARE",
    family: "Wear",
    summary: "Do groups of devices last equally long: the log-rank test.",
    params: {
      ...deviceColumns(),
      group: textColumn("Group of each device, such as its kind or size; upper and lower case are alike"),
    },
    subject: ["days"],
    result: {
      shape: "row",
      kind: "number",
      columns: ["chi-square", "degrees of freedom", "p"],
      help: "Test of equal lives; a small p speaks for a difference",
      blank: "",
    },
    compute: ({ days, failed, group }): string | SheetError | Row => {
      const lives = lifetimes({ days, failed, group });
      if (lives instanceof SheetError) return lives;
      if (lives.days.length === 0) return "";
      const groups = byGroup(lives, group.values);
      if (groups.length > MOST_GROUPS) return tooManyGroups;
      const test = logRank(
        groups.map((rows) =>
          countByDay({
            days: Float64Array.from(rows, (i) => lives.days[i]!),
            failed: Uint8Array.from(rows, (i) => lives.failed[i]!),
          }),
        ),
      );
      return test ? [test.chiSquare, test.degreesOfFreedom, test.p] : oneGroup;
    },
  },
  documented && {
    details:
      `Compares, on each day on which a device failed, how many of each group failed with how many would have if all ` +
      `groups wore alike. ${censoring} A group whose devices were all gone before the first failure does not count.`,
    cautions: [
      ...lifeCautions,
      "A large p does not show that kinds last equally long: a few devices cannot tell.",
      "Groups may differ in more than the device: who wears it, and why it was chosen.",
    ],
    evidence: "textbook",
    sources: [sources.mantel, sources.freireich],
    examples: [
      {
        shows: "published",
        args: bothArms,
        gives: [[16.7929409892, 1, 4.16880910933e-5]],
        within: 1e-9,
        source: `${sources.freireich}: published chi-square 16.79`,
      },
      {
        shows: "range",
        args: {
          days: [[10], [20], [""], [20], [30]],
          failed: [["yes"], ["yes"], [""], ["no"], ["no"]],
          group: [["14 Fr"], ["14 fr"], [""], ["18 Fr"], ["18 Fr"]],
        },
        gives: [[(2 - 5 / 6) ** 2 / (1 / 4 + 2 / 9), 1, 0.08955507441364]],
        within: 1e-12,
        source: "worked by hand: 2 failures where 2/4 + 1/3 are expected, variance 1/4 + 2/9",
      },
      {
        shows: "blank",
        args: { days: [[""], [""]], failed: [[""], [""]], group: [[""], [""]] },
        gives: [["", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { days: [[90], [120]], failed: [["yes"], ["yes"]], group: [["balloon"], [""]] },
        gives: [[{ error: "#VALUE!" }, "", ""]],
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { days: [[90], [120]], failed: [["yes"], ["yes"]], group: [["balloon"], ["balloon"]] },
        gives: [[{ error: "#N/A" }, "", ""]],
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { days: [[90], [90]], failed: [["yes"], ["yes"]], group: [["balloon"], ["bumper"]] },
        gives: [[{ error: "#N/A" }, "", ""]],
        source: sources.catalogue,
      },
    ],
  },
);
