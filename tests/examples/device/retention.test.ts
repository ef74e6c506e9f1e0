/** What the trade says on telling how a tube is held (Soscia and Friedman 2011; Medscape; common practice). */
import { expect, test } from "vitest";
import { marksToAsk, RETENTION } from "../../../src/device/retention";
import { REMOVAL } from "../../../src/device/removal";
import { CAMEOUT } from "../../../src/words/cameout";
import { PLAINWORDS } from "../../../src/words/plainwords";
import { call } from "../../../src/worksheet/call";

const ASK = "ask placing team";

test.each([
  ["yes", "balloon"],
  ["Y", "balloon"],
  [true, "balloon"],
  ["no", "bumper"],
  [false, "bumper"],
  [0, ASK],
  [1, ASK],
  ["", ASK],
  [null, ASK],
  ["not known", ASK],
  ["I think so", ASK],
])("balloon port %s: %s", (port, word) => expect(call(RETENTION, [port])).toBe(word));

test.each(["PEG", "RIG", "button", "G-tube", "PEG, 15 Fr, placed 2024", "low-profile", "red tube"])(
  "%s says nothing about how it is held",
  (marks) => {
    expect(call(RETENTION, ["yes", marks])).toBe("balloon");
    expect(call(RETENTION, ["no", marks])).toBe("bumper");
  },
);

/** A balloon is filled through its valve; a bumper has none (Soscia and Friedman 2011). */
test.each([
  ["yes", "bumper seen inside"],
  ["yes", "disc inside, 15 Fr"],
  ["no", "Ballon 14 Fr"],
  ["no", "\uff22\uff21\uff2c\uff2c\uff2f\uff2f\uff2e 14"],
  ["yes", "inner disc 15 Fr"],
  ["yes", "no balloon"],
  ["yes", "without a valve"],
  ["no", "balloon 5 mL"],
  ["no", "Balloon"],
  ["no", "valve at the side"],
  ["no", "14 Fr 5mL"],
  ["no", "takes 5 cc"],
  ["no", "Luer-slip end"],
  ["no", "no balloon"],
])("balloon port %s, marks %s contradict: ask", (port, marks) => expect(call(RETENTION, [port, marks])).toBe(ASK));

test.each(["balloon 5 mL", "valve marked BAL, 14 Fr"])("with a port, %s does not contradict", (marks) =>
  expect(call(RETENTION, ["yes", marks])).toBe("balloon"),
);

test.each(["G - J", "G-J", "g – j", "G / J", "G + J", "GJ", "PEG - J", "PEG J", "G J"])(
  "%s is a tube into the bowel",
  (marks) => {
    for (const port of ["yes", "no"]) expect(call(RETENTION, [port, marks])).toBe(ASK);
  },
);

test.each(["G - J", "G-J", "g – j", "G / J", "G + J", "g/j", " gj "])("access %s is GJ in every function", (access) => {
  const asof = "2026-05-14";
  expect(call(REMOVAL, ["balloon", access, "2024-01-08", asof, "no", "", "no"])).toContain("lies in the bowel");
  expect(call(CAMEOUT, ["2024-01-08", asof, "balloon", access, "no", "no"])).toContain("Part of this tube");
  expect(call(PLAINWORDS, ["balloon", 14, "", "", "", access])).toContain("goes on into the bowel");
});

test.each([
  ...["stitched", "two sutures", "a loop", "Pigtail 10 Fr", "WINGED", "mushroom", "urinary catheter", "no outer disc"],
  ...["unclear", "jejunal limb", "PEG-J", "GJ", "a second head", "not stitched", "bumper?", "JEJUNAL extension"],
  ...["pig tail", "pig-tail", "no outer disk", "PEJ", "Jej tube", "G/J", "J-PEG", "J extension", "2 heads"],
  ...["tied with a thread", "cannot tell", "not visible", "goes on into the bowel", "duodenal limb"],
  ...marksToAsk,
])("%s: ask, whatever the port", (marks) => {
  for (const port of ["yes", "no", ""]) expect(call(RETENTION, [port, marks])).toBe(ASK);
});
