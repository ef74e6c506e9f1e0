/** The order of urgency: the order and the classes are those of the shared template's state words. */
import { describe, expect, it } from "vitest";
import {
  beginningOf,
  NO_URGENCY,
  urgencies,
  urgencyKey,
  urgencyOf,
  type ToDoWord,
} from "../../../src/caseload/urgency";
import { toDo } from "../../../src/caseload/tubes/to-do/columns";
import { AS_OF, goodTube, tube, tubeOf, worked } from "./one-row";

const words = urgencies.map(({ word }) => word);

describe("the order of urgency", () => {
  it.each([
    [["balloon empty", "left empty", "above the label", "tight", "tight or stuck", "infected", "milky fluid"]],
    [["leaking, opening not mature", "milky fluid", "check settings", "date wrong", "kind not known"]],
    [["kind not known", "past limit, not booked", "overdue …, not booked", "missed date", "low twice", "half or less"]],
    [["half or less", "due in …, not booked", "nobody trained, cannot wait", "leaking", "overgrown"]],
    [
      [
        "overgrown",
        "put in not known",
        "not the agreed fill",
        "cloudy: ask",
        "check late",
        "no spare",
        "spare expires",
      ],
    ],
    [["spare expires", "see site again", "measure again", "hold too long", "hospital too long", "no number to call"]],
    [["no number to call", "booked …", "nothing due"]],
  ] as const)("%j", (inOrder) => {
    const places = inOrder.map((word) => urgencyKey(word));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(new Set(places).size).toBe(inOrder.length);
  });
  it("names each word once, and none with a sign that filters take as a wildcard", () => {
    expect(new Set(words).size).toBe(words.length);
    for (const word of words) expect(word).not.toMatch(/[?*~]/);
  });
  it("knows a word as it stands in the cell", () => {
    const known = (text: string) => urgencyOf(text)?.word;
    expect(known("overdue 3 days, not booked")).toBe("overdue …, not booked");
    expect(known("overdue, booked 2 Dec")).toBe("overdue, booked …");
    expect(known("booked 12 May")).toBe("booked …");
    expect(known("booked after the limit")).toBe("booked after the limit");
    expect(known("balloon: too early")).toBe("balloon: too early");
    expect(known("balloon: not measured")).toBe("balloon: …");
    expect([known(""), known("OK")]).toEqual([undefined, undefined]);
  });
  it("gives each word the colour of its class, the first rule that takes it", () => {
    const rules = toDo.rules as readonly { look: string; words: readonly string[] }[];
    const lookOf = (text: string) =>
      rules.find((rule) =>
        rule.words.some((word) => (word.endsWith("…") ? text.startsWith(beginningOf(word)) : word === text)),
      )?.look;
    for (const { word, asks } of urgencies) expect(lookOf(word.replace("…", "3 days")), word).toBe(asks);
  });
});

describe("the hidden key", () => {
  const key = (one: ReturnType<typeof tube>) => tubeOf(one)["Urgency"];
  it("is the place of the word that stands in To do", () => {
    for (const [one, word] of [
      [tube({ "Device in": AS_OF - 400 }), "past limit, not booked"],
      [tube({ "Spare at home": "none" }), "no spare"],
      [tube({ "Booked for": AS_OF + 5 }), "booked …"],
      [tube({}), "nothing due"],
    ] as const)
      expect(key(one)).toBe(urgencyKey(word as ToDoWord));
  });
  it("puts rows that say nothing last", () => {
    const rows = worked({ tubes: [{ ...goodTube, Status: "left" }, {}, { ...goodTube, ID: "T-2" }], checks: [] });
    const keys = rows.tubes.map((row) => row["Urgency"]);
    expect(keys.slice(0, 2)).toEqual([NO_URGENCY, NO_URGENCY]);
    expect(keys[2]).toBeLessThan(NO_URGENCY);
  });
});
