/**
 * Functions that give words never reassure on missing, impossible or stale data. For every such function: arguments
 * that together give its reassuring word, and for each argument everything that may stand there instead. All
 * combinations with up to MOST_DOUBTS of them at once are tried; the reassuring word may come only where nothing is in
 * doubt.
 */
import { describe, expect, test } from "vitest";
import { shortOrLong } from "../budget";
import { functions } from "../../src/index";
import { call } from "../../src/worksheet/call";
import { CellError, SheetError } from "../../src/worksheet/error";

/** Twelve million combinations more have five to nine doubts at once: in `npm run endurance`. */
const MOST_DOUBTS = shortOrLong(4, Infinity);

const errors = [new CellError("#N/A"), new CellError("#REF!")];
const missing = ["", null, undefined, "  "];
const unreadable = ["n/k", "?", true];

/** 2019 and 14 are day numbers of 1900 and 1905 when somebody types a year or a size. */
const noDate = [...missing, ...errors, 0, -5, 14, 1e9, "14/5/26", "2026-02-30", "n/k", true];
const noVolume = [...missing, ...errors, -1, "3-5 mL", "1,000", ...unreadable];
const noYesNo = [...missing, ...errors, 0, 1, "n/k", "maybe", "not known"];

interface Subject {
  readonly name: string;
  /** Matches a reassuring answer, and nothing else. */
  readonly reassuring: (answer: string) => boolean;
  readonly params: readonly {
    readonly good: unknown;
    /** Whatever stands here must take the reassurance away. */
    readonly doubtful: readonly unknown[];
    /** Left out, the default counts and the reassurance may stay. */
    readonly left?: readonly unknown[];
  }[];
}

const is =
  (...words: string[]) =>
  (answer: string) =>
    words.includes(answer);

const asof = "2026-05-14";
const longAgo = "2024-01-08";
const oldOpening = { good: longAgo, doubtful: [...noDate, 2019, "2026-05-15", "2052-01-01", "2026-04-20"] };
const weeksSetting = { good: 12, doubtful: [-1, 0, 7, "twelve", 1e6, ...errors], left: ["", null, undefined] };
/** Left out or blank: nobody has written down that this opening heals well. */
const slowHealing = { good: "no", doubtful: [...missing, ...errors, 0, 1, "yes", "not known", "n/k"] };

const subjects: readonly Subject[] = [
  {
    name: "DUESTATE",
    reassuring: is("later", "due soon"),
    params: [
      { good: "2026-07-01", doubtful: [...noDate, 2019, "2026-05-13", "2019-01-01"] },
      { good: asof, doubtful: [...noDate, "2031-01-01"] },
      { good: 14, doubtful: [-1, 1.5, "soon", ...errors], left: [undefined, ""] },
      { good: "2026-09-01", doubtful: [14, 2019, "2026-05-13", "3/4/26", ...errors], left: [undefined, ""] },
    ],
  },
  {
    name: "BALLOONSTATE",
    reassuring: is("as filled"),
    params: [
      { good: 5, doubtful: [...noVolume, 0, 2, 4.4, 12, 1e9] },
      { good: 5, doubtful: [...noVolume, 0, 3, 20] },
      { good: 0.5, doubtful: [-1, 50, "?", ...errors], left: [undefined, ""] },
      { good: 7, doubtful: [1, 4.9, -1, "?", ...errors], left: [undefined, ""] },
    ],
  },
  {
    name: "RETENTION",
    reassuring: is("balloon", "bumper"),
    params: [
      { good: "yes", doubtful: [...noYesNo, "PEG"] },
      {
        good: "red, 14 Fr",
        doubtful: ["stitched", "Loop", "a second head", "not stitched", "?", "G - J", "no balloon", ...errors],
        left: [""],
      },
    ],
  },
  {
    name: "REMOVAL",
    reassuring: (answer) => answer.includes("ease the tube out"),
    params: [
      { good: "balloon", doubtful: ["bumper", "loop", "ask placing team", "PEG", "", 5, ...errors] },
      { good: "G", doubtful: ["GJ", "J", "PEG", undefined, 0, ...errors] },
      { good: longAgo, doubtful: ["", null, 14, 2019, "3/4/24", "n/k", "2026-05-15", "2026-04-20", ...errors] },
      { good: asof, doubtful: ["", 14, "3/4/26", "2019-01-01", "2024-02-01"] },
      { good: "no", doubtful: ["", undefined, 0, 1, "yes", "not known", "maybe", ...errors] },
      { good: 12, doubtful: [0, 7, "twelve", ...errors], left: [undefined] },
      slowHealing,
    ],
  },
  {
    name: "TRACTSTATE",
    reassuring: is("mature by weeks"),
    params: [
      oldOpening,
      { good: asof, doubtful: [...noDate, "2019-01-01", "2024-02-01"] },
      { good: 6, doubtful: [-1, 0, "six", 13, ...errors], left: [undefined, ""] },
      weeksSetting,
      slowHealing,
    ],
  },
  {
    name: "STOMAFIT",
    reassuring: is("in range"),
    params: [
      { good: 2.5, doubtful: [...noVolume, 0, 1.7, 23] },
      { good: 2.1, doubtful: [...noVolume, 0, 3, 21] },
      { good: 2.2, doubtful: [...noVolume, 0, 3, 22] },
      { good: 0.2, doubtful: [-1, 2, "?", ...errors], left: [undefined, ""] },
      { good: 0.5, doubtful: [-1, 0, "?", ...errors], left: [undefined, ""] },
    ],
  },
  {
    name: "FREEPLAY",
    reassuring: is("in range"),
    params: [
      { good: 10, doubtful: [...noVolume, 0, 2, 25, 1e9, "1 cm"] },
      { good: 5, doubtful: [0, -1, 15, "?", ...errors], left: [undefined, ""] },
      { good: 20, doubtful: [0, -1, 7, "?", ...errors], left: [undefined, ""] },
    ],
  },
  {
    name: "MARKSHIFT",
    reassuring: is("same mark"),
    params: [
      { good: 4, doubtful: [...noVolume, 0, 6, 1e9] },
      { good: 4.5, doubtful: [...noVolume, 0, 2, 1e8] },
      { good: 1, doubtful: [-1, 0, "?", 1e9, ...errors], left: [undefined, ""] },
    ],
  },
  {
    name: "REFEEDINGRISK",
    reassuring: is("criteria not met"),
    params: [
      { good: 40, doubtful: [...missing, ...errors, ...unreadable, -1, 9, 400] },
      { good: 22, doubtful: [...missing, ...errors, ...unreadable, 0, -1, 2, 15, 1e9] },
      { good: 3, doubtful: [...missing, ...errors, ...unreadable, 0.16, 16, 120] },
      { good: 1, doubtful: [...missing, ...errors, ...unreadable, -1, 6, 11, 1e9] },
      { good: "no", doubtful: [...noYesNo, "yes"] },
      { good: "no", doubtful: [...missing, ...errors, 0, 1, "maybe", "not known"] },
    ],
  },
  {
    name: "CAMEOUT",
    reassuring: (answer) => answer.includes("put in the spare"),
    params: [
      { good: longAgo, doubtful: ["", 14, 2019, "3/4/24", "2026-05-15", "2026-04-20", ...errors] },
      { good: asof, doubtful: ["", 14, "3/4/26", "2019-01-01", "2024-02-01"] },
      { good: "balloon", doubtful: [undefined, 0, "bumper", "loop", "ask placing team"] },
      { good: "G", doubtful: [undefined, 0, "GJ", "J", "PEG"] },
      { good: "no", doubtful: ["", 0, 1, "yes", "not known"] },
      { good: "no", doubtful: [undefined, "", 0, "yes", "not known", "maybe"] },
      { good: 6, doubtful: [0, 13], left: [undefined] },
      { good: 12, doubtful: [0, 7, "twelve"], left: [""] },
      { good: "0000", doubtful: [], left: [""] },
    ],
  },
];

/** Functions with texts that judge nothing, or that are held by tests of their own. */
const noJudgement = ["PLAINWORDS", "READCODE", "READPRINT"];

const replaced = (list: readonly unknown[], i: number, value: unknown): unknown[] => {
  const copy = [...list];
  copy[i] = value;
  return copy;
};

test("every function that gives words is held", () => {
  const words = functions.filter(({ result }) => result.kind === "text").map(({ name }) => name);
  for (const name of words) expect([...subjects.map((s) => s.name), ...noJudgement]).toContain(name);
});

describe.each(subjects.map((s) => [s.name, s] as const))("%s", (name, { reassuring, params }) => {
  const definition = functions.find((f) => f.name === name)!;
  const words = (args: readonly unknown[]): string => {
    const answer = call(definition, args);
    return answer instanceof SheetError ? "" : String(answer);
  };
  const good = params.map((p) => p.good);

  test("reassures where nothing is in doubt, so that this test can fail", () => {
    expect(reassuring(words(good))).toBe(true);
    params.forEach(({ left = [] }, i) => {
      for (const value of left)
        expect(reassuring(words(replaced(good, i, value))), `${i}: ${String(value)}`).toBe(true);
    });
  });

  test("never reassures when something is missing, impossible or stale: in all combinations", () => {
    let tried = 0;
    const wrong: unknown[][] = [];
    const args: unknown[] = [];
    const walk = (i: number, doubts: number): void => {
      if (i === params.length) {
        tried += 1;
        if (doubts > 0 && reassuring(words(args))) wrong.push([...args]);
        return;
      }
      const { good: fine, doubtful, left = [] } = params[i]!;
      for (const value of [fine, ...left]) {
        args[i] = value;
        walk(i + 1, doubts);
      }
      for (const value of doubtful) {
        if (doubts === MOST_DOUBTS) break;
        args[i] = value;
        walk(i + 1, doubts + 1);
      }
    };
    walk(0, 0);
    expect(wrong.slice(0, 3)).toEqual([]);
    console.log(`${name}: ${tried.toLocaleString("en-GB")} combinations`);
    expect(tried).toBeGreaterThan(100);
  });

  test("never says OK or safe", () => {
    for (const [i, { good: fine, doubtful }] of params.entries()) {
      for (const value of [fine, ...doubtful]) expect(words(replaced(good, i, value))).not.toMatch(/\bOK\b|\bsafe/i);
    }
  });
});
