/**
 * What the screen and the page say when a tube is out, held to the worksheet function CAMEOUT over combinations of cells;
 * and that they say nothing beyond the sentences that were worked out for it.
 */
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { TUBE_OUT } from "../../../src/caseload/cautions";
import { CAMEOUT } from "../../../src/words/cameout";
import { opening } from "../../../src/words/cameout-texts";
import { call } from "../../../src/worksheet/call";
import { day } from "../../../src/worksheet/dates";
import { whoIsMeant } from "../../../taskpane/actions/caseload/identity";
import { tubeOut, type TubeOut } from "../../../taskpane/actions/tube-out";
import { forms } from "../../../taskpane/texts/forms";
import { tubeOut as words } from "../../../taskpane/texts/tube-out";
import { pane as paneWords } from "../../../taskpane/texts/pane";
import { TubeOutPage } from "../../../taskpane/ui/tube-out/TubeOut";
import { TubeOutAnswer } from "../../../taskpane/ui/tube-out/TubeOutAnswer";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { caseloadBook } from "./book";
import { caseloadOf, type Cells } from "./in-memory";

const TODAY = day("2026-11-26");
const AGREED = "Nobody has agreed these settings yet.";
const SPARE = "put in the spare";

const healthy: Cells = {
  ID: "D-001",
  Status: "active",
  Born: day("1950-06-01"),
  Shape: "low-profile",
  "Size Fr": 14,
  "Known from": "label",
  "Device in": day("2026-09-01"),
  "Spare Fr": 14,
  "Spare expires": day("2027-12-31"),
};
const settings = { Tract_Low: 6, Tract_High: 12, First_Days: 14 };

/** Each column with the ways in which it may be written. */
const ways: Readonly<Record<string, readonly Cells[string][]>> = {
  Access: ["G", "GJ", "J", null],
  // mature, uncertain, immature, ahead, not written down
  "Stoma made": [day("2024-01-08"), TODAY - 60, TODAY - 20, TODAY + 3, null],
  "Held by": ["balloon", "bumper", "catheter", null],
  "First tube": ["no", "yes", null],
  "Slow healing": ["no", null],
  "Trained for tube out": ["put in spare", null],
  "Own tube-out plan": ["yes", null],
  "Spare at home": ["same size", "none"],
};

function combinations(): readonly Cells[] {
  return Object.entries(ways).reduce<readonly Cells[]>(
    (all, [header, values]) => all.flatMap((cells) => values.map((value) => ({ ...cells, [header]: value }))),
    [healthy],
  );
}

/** What is read: tags fall away, parts of a page stand apart. */
const read = (markup: string): string =>
  markup
    .replace(/<[^>]*>/g, " ")
    .replaceAll("&#x27;", "'")
    .replaceAll("&amp;", "&")
    .replace(/\s+/g, " ")
    .trim();

const overview = await fakeWorkbook(caseloadBook({ tubes: [healthy as never] })).overview();
const paper = { overview, today: TODAY, locale: "en-GB", version: "1.2.3", agreed: AGREED };
const who = { id: "D-001", told: forms.person.told("1 Jun 1950", forms.ends.G) };

const onScreen = (said: TubeOut): string => read(renderToStaticMarkup(<TubeOutAnswer said={said} agreed={AGREED} />));
const onPaper = (said: TubeOut): string =>
  read(renderToStaticMarkup(<TubeOutPage said={said} who={who} paper={paper} />));

function saidOf(cells: Cells, more: Readonly<Record<string, string>> = {}): TubeOut {
  const caseload = caseloadOf({ tubes: [cells], names: { ...settings, ...more } });
  const meant = whoIsMeant(caseload.tubes, "D-001");
  return tubeOut(caseload, meant, meant.devices[0]!, TODAY);
}

/** The cell that the worksheet function gives for this row. */
function cellOf(cells: Cells): string {
  const given = ["Stoma made", "today", "Held by", "Access"].map((one) => (one === "today" ? TODAY : cells[one]));
  const first = cells["Stoma made"] === null || (cells["Stoma made"] as number) > TODAY ? null : firstOf(cells);
  return call(CAMEOUT, [...given, first, cells["Slow healing"]] as never) as string;
}

/** As the list's own dates have it: put in later than 14 days after the stoma, and written down as none. */
function firstOf(cells: Cells): string | null {
  const days = (cells["Device in"] as number) - (cells["Stoma made"] as number);
  if (days < 0) return cells["First tube"] === "yes" ? "yes" : null;
  return days <= 14 ? "yes" : ((cells["First tube"] ?? null) as string | null);
}

const CARD = " Call the number on your emergency card.";
const sentencesOf = (text: string): readonly string[] => text.replace(CARD, "").split(/(?<=\.) /);

test("over all combinations screen and page say what CAMEOUT says, or that nothing is to be put in", () => {
  const wrong: unknown[] = [];
  const classes = new Set<string>();
  let spares = 0;
  const all = combinations();
  for (const cells of all) {
    const said = saidOf(cells);
    const cell = cellOf(cells);
    classes.add(said.is);
    for (const [where, text] of [
      ["screen", onScreen(said)],
      ["page", onPaper(said)],
    ] as const) {
      const isRefused = text.includes("Put nothing in and go to hospital now: in this list");
      if (text.includes(SPARE)) spares += 1;
      if (!cell.includes(SPARE) && (text.includes(SPARE) || isRefused)) wrong.push([where, cells]);
      if (cell.includes(SPARE) && text.includes(SPARE) === isRefused) wrong.push([where, "both or neither", cells]);
      if (isRefused) continue;
      const missing = sentencesOf(cell).filter((sentence) => !text.includes(sentence));
      if (missing.length > 0) wrong.push([where, missing, cells]);
      const places = [opening, said.middle, words.call, words.known].map((part) => text.indexOf(part));
      if (places.some((at, i) => at < 0 || (i > 0 && at < places[i - 1]!))) wrong.push([where, "order", places]);
    }
  }
  expect(wrong.slice(0, 3)).toEqual([]);
  expect(all).toHaveLength(4 * 5 * 4 * 3 * 2 * 2 * 2 * 2);
  expect(classes.size).toBeGreaterThanOrEqual(10);
  /* One row of all: every doubt and every gap takes the spare away. */
  expect(spares).toBe(2);
});

describe("nothing reads more reassuring than the sentences", () => {
  const HEADINGS = [words.call, words.known, "Not written down:", "Ask."];
  const PAGE = [
    /Tube out: D-001/,
    /Printed [^.]*\./,
    /Data as on [^.]*\.|The day that the data count for is not known\./,
  ];

  /** Takes away what was worked out, the longest first; what is left was made up on the way. */
  function leftOf(text: string, said: TubeOut): string {
    const facts = said.facts.flatMap(({ facts }) => facts.flatMap(({ label, text }) => [label, text]));
    const known = [
      ...[...said.first, ...said.more].flatMap((one) => [...sentencesOf(one)]),
      ...said.calls.flatMap(({ label, text }) => [label, text]),
      ...facts,
      ...said.notWritten,
      ...[TUBE_OUT, AGREED, paneWords.quietLine, who.told, ...HEADINGS],
    ];
    const bare = PAGE.reduce((rest, one) => rest.replace(one, " "), text).replace("Version 1.2.3.", " ");
    return known
      .sort((one, other) => other.length - one.length)
      .reduce((rest, one) => rest.replaceAll(one, " "), bare)
      .replace(/\band\b|[\s,.]/g, "");
  }

  const rows = combinations().filter((_, i) => i % 7 === 0);
  test("on screen and on paper", () => {
    for (const cells of rows) {
      const said = saidOf(cells, { Call_Day: "01632 960001" });
      expect(leftOf(onScreen(said), said)).toBe("");
      expect(leftOf(onPaper(said), said)).toBe("");
    }
  });

  test("what is not known comes before what is, and is marked", () => {
    const said = saidOf({ ...healthy, Access: "G", "Stoma made": day("2024-01-08"), "Held by": "balloon" });
    const markup = renderToStaticMarkup(<TubeOutAnswer said={said} agreed={AGREED} />);
    const facts = [...markup.matchAll(/<dd>(.*?)<\/dd>/g)].map(([, one]) => one!).slice(said.calls.length);
    const marked = facts.map((one) => one.includes("state missing"));
    expect(marked.filter(Boolean)).toHaveLength(said.notWritten.length);
    expect(marked.lastIndexOf(true)).toBeLessThan(marked.indexOf(false));
  });

  test("no heading and no label promises", () => {
    const labels = [...HEADINGS, ...Object.values(words).filter((one) => typeof one === "string")];
    for (const label of labels) expect(label).not.toMatch(/\b(?:ok|safe|fine|good|ready|sure|may|can|yes)\b|✓|✔/i);
  });
});
