/** Change on columns that come in with it: the whole chain in the grid's own engine, against what the preview promises. */
import { beforeAll, describe, expect, it } from "vitest";
import type { ColumnSlot } from "../../../src/columns/formula";
import { recipeNamed } from "../../../src/columns/recipes/index";
import type { RowCells } from "../../../src/columns/recipes/recipe";
import type { KindKey } from "../../../src/settings/kinds";
import { day } from "../../../src/worksheet/dates";
import { CellError, SheetError } from "../../../src/worksheet/error";
import { CASES_AS_OF, type CaseCell } from "../change-cases";
import { asRow, shown, slot, using, workedOutInTurn } from "./engine";

const words = new Map<string, KindKey>([
  ["balloon", "balloon gastrostomy"],
  ["gj", "gastrojejunal"],
  ["bumper", "bumper adult"],
  ["catheter", "placing team"],
]);
const around = (days: readonly number[]): readonly CaseCell[] => days.map((days) => CASES_AS_OF + days);
const LASTS: readonly CaseCell[] = [
  ...around([
    -3000, -800, -731, -730, -184, -182, -181, -100, -93, -92, -91, -90, -80, -78, -77, -76, -30, -1, 0, 1, 2,
  ]),
  CASES_AS_OF + 0.9,
  CASES_AS_OF - 92 + 0.5,
  ...[
    "2026-02-11",
    " 2026-02-11 ",
    "2026-02-11T09:00",
    "2052-03-04",
    "2052-03-04T10:00",
    "2026-13-40",
    "2027-02-30",
    "3/4/24",
  ],
  ...["see letter", "*", "?", "", "  ", "0", "12/03/2052", "later", "TRUE"],
  ...[0, 5, 61, 20260514, 2958465, day("2052-03-04"), null, true, false, "=NA()"],
];
const KINDS: readonly CaseCell[] = ["balloon", "GJ", "bumper", "catheter", "PEG", null, "=NA()"];
const rows = LASTS.flatMap((last) => KINDS.map((kind): CaseCell[] => [last, kind]));

describe.each([{ withLatest: true }, { withLatest: false }])("latest added too: $withLatest", ({ withLatest }) => {
  const rule = using({ from: "words", words });
  const [changeDue, atTheLatest, change] = [
    recipeNamed("changeDue"),
    recipeNamed("atTheLatest"),
    recipeNamed("change"),
  ];
  const [last, kind] = [slot("Last", 0), slot("Kind", 1)];
  const added = (header: string, index: number): ColumnSlot => ({ header, index, isAdded: true });
  const due = added("Change due", 2);
  const latest = added("At the latest", 3);
  const templates = [
    changeDue.template({ last, kind }, rule),
    ...(withLatest ? [atTheLatest.template({ last, kind }, rule)] : []),
    change.template({ last, due, ...(withLatest && { latest }) }, rule),
  ];
  let values: readonly unknown[] = [];
  beforeAll(async () => {
    values = await workedOutInTurn(rows, templates);
  });

  it("is the short form", () => expect(JSON.stringify(templates.at(-1))).not.toContain("|no set change|"));

  it(`shows in all ${rows.length} rows what the preview promised`, () => {
    const standing = (answer: unknown) => (answer instanceof SheetError ? new CellError(answer.code) : answer);
    const promised = rows.map(([lastCell, kindCell]) => {
      const cells: RowCells = { last: asRow(lastCell!), kind: asRow(kindCell!) };
      const own = {
        last: cells.last,
        due: standing(changeDue.answer(cells, rule)),
        ...(withLatest && { latest: standing(atTheLatest.answer(cells, rule)) }),
      } as RowCells;
      return shown(change.answer(own, rule));
    });
    expect(rows.map((row, i) => [...row, values[i]])).toEqual(rows.map((row, i) => [...row, promised[i]]));
  });
});
