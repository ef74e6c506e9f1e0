/** What the trade says on telling how a tube is held (Soscia and Friedman 2011; Medscape; common practice). */
import { expect, test } from "vitest";
import { marksToAsk, RETENTION } from "../../../src/device/retention";
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

test.each([
  ...["stitched", "two sutures", "a loop", "Pigtail 10 Fr", "WINGED", "mushroom", "urinary catheter", "no outer disc"],
  ...["unclear", "jejunal limb", "PEG-J", "GJ", "a second head", "not stitched", "bumper?", "JEJUNAL extension"],
  ...["pig tail", "pig-tail", "no outer disk", "PEJ", "Jej tube", "G/J", "J-PEG", "J extension", "2 heads"],
  ...["tied with a thread", "cannot tell", "not visible", "goes on into the bowel", "duodenal limb"],
  ...marksToAsk,
])("%s: ask, whatever the port", (marks) => {
  for (const port of ["yes", "no", ""]) expect(call(RETENTION, [port, marks])).toBe(ASK);
});
