/** Laws of the caseload: no reassuring word where something is missing, impossible or stale; nothing hard-coded. */
import { describe, expect, it } from "vitest";
import { standing, type BookDescription } from "../../src/caseload/book";
import { deviceSteps } from "../../src/caseload/checks/device";
import { listHeaderRow } from "../../src/caseload/layout";
import { MOST_CHECKS } from "../../src/caseload/limits";
import { balloon as balloonColumn } from "../../src/caseload/tubes/balloon";
import { caseloadBook } from "../../src/caseload/index";
import { readiness } from "../../src/caseload/ready";
import { inFile } from "../../taskpane/workbook/file/formula";
import type { SheetValue } from "../../src/columns/sheet-block";
import { Reader } from "../../src/formula/reader/reader";
import { settingGroups, type ClinicSettingName } from "../../src/settings/index";
import { BALLOONSTATE } from "../../src/balloon/balloonstate";
import { STOMAFIT } from "../../src/fit/stomafit";
import { TRACTSTATE } from "../../src/schedule/tractstate";
import { call } from "../../src/worksheet/call";
import { day } from "../../src/worksheet/dates";
import { CellError } from "../../src/worksheet/error";
import { columnsOf } from "../../src/caseload/tables";
import { workOut } from "../examples/caseload/worked-rows";
import { hostileRows, joined, OPTIONS } from "../examples/caseload/hostile-rows";
import { AS_OF, checksOf, goodBumper, goodCheck, goodTube, tubeOf, type Cells } from "../examples/caseload/one-row";

const bad: readonly SheetValue[] = [
  ...[null, "  ", "n/k", "?", "*", true, new CellError("#N/A"), -1, "3/4/24"],
  ...[day("2052-03-04"), 2019],
];
/** Stale, but a real day. */
const old = day("2020-01-01");

/** The cells without which a word would promise too much. */
const standsOn: readonly {
  word: string;
  header: string;
  base: Cells;
  cells: readonly string[];
  stale: readonly string[];
}[] = [
  { word: "later", header: "Change", base: goodTube, cells: ["Held by", "Access", "Device in"], stale: ["Device in"] },
  {
    word: "no set change",
    header: "Change",
    base: goodBumper,
    cells: ["Held by", "Access", "Device in"],
    stale: ["Device in"],
  },
  { word: "mature by weeks", header: "Tract", base: goodTube, cells: ["Stoma made", "Slow healing"], stale: [] },
  {
    word: "as filled",
    header: "Balloon",
    base: goodTube,
    cells: ["Held by", "Stoma made", "Device in", "Fill mL"],
    stale: [],
  },
  {
    word: "in range",
    header: "Fit",
    base: goodTube,
    cells: ["Shape", "Length cm", "Lying cm", "Sitting cm", "Measured on"],
    stale: ["Measured on"],
  },
  {
    word: "in range",
    header: "Fit",
    base: goodBumper,
    cells: ["Shape", "Play mm", "Measured on"],
    stale: ["Measured on"],
  },
  {
    word: "same mark",
    header: "Mark",
    base: goodBumper,
    cells: ["Shape", "Mark then cm", "Mark now cm", "Measured on", "Device in"],
    stale: ["Measured on"],
  },
];
/** A check of a bumper is a contradiction. */
const checksOfBase = (base: Cells) => (base === goodBumper ? { checks: [] } : {});
const mustHave = [
  ...["ID", "Access", "Stoma made", "Held by", "Shape", "Size Fr", "Length cm", "Device in", "Fill mL"],
  ...["Changed by", "Spare at home", "Spare expires", "Lying cm", "Sitting cm", "Measured on"],
];

describe("a reassuring word", () => {
  it.each(standsOn)("$word in $header stands when all is there", ({ word, header, base }) => {
    expect(tubeOf({ tube: base, ...checksOfBase(base) })[header]).toBe(word);
  });
  it.each(standsOn)("$word in $header falls with every cell that it stands on, alone and in pairs", (one) => {
    const { word, header, base, cells, stale } = one;
    const spoilt = (names: readonly string[]): readonly Cells[] =>
      names.length === 0
        ? [base]
        : spoilt(names.slice(1)).flatMap((rest) =>
            [...bad, ...(stale.includes(names[0]!) ? [old] : [])].map((value) => ({ ...rest, [names[0]!]: value })),
          );
    for (const first of cells)
      for (const second of cells)
        for (const tube of spoilt(first === second ? [first] : [first, second])) {
          expect(tubeOf({ tube, ...checksOfBase(base) })[header], JSON.stringify(tube)).not.toBe(word);
        }
  });
  it("nothing due falls with every cell that must be there", () => {
    for (const header of mustHave)
      for (const value of bad) {
        const row = tubeOf({ tube: { ...goodTube, [header]: value } });
        expect(row["To do"], `${header}: ${String(value)}`).not.toBe("nothing due");
      }
  });
  /** Cells that may be blank; each of these says something that is to be done. */
  const loud: readonly (readonly [string, readonly SheetValue[]])[] = [
    ["Most mL", [null, "  ", "8 mL"]],
    ["Known from", [null, "not known", "?", 1]],
    ["Site", ["red", "Infected", "leaking ", "overgrown", "tight or stuck", "oozing", "?"]],
    ["Booked for", [AS_OF - 1, "next week", day("2052-01-01")]],
  ];
  it("nothing due falls with what the site, the label and the source say", () => {
    for (const base of [goodTube, goodBumper])
      for (const [header, values] of loud)
        for (const value of values) {
          if (base === goodBumper && header === "Most mL" && value !== "8 mL") continue;
          const row = tubeOf({ tube: { ...base, [header]: value }, ...checksOfBase(base) });
          expect(row["To do"], `${header}: ${String(value)}`).not.toBe("nothing due");
        }
  });
  it("as filled and nothing due fall with what a check leaves in the balloon, and with what it looked like", () => {
    const lefts: readonly SheetValue[] = [null, "  ", 0, -1, 2, 4.4, 5.6, 7.1, 61, "5 mL", true, new CellError("#N/A")];
    const looks: readonly SheetValue[] = ["cloudy", "Cloudy ", "milky, yellow or like feed", "nothing came"];
    const spoilt = [...lefts.map((put) => ({ "Put in mL": put })), ...looks.map((looked) => ({ Looked: looked }))];
    for (const cells of spoilt) {
      const checks = [{ ...goodCheck, ...cells }];
      const row = tubeOf({ checks });
      expect(row["Balloon"], JSON.stringify(cells)).not.toBe("as filled");
      expect(row["To do"], JSON.stringify(cells)).not.toBe("nothing due");
      expect(checksOf({ checks })[0]!["State"], JSON.stringify(cells)).not.toBe("as filled");
    }
  });
  it("silence ends, or is said to have no date, whatever stands in Status since", () => {
    for (const status of ["on hold", "in hospital"])
      for (const since of [...bad, old, AS_OF - 29]) {
        const row = tubeOf({ tube: { ...goodTube, Status: status, "Status since": since } });
        const isSaid = row["Missing or contradictory"] !== "" || String(row["To do"]).endsWith("too long");
        expect(isSaid, `${status}: ${String(since)}`).toBe(true);
      }
  });
  it("no word holds a sign that filters take for a wildcard", () => {
    const rows = joined(hostileRows(240, 240, 40));
    const { tubes, checks, changes } = workOut(rows, OPTIONS);
    const computed = { tubes, checks, changes };
    for (const table of ["tubes", "checks", "changes"] as const)
      for (const { header, kind, isHidden } of columnsOf(table, OPTIONS.groups)) {
        if (kind !== "computed" || isHidden) continue;
        for (const row of computed[table]) expect(String(row[header] ?? ""), header).not.toMatch(/[?*~]/);
      }
  });
  it("nothing due falls where the spare has no lot; any text may be one", () => {
    for (const value of [null, "  "]) {
      expect(tubeOf({ tube: { ...goodTube, "Spare lot": value } })["To do"]).toBe("check entries");
    }
  });
  it("as filled falls with every cell of the check", () => {
    for (const header of ["ID", "Checked on", "Out mL"])
      for (const value of [...bad, old]) {
        const checks = [{ ...goodCheck, [header]: value }];
        expect(tubeOf({ checks })["Balloon"], `${header}: ${String(value)}`).not.toBe("as filled");
        expect(checksOf({ checks })[0]!["State"] === "as filled" && value !== old, `${header}: ${String(value)}`).toBe(
          false,
        );
      }
  });
  it("never stands on a setting that is missing or impossible", () => {
    const families = [
      ["change", "Change", ["later"]],
      ["opening", "Tract", ["mature by weeks"]],
      ["balloon", "Balloon", ["as filled"]],
      ["fit", "Fit", ["in range"]],
      ["entries", "To do", ["nothing due"]],
    ] as const;
    for (const [family, header, good] of families)
      for (const name of readiness[family].above)
        for (const value of [null, 0, -1, "seven", new CellError("#N/A")]) {
          const row = tubeOf({ settings: { [name]: value } as Partial<Record<ClinicSettingName, SheetValue>> });
          expect(good as readonly SheetValue[], `${name}: ${String(value)}`).not.toContain(row[header]);
          expect(row["To do"], `${name}: ${String(value)}`).not.toBe("nothing due");
        }
  });
  it("is none of the words in bad or missing colours", () => {
    const rules = balloonColumn.rules as readonly { look: string; words: readonly string[] }[];
    expect(rules.find(({ look }) => look === "quiet")!.words).toEqual(["kept at home", "as filled"]);
  });
});

describe("the columns' rules agree with the worksheet functions at their defaults", () => {
  it("State with BALLOONSTATE", () => {
    for (let out = 0; out <= 12; out += 0.1)
      for (const fill of [1, 4.4, 5, 5.1, 8, 10]) {
        const volume = Math.round(out * 10) / 10;
        const tube = { ...goodTube, "Fill mL": fill, "Most mL": null };
        const [check] = checksOf({ tube, checks: [{ ...goodCheck, "Out mL": volume, "Put in mL": fill }] });
        expect(check!["State"], `${volume} of ${fill}`).toBe(call(BALLOONSTATE, [volume, fill]));
      }
  });
  it("Tract with TRACTSTATE", () => {
    for (let days = 0; days < 120; days++)
      for (const slow of ["no", "yes", "not known"]) {
        const tube = { ...goodTube, "Stoma made": AS_OF - days, "Slow healing": slow };
        expect(tubeOf({ tube })["Tract"]).toBe(call(TRACTSTATE, [AS_OF - days, AS_OF, 6, 12, slow]));
      }
  });
  it("Fit with STOMAFIT, as long as the measurement is good", () => {
    for (let length = 1.5; length < 3.2; length += 0.1)
      for (const sitting of [2, 2.1, 2.2, 2.4]) {
        const cm = Math.round(length * 10) / 10;
        const tube = { ...goodTube, "Length cm": cm, "Sitting cm": sitting };
        expect(tubeOf({ tube })["Fit"], `${cm}, ${sitting}`).toBe(call(STOMAFIT, [cm, 2, sitting]));
      }
  });
});

describe("formulas", () => {
  const books = [[], ["fit", "plan", "spare"]].map((groups) =>
    caseloadBook({ asOf: AS_OF, groups: groups as never, people: "none" }),
  );
  const formulasOf = (book: BookDescription): readonly string[] => [
    ...book.sheets.flatMap(({ table, cells }) => [
      ...(table?.columns ?? []).flatMap(({ formula }, index) => (formula ? [standing(table!, index)] : [])),
      ...cells.flatMap(({ formula }) => formula ?? []),
    ]),
    ...book.names.filter(({ name }) => name !== "As_of").map(({ refersTo }) => refersTo),
  ];
  const all = books.flatMap((book) => formulasOf(book));
  /** Those that stand in each row; settings that are asked once may be longer. */
  const inRows = (book: BookDescription): readonly string[] =>
    book.sheets.flatMap(({ table }) =>
      (table?.columns ?? []).flatMap(({ formula }, index) => (formula ? [standing(table!, index)] : [])),
    );
  const asShown = (formula: string): string => formula.replace(/\w+\[\[#This Row\],/g, "[@");
  /** Without texts and references. */
  const bare = (formula: string): string =>
    formula
      .replace(/"(?:[^"]|"")*"/g, "")
      .replace(/\w+\[(?:\[[^\]]*\],?)*[^\]]*\]/g, "cell")
      .replace(/'[^']+'!/g, "")
      .replace(/\$?[A-Z]{1,2}\$?\d+/g, "cell");

  it("there are many", () => expect(all.length).toBeGreaterThan(80));
  it("hold no figure but 0 and 1, days of a week, months of a year, decimals, percent, thirds of a mm, powers of ten", () => {
    const figures = all.flatMap((formula) => bare(formula).match(/(?<![\w.])\d+(?:\.\d+)?/g) ?? []);
    expect(new Set(figures)).toEqual(new Set(["0", "1", "7", "12", "9", "10", "5", "4", "15", "100", "3"]));
    const only = (figure: string, within: RegExp) => {
      for (const formula of all)
        expect(bare(formula).replace(within, "")).not.toMatch(new RegExp(`(?<![\\w.])${figure}(?![\\w.])`));
    };
    only("4", /5\*10\^4/g);
    only("5", /5\*10\^4|10\^5/g);
    only("15", /9\*10\^15/g);
    only("3", /cell\/3/g);
  });
  it("count from no other today, and move with no text", () => {
    for (const formula of all)
      expect(bare(formula)).not.toMatch(/\b(?:TODAY|NOW|OFFSET|INDIRECT|RAND\w*|TEXT|CELL|INFO)\(/);
  });
  it("ask for nothing that is newer than Excel 2019, and read as a person sees them", () => {
    for (const formula of all) {
      expect(bare(formula)).not.toMatch(
        /\b(?:LET|XLOOKUP|XMATCH|FILTER|SORT|SORTBY|UNIQUE|SEQUENCE|LAMBDA|TEXTBEFORE|VSTACK)\(/,
      );
    }
    for (const formula of books.flatMap(inRows)) {
      expect(asShown(formula).length, formula).toBeLessThanOrEqual(400);
      expect(inFile(formula).length, formula).toBeLessThanOrEqual(600);
    }
  });
  it("are no more and no longer, all in all, than docs/decisions.md says", () => {
    const rules = inRows(books[1]!);
    const mean = (texts: readonly string[]): number =>
      texts.reduce((sum, { length }) => sum + length, 0) / texts.length;
    expect(rules.length).toBeLessThanOrEqual(170);
    expect(mean(rules.map(asShown))).toBeLessThanOrEqual(138);
    expect(mean(rules.map((one) => inFile(one)))).toBeLessThanOrEqual(170);
  });
  it("count months by the month's last day too, because the grid's engine runs over it", () => {
    for (const formula of all.filter((one) => one.includes("EDATE(")))
      expect(formula).toMatch(/MIN\(EDATE\(([^()]+)\),EOMONTH\(\1\)\)/);
  });
  it("know every name that they use", () => {
    for (const book of books) {
      const known = new Set(book.names.map(({ name }) => name));
      const used = formulasOf(book).flatMap((formula) => bare(formula).match(/\b[A-Z][A-Za-z]+_[A-Za-z]+\b/g) ?? []);
      expect(used.filter((name) => !known.has(name))).toEqual([]);
    }
  });
  it("call one function of ours only, in a column that no other one reads", () => {
    const ours = all.flatMap((formula) => formula.match(/TUBE\.\w+/g) ?? []);
    expect(new Set(ours)).toEqual(new Set(["TUBE.FRTOMM"]));
    const headers = books.flatMap(({ sheets }) =>
      sheets.flatMap(({ table }) =>
        (table?.columns ?? []).flatMap(({ formula = [] }) =>
          formula.flatMap((part) => (typeof part === "string" ? [] : [part.header])),
        ),
      ),
    );
    expect(headers).toContain("Size Fr");
    expect(headers).not.toContain("Size mm");
  });
});

describe("the order of checks", () => {
  const [KEY, ON, TAG] = [0, 1, 2];
  /** A check of its own device in that row of a list, counted from 0. */
  function tagOf(when: number, place: number): number {
    const sheet = "Checks";
    const first = listHeaderRow + 1;
    const row = first + place;
    const slots = Object.assign((header: string) => [{ header, index: 0 }], { has: () => true });
    const cells: Readonly<Record<string, string>> = {
      Key: `$A${row + 1}`,
      "Check day": `$B${row + 1}`,
      Tube: "1",
    };
    const tag = deviceSteps.find(({ header }) => header === "Tag")!;
    const text = tag.formula!(slots).map((part) => (typeof part === "string" ? part : cells[part.header]!));
    const reader = new Reader({
      sheets: [sheet],
      tables: [],
      names: [
        { name: "Check_Top", refersTo: `${sheet}!$A$${first}` },
        { name: "Change_Key", refersTo: `${sheet}!$D$1:$D$9` },
      ],
      today: AS_OF,
      ours: () => undefined,
    });
    reader.fill({ sheet, row, column: TAG }, row, text.join(""));
    reader.put({ sheet, row, column: KEY }, "k:t-1|g");
    reader.put({ sheet, row, column: ON }, when);
    reader.work();
    return reader.at({ sheet, row, column: TAG }) as number;
  }

  it("follows the days up to the most rows that Record a check lets in", () => {
    expect(tagOf(AS_OF - 1, MOST_CHECKS - 1) % 1e10).toBeLessThan(tagOf(AS_OF, 0) % 1e10);
    expect(Number.isSafeInteger(tagOf(AS_OF, MOST_CHECKS - 1))).toBe(true);
    // Far beyond it a check would pass for one of the next day: the reason for the limit.
    expect(tagOf(AS_OF - 1, MOST_CHECKS + 2_000) % 1e10).toBeGreaterThan(tagOf(AS_OF, 0) % 1e10);
  });
});

describe("settings", () => {
  it("stand on the sheet, each with its name, in groups", () => {
    const book = caseloadBook({ asOf: AS_OF, groups: [], people: "none" });
    const sheet = book.sheets.at(-1)!;
    const headings = sheet.cells.filter(({ look }) => look === "heading").map(({ value }) => value);
    for (const { heading, settings } of settingGroups) {
      expect(headings).toContain(heading);
      for (const { name, label } of settings) {
        const { refersTo } = book.names.find((one) => one.name === name)!;
        const row = Number(/\$(\d+)$/.exec(refersTo)![1]) - 1;
        expect(sheet.cells.find((cell) => cell.row === row && cell.column === 0)!.value).toBe(label);
      }
    }
  });
});
