/** Contradictions of a row, each beside a row that differs in one cell and holds none. */
import { describe, expect, test } from "vitest";
import { checkRows } from "../../../src/checking/check-rows";
import { rowRules } from "../../../src/checking/rules";
import { sameIdentifiers } from "../../../src/checking/same-person";
import type { RowCells } from "../../../src/columns/recipes/recipe";
import type { Role } from "../../../src/columns/role";
import { settingNamed } from "../../../src/settings/index";
import { day } from "../../../src/worksheet/dates";
import { CellError } from "../../../src/worksheet/error";

const TODAY = day("2026-11-30");
const found = (row: RowCells): readonly string[] =>
  checkRows([row], new Set(Object.keys(row) as Role[]), TODAY).map(({ reason }) => reason);

const first = settingNamed("Check_First").default;
const last = day("2026-09-01");

/** What cannot be right, in which row, and the cell with which it could. */
const cases: readonly (readonly [reason: string | RegExp, row: RowCells, right: RowCells])[] = [
  [/ends in the bowel: never at home/, { kind: "GJ", changedBy: "Carer" }, { changedBy: "radiology" }],
  [/ends in the bowel: never at home/, { access: "J", changedBy: "mother" }, { access: "G" }],
  [/held by a bumper: never at home/, { kind: "bumper adult", changedBy: "parents" }, { kind: "balloon" }],
  [/a balloon check of a tube without a balloon/, { kind: "bumper child", putIn: 5 }, { putIn: null }],
  ["the kind ends in the stomach, the access in the bowel", { kind: "balloon", access: "GJ" }, { access: "G" }],
  ["the kind ends in the bowel, the access in the stomach", { kind: "GJ", access: "G" }, { access: "GJ" }],
  ["the last check is before the stoma was made", { lastCheck: last - 1, stomaMade: last }, { lastCheck: last + 60 }],
  [
    /^the balloon was checked before day/,
    { lastCheck: last + first - 1, stomaMade: last },
    { lastCheck: last + first },
  ],
  ["more water came out than was put in", { out: 8, putIn: 5 }, { out: 5 }],
  [/^the mark now is 0/, { markNow: 0 }, { markNow: 3 }],
  [/stop-gap for more than 7 days/, { kind: "urinary catheter", last: TODAY - 8 }, { last: TODAY - 7 }],
  ["last change is before the stoma was made", { last, stomaMade: last + 1 }, { stomaMade: last }],
  [
    "no balloon check is written down since the last change",
    { kind: "balloon", last, lastCheck: last - 1 },
    { lastCheck: last },
  ],
  ["the due date is not after the last change", { due: last, last }, { due: last + 90 }],
  ["the latest date is before the due date", { latest: last - 1, due: last }, { latest: last }],
  ["in use, but no last change", { status: "active", last: null }, { status: "left" }],
  ["last change is text, not a date", { last: "3/4/24" }, { last: "2024-04-03" }],
  ["last change is an error", { last: new CellError("#REF!") }, { last }],
  ["last change is in the future", { last: TODAY + 1 }, { last: TODAY }],
  ["last change is in the future", { last: TODAY + 1.5 }, { last: TODAY - 0.5 }],
  [/^stoma made is over \d+ years ago/, { stomaMade: 2024 }, { stomaMade: last }],
  ["change due is text, not a date", { due: "May" }, { due: TODAY + 400 }],
  ["no kind entered", { kind: " ", size: 14 }, { kind: "balloon" }],
  [/how it was placed or its shape/, { kind: "PEG" }, { kind: "bumper adult" }],
  [/how it was placed or its shape/, { kind: "button" }, { kind: "balloon button" }],
  ["the kind does not say how it is held", { kind: "BGT" }, { kind: "GJ" }],
  ["size: G means gauge; write Fr", { size: "14G" }, { size: "14 Fr" }],
  ["size looks like mm?", { size: 4.7 }, { size: 14 }],
  ["length over 10 cm: mm?", { length: 23 }, { length: 2.3 }],
  [/^sitting is below lying/, { lying: 2.1, sitting: 1.8 }, { sitting: 2.3 }],
  [/^a length beside a long tube/, { length: 2.3, shape: "long" }, { shape: "low-profile" }],
];

describe("a row", () => {
  test.each(cases)("%s", (reason, row, right) => {
    expect(found(row)).toEqual([typeof reason === "string" ? reason : expect.stringMatching(reason)]);
    expect(found({ ...row, ...right })).toEqual([]);
  });

  test("every rule is in one of these cases", () => {
    const asked = rowRules.filter(({ reads, finds }) =>
      cases.some(([, row]) => {
        if (!reads.every((role) => role in row)) return false;
        const kinds = [null, "gastrojejunal", "balloon gastrostomy", "bumper adult", "bumper child"] as const;
        return kinds.some((kind) => finds(row, { asOf: TODAY, kind }) !== null);
      }),
    );
    const roles = (rules: typeof rowRules) => rules.map(({ reads }) => reads.join());
    const others = new Set(["lastCheck", "latest", "lying", "sitting"]);
    expect(roles(rowRules.filter((rule) => !asked.includes(rule) && !others.has(rule.reads.join())))).toEqual([]);
  });

  test("a blank one is passed over, and a list without a column is not asked", () => {
    expect(found({ kind: null, last: null, status: "" })).toEqual([]);
    expect(checkRows([{ kind: "GJ" }], new Set<Role>(["kind"]), TODAY)).toEqual([]);
  });

  test("rows with the same reason stand together", () => {
    const rows: readonly RowCells[] = [{ kind: "PEG" }, { kind: "balloon" }, { kind: "RIG" }];
    expect(checkRows(rows, new Set<Role>(["kind"]), TODAY)).toEqual([
      { reason: expect.stringMatching(/placed/), at: "kind", rows: [0, 2] },
    ]);
  });
});

describe("identifiers", () => {
  test("but for capitals or spaces; twice with the same access; twice with another is right", () => {
    const ids = ["D-1", "d-017 ", "D-017", "D-2", "D-2", "D-3", "D-3", "", null];
    expect(sameIdentifiers(ids, ["G", "G", "J", "G", "J", "G", "g ", "", ""])).toEqual([
      { reason: "the same identifier, but for capitals or spaces", rows: [1, 2] },
      { reason: "the same identifier twice with the same access", rows: [5, 6] },
    ]);
    expect(sameIdentifiers(["D-2", "D-2"], null)).toEqual([{ reason: "the same identifier twice", rows: [0, 1] }]);
    expect(sameIdentifiers(["D-1", "D-2"], null)).toEqual([]);
  });
});
