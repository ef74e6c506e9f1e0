/**
 * Whether a tube may go back is decided by its class, in the cell of CAMEOUT and on screen. Over all combinations the class
 * is the one that the service's order of rules gives (worked out a second time here), and each class has one sentence, the
 * service's own, typed here by hand.
 */
import { expect, test } from "vitest";
import { CAMEOUT } from "../../src/words/cameout";
import { middleOf, opening, planOnly } from "../../src/words/cameout-texts";
import {
  isAgeCounted,
  mayGoBack,
  tubeOutClass,
  tubeOutClasses,
  type TubeOutClass,
  type TubeOutFacts,
} from "../../src/words/tube-out-class";
import { call } from "../../src/worksheet/call";
import { day } from "../../src/worksheet/dates";

const ASOF = day("2026-05-14");
const HOSPITAL = "Go to hospital now. Put nothing in.";

/** How each class's sentence begins and ends. */
const said: Readonly<Record<TubeOutClass, readonly [begins: string, ends: string]>> = {
  bowel: ["Emergency. This opening leads straight into the bowel.", HOSPITAL],
  "stomach and bowel": ["Emergency. Part of this tube lies in the bowel", "Do not put the spare in."],
  "access not known": ["Emergency. It is not recorded where this tube ends.", HOSPITAL],
  "date not known": ["Emergency. It is not recorded when the opening was made.", "go to hospital now. Put nothing in."],
  immature: ["Emergency. The opening is new (under 6 weeks).", "Put nothing in, not even the spare."],
  uncertain: ["Emergency. The opening is 6 to ", "Put nothing in."],
  "setting too short": ["Emergency. An opening of 7 weeks is not taken for firm", "Put nothing in."],
  "first or slow": ["Emergency. This is still the first tube, or healing is slow", HOSPITAL],
  "first or slow not known": ["Emergency. It is not recorded whether this is still the first tube", HOSPITAL],
  bumper: ["Urgent. A tube held by a bumper cannot go back in", HOSPITAL],
  "other kind": ["Urgent. This kind of tube is not put back at home.", HOSPITAL],
  "balloon, mature": ["Urgent. The opening can close within hours", "to be there within 2 hours."],
};

const accesses = ["G", "GJ", "J", "not known"] as const;
const helds = ["balloon", "bumper", "loop", "winged", "stitched", "catheter", "not known"] as const;
const answers = ["yes", "no", "not known"] as const;
/** Whole weeks of the opening beside the day; null: no date that can be used. */
const made: readonly (readonly [TubeOutFacts["stomamade"], number | null])[] = [
  ["not known", null],
  [ASOF + 1, null],
  [2019, null],
  [ASOF, 0],
  [ASOF - 41, 5],
  [ASOF - 42, 6],
  [ASOF - 83, 11],
  [ASOF - 84, 12],
  [day("2024-01-08"), 122],
];
/** ACI/GENCA's limits (6 and 12 weeks), and one that RCH Melbourne's 8 weeks refuse. */
const bands = [
  [6, 12],
  [6, 7],
] as const;

function expected({ access, firsttube, slow, retention, immature, mature }: TubeOutFacts, weeks: number | null) {
  if (access !== "G") return access === "J" ? "bowel" : access === "GJ" ? "stomach and bowel" : "access not known";
  if (weeks === null) return "date not known";
  if (weeks < mature) return weeks < immature ? "immature" : "uncertain";
  if (mature < 8) return "setting too short";
  if ([firsttube, slow].includes("yes")) return "first or slow";
  if ([firsttube, slow].includes("not known")) return "first or slow not known";
  return retention === "bumper" ? "bumper" : retention === "balloon" ? "balloon, mature" : "other kind";
}

test("class and sentence agree over all combinations, in the cell and out of it", () => {
  const met = new Set<TubeOutClass>();
  const wrong: unknown[] = [];
  for (const access of accesses)
    for (const retention of helds)
      for (const firsttube of answers)
        for (const slow of answers)
          for (const [immature, mature] of bands)
            for (const asof of [ASOF, "not known"] as const)
              for (const [stomamade, age] of made) {
                const facts = { stomamade, asof, retention, access, firsttube, slow, immature, mature };
                const one = tubeOutClass(facts);
                met.add(one);
                const weeks = asof === "not known" ? null : age;
                if (one !== expected(facts, weeks)) wrong.push([facts, one]);
                const sentence = middleOf(one, { immature, mature, hours: 2 });
                const [begins, ends] = said[one];
                if (!sentence.startsWith(begins) || !sentence.endsWith(ends)) wrong.push([one, sentence]);
                const cells = [stomamade, asof, retention, access, firsttube, slow, immature, mature];
                const text = call(CAMEOUT, cells) as string;
                if (!text.startsWith(`${opening} ${sentence} `)) wrong.push([facts, text]);
                if (text.includes("put in the spare") !== mayGoBack(one)) wrong.push([one, text]);
                if (text.includes(planOnly) === mayGoBack(one)) wrong.push([one, "plan"]);
                if (text.includes("counted for 14 May 2026.") !== isAgeCounted(one)) wrong.push([one, "counted"]);
              }
  expect(wrong.slice(0, 3)).toEqual([]);
  expect([...met].sort()).toEqual([...tubeOutClasses].sort());
});

test("one class, and one only, may go back", () => {
  expect(tubeOutClasses.filter(mayGoBack)).toEqual(["balloon, mature"]);
});

test("each class has a sentence of its own", () => {
  const sentences = tubeOutClasses.map((one) => middleOf(one, { immature: 6, mature: 12, hours: 2 }));
  expect(new Set(sentences).size).toBe(tubeOutClasses.length);
});
