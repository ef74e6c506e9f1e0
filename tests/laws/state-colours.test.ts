/** The colours of the states: read by everybody, told apart by everybody, and left over in grey print. */
import { readFileSync } from "node:fs";
import { describe, expect, it, test } from "vitest";
import { states } from "../../taskpane/styles/states";
import { ruleLooks } from "../../taskpane/workbook/file/looks";
import { blindness, contrast, distance, lab, light, luminance, seenWith, type Lab, type Rgb } from "./colour";

const names = Object.keys(states) as (keyof typeof states)[];
const pairs = names.flatMap((one, i) => names.slice(i + 1).map((other) => [one, other] as const));
const PAPER = "FFFFFF";

describe("the formulas", () => {
  // Sharma, Wu, Dalal 2005, table 1, pairs 1, 7, 10, 17, 19 and 25.
  it.each<[Lab, Lab, number]>([
    [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
    [[50, 0, 0], [50, -1, 2], 2.3669],
    [[50, 2.49, -0.001], [50, -2.49, 0.0011], 7.2195],
    [[50, 2.5, 0], [73, 25, -18], 27.1492],
    [[50, 2.5, 0], [56, -27, -3], 31.903],
    [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
  ])("distance of %j from %j", (one, other, expected) => {
    expect(distance(one, other)).toBeCloseTo(expected, 4);
    expect(distance(other, one)).toBeCloseTo(expected, 4);
  });
  // #777777 on white is the well-known 4.48 : 1 that just misses; CIELAB of white is 100, 0, 0 by definition.
  it("contrast and CIELAB", () => {
    expect(contrast("777777", PAPER)).toBeCloseTo(4.48, 2);
    lab(light(PAPER)).forEach((one, i) => expect(one).toBeCloseTo([100, 0, 0][i]!, 2));
  });
  // A simulation leaves greys as they are (Machado et al. 2009, section 3): each row of a matrix adds up to 1.
  it.each(Object.entries(blindness))("%s", (_, matrix) => {
    for (const row of matrix) expect(row[0] + row[1] + row[2]).toBeCloseTo(1, 5);
  });
});

describe("each state", () => {
  // WCAG 2.2, 1.4.6 (7 : 1, the enhanced contrast).
  it.each(names)("%s is read without effort", (name) => {
    expect(contrast(states[name].ink, states[name].ground)).toBeGreaterThanOrEqual(7);
  });
  it("has one look everywhere: new files", () => expect(ruleLooks).toMatchObject(states));
  it("has one look everywhere: the pane's style sheet, which has no other for the dark", () => {
    const sheet = readFileSync(new URL("../../taskpane/styles/look.css", import.meta.url), "utf8");
    for (const name of names) {
      for (const part of ["ink", "ground"] as const) {
        const said = [...sheet.matchAll(new RegExp(`--${name}-${part}: #([0-9a-f]{6});`, "g"))];
        expect(said.map(([, color]) => color!.toUpperCase())).toEqual([states[name][part]]);
      }
    }
  });
});

describe("any two grounds stand apart", () => {
  const eyes: [string, (color: Rgb) => Rgb][] = [
    ["all cones", (color) => color],
    ...Object.entries(blindness).map(
      ([name, matrix]) => [name, (color: Rgb) => seenWith(matrix, color)] as [string, (color: Rgb) => Rgb],
    ),
  ];
  // 10 by our choice: 2 to 3 is what one sees side by side; words in a long list are seen apart.
  test.each(eyes)("for eyes with %s", (_, see) => {
    for (const [one, other] of pairs) {
      const far = distance(lab(see(light(states[one].ground))), lab(see(light(states[other].ground))));
      expect(far, `${one} and ${other}`).toBeGreaterThanOrEqual(10);
    }
  });
  // WCAG 2.2, 1.4.11: 3 : 1 for what has to be told apart.
  test("in grey print what asks to act is the dark one", () => {
    const grey = (color: string) => luminance(light(color)) + 0.05;
    for (const name of names.filter((one) => one !== "act")) {
      expect(grey(states[name].ground) / grey(states.act.ground), name).toBeGreaterThanOrEqual(3);
    }
    expect(grey(PAPER) / grey(states.act.ground)).toBeGreaterThanOrEqual(3);
  });
});
