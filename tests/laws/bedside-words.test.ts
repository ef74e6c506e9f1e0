/** Laws of the sentences and of the fit of low-profile tubes: over all combinations, or with a fixed seed. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { REMOVAL } from "../../src/device/removal";
import { FREEPLAY } from "../../src/fit/freeplay";
import { STOMAFIT } from "../../src/fit/stomafit";
import { STOMALENGTH } from "../../src/fit/stomalength";
import { CAMEOUT } from "../../src/words/cameout";
import { PLAINWORDS } from "../../src/words/plainwords";
import { call } from "../../src/worksheet/call";
import { CellError, SheetError } from "../../src/worksheet/error";

const options = { seed: 20261125, numRuns: 5000 };

const dates = ["2024-01-08", "2026-03-20", "2026-05-01", "2026-06-01", "", "3/4/24", 2019, 0, null];
const asofs = ["2026-05-14", "2019-01-01", "", "?"];
const helds = [
  "balloon",
  "Bumper ",
  "loop",
  "winged",
  "stitched",
  "catheter",
  "not known",
  "ask placing team",
  "",
  "PEG",
];
const accesses = ["G", "g", "GJ", "G-J", "J", "", "PEG", 0];
const answers = ["yes", "no", "not known", "", "maybe", 0, true, false];

describe("CAMEOUT", () => {
  test("over all combinations only a balloon into the stomach, mature, known not first nor slow, says to put in the spare", () => {
    let puts = 0;
    const classes = new Set<string>();
    for (const stoma of dates)
      for (const asof of asofs)
        for (const held of helds)
          for (const access of accesses)
            for (const first of answers)
              for (const slow of answers) {
                const text = call(CAMEOUT, [stoma, asof, held, access, first, slow]) as string;
                const allowed =
                  stoma === "2024-01-08" &&
                  asof === "2026-05-14" &&
                  held === "balloon" &&
                  (access === "G" || access === "g") &&
                  (first === "no" || first === false) &&
                  (slow === "no" || slow === false);
                const says = text.includes("put in the spare");
                if (says !== allowed) expect.fail(`${[stoma, asof, held, access, first, slow].join(", ")}: ${text}`);
                if (says) puts += 1;
                classes.add(text);
                if (!text.startsWith("Stop feed, water and medicines.")) expect.fail(text);
                if (!text.endsWith("Call the number on your emergency card.")) expect.fail(text);
                if (!/go to hospital now/i.test(text)) expect.fail(text);
                if (says === text.includes("Only a written plan for this person")) expect.fail(text);
                if (!says && !/Put nothing in|Do not put the spare in/.test(text)) expect.fail(text);
              }
    expect(puts).toBe(2 * 2 * 2);
    expect(classes.size).toBeGreaterThanOrEqual(11);
    expect([...classes].filter((text) => text.includes("put in the spare"))).toHaveLength(1);
  });

  test("an error in a cell stays an error", () => {
    expect(call(CAMEOUT, [new CellError("#N/A"), "2026-05-14", "balloon", "G", "no"])).toEqual(
      new SheetError("stomamade is #N/A", "#N/A"),
    );
  });

  test("settings move the bands, and stand in the sentence", () => {
    const text = (stoma: string) => call(CAMEOUT, [stoma, "2026-05-14", "balloon", "G", "no", "no", 8, 10]) as string;
    expect(text("2026-03-20")).toContain("The opening is new (under 8 weeks).");
    expect(text("2026-03-15")).toContain("The opening is 8 to 10 weeks old and may not be firm.");
    expect(text("2026-03-05")).toContain("put in the spare");
  });

  test("a text from a cell cannot become a formula", () => {
    const text = call(CAMEOUT, ["", "", "", "", "", "", undefined, undefined, "=1+1"]) as string;
    expect(text.startsWith("Stop")).toBe(true);
    expect(text.endsWith("Our number: =1+1.")).toBe(true);
  });
});

describe("REMOVAL", () => {
  test("over all combinations only one class says how to take it out", () => {
    const how = new Set<string>();
    const all = new Set<string>();
    for (const held of helds)
      for (const access of accesses)
        for (const stoma of dates)
          for (const asof of asofs)
            for (const first of answers)
              for (const slow of answers) {
                const text = call(REMOVAL, [held, access, stoma, asof, first, undefined, slow]) as string;
                all.add(text);
                const says = text.includes("draw all the water out");
                const allowed =
                  stoma === "2024-01-08" &&
                  asof === "2026-05-14" &&
                  held === "balloon" &&
                  (access === "G" || access === "g") &&
                  (first === "no" || first === false) &&
                  (slow === "no" || slow === false);
                if (says !== allowed) expect.fail(`${[held, access, stoma, asof, first, slow].join(", ")}: ${text}`);
                if (says) how.add(text);
                else if (!/do not (remove|pull)|never at home/.test(text)) expect.fail(text);
              }
    expect(how.size).toBe(1);
    expect(all.size).toBe(6);
  });
});

describe("PLAINWORDS", () => {
  const sizes = [14, "15 Fr", "", 0];
  const lengths = [2.3, ""];
  const volumes = [5, ""];
  const dues = ["2026-05-14", ""];
  const shapes = ["long", "low-profile", ""];

  test("what is missing is named at the end, and nothing about it stands before", () => {
    for (const held of helds)
      for (const size of sizes)
        for (const length of lengths)
          for (const volume of volumes)
            for (const due of dues)
              for (const access of accesses)
                for (const shape of shapes) {
                  const answer = call(PLAINWORDS, [held, size, length, volume, due, access, shape]);
                  if (answer instanceof SheetError) {
                    expect(["Bumper ", "loop", "winged", "stitched"]).toContain(held);
                    expect(volume).toBe(5);
                    continue;
                  }
                  const [told, missing] = (answer as string).split("Not written down: ") as [string, string];
                  const pairs: [boolean, string, RegExp][] = [
                    [size === "" || size === 0, "its size", /Size/],
                    [due === "", "when the next change is planned", /planned for/],
                    [shape === "", "its shape", /low-profile|long tube/],
                    [
                      ["not known", "ask placing team", "", "PEG"].includes(held),
                      "how it is held",
                      /balloon|bumper|loop/,
                    ],
                    [["", "PEG", 0].includes(access), "where it ends", /stomach|bowel/],
                  ];
                  for (const [isMissing, name, said] of pairs) {
                    if (missing.includes(name) !== isMissing) expect.fail(`${name}: ${answer}`);
                    if (isMissing && said.test(told)) expect.fail(`${name} is told: ${answer}`);
                  }
                  if (!missing.endsWith("when it was put in. Please ask us.")) expect.fail(answer as string);
                  if (/J$/.test(String(access)) !== /bowel.*must not be turned/.test(told))
                    expect.fail(answer as string);
                  if (/\bOK\b|\bsafe/i.test(told)) expect.fail(answer as string);
                }
  });
});

const centimetres = fc.integer({ min: 3, max: 95 }).map((n) => n / 10);
const finely = fc.integer({ min: 50, max: 900 }).map((n) => n / 100);

describe("fit", () => {
  test("the length that STOMALENGTH picks by the default rule never reads too short nor too long", () => {
    let picked = 0;
    fc.assert(
      fc.property(
        fc.oneof(centimetres, finely),
        fc.oneof(centimetres, finely),
        fc.array(fc.oneof(centimetres, finely), { minLength: 1, maxLength: 12 }),
        (lying, sitting, lengths) => {
          const length = call(STOMALENGTH, [lying, sitting, lengths.map((l) => [l])]);
          if (length instanceof SheetError) {
            expect(length.code).toBe("#N/A");
            // Nothing in stock would have done.
            for (const stocked of lengths) expect(call(STOMAFIT, [stocked, lying, sitting])).not.toBe("in range");
            return;
          }
          picked += 1;
          expect(lengths).toContain(length);
          expect(call(STOMAFIT, [length, lying, sitting])).toBe("in range");
          // Nothing shorter in stock would do.
          for (const shorter of lengths.filter((l) => l < (length as number))) {
            expect(call(STOMAFIT, [shorter, lying, sitting])).toBe("too short");
          }
        },
      ),
      options,
    );
    expect(picked).toBeGreaterThan(1000);
  });

  test("by no rule and with no settings does STOMALENGTH pick what STOMAFIT calls too long", () => {
    const slacks = fc.tuple(fc.integer({ min: 0, max: 10 }), fc.integer({ min: 0, max: 10 }));
    let picked = 0;
    fc.assert(
      fc.property(
        centimetres,
        centimetres,
        fc.array(centimetres, { minLength: 1, maxLength: 12 }),
        fc.constantFrom("larger", "mean", "lying only"),
        slacks,
        (lying, sitting, lengths, rule, [some, more]) => {
          const [slack, most] = [some / 10, (some + more) / 10];
          const answer = call(STOMALENGTH, [lying, sitting, lengths.map((l) => [l]), rule, slack, most]);
          if (rule === "lying only" && sitting > lying) {
            expect((answer as SheetError).message).toContain("sitting is above lying");
            return;
          }
          const other = rule === "lying only" ? lying : sitting;
          const fits = lengths.map((length) => call(STOMAFIT, [length, lying, other, slack, most]));
          if (!fits.includes("in range")) {
            expect((answer as SheetError).code).toBe("#N/A");
            return;
          }
          picked += 1;
          const fit = call(STOMAFIT, [answer, lying, other, slack, most]);
          expect(fit).not.toBe("too long");
          if (rule !== "mean") expect(fit).toBe("in range");
        },
      ),
      options,
    );
    expect(picked).toBeGreaterThan(1000);
  });

  test("lying and sitting exchanged give the same, and a longer opening never a shorter tube", () => {
    fc.assert(
      fc.property(centimetres, centimetres, centimetres, (lying, sitting, more) => {
        const stock = [Array.from({ length: 60 }, (_, i) => (i + 1) / 6)];
        const pick = (a: number, b: number) => {
          const length = call(STOMALENGTH, [a, b, stock]);
          return length instanceof SheetError ? Infinity : (length as number);
        };
        expect(pick(lying, sitting)).toBe(pick(sitting, lying));
        expect(pick(Math.max(lying, more), sitting)).toBeGreaterThanOrEqual(pick(lying, sitting));
      }),
      options,
    );
  });

  test("STOMAFIT goes from too short over in range to too long as the tube grows", () => {
    const order = ["too short", "in range", "too long"];
    fc.assert(
      fc.property(centimetres, centimetres, centimetres, centimetres, (lying, sitting, one, other) => {
        const rank = (length: number) => order.indexOf(call(STOMAFIT, [length, lying, sitting]) as string);
        expect(rank(one)).toBeGreaterThanOrEqual(0);
        expect(rank(Math.max(one, other))).toBeGreaterThanOrEqual(rank(Math.min(one, other)));
      }),
      options,
    );
  });

  test("FREEPLAY by the defaults, every half millimetre", () => {
    for (let half = 0; half <= 80; half++) {
      const gap = half / 2;
      expect(call(FREEPLAY, [gap])).toBe(gap < 5 ? "tight" : gap > 20 ? "loose" : "in range");
    }
  });
});
