/** Where Excel's filters are known to be treacherous. */
import { describe, expect, it } from "vitest";
import type { WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Change, Criterion } from "../../../taskpane/workbook/port";
import { apply } from "../contract/kit";
import { beside, FILTERED } from "../contract/workbooks";
import { using, type Opened } from "./open";

const show = (table: string, ...criteria: Criterion[]): Change => ({
  steps: [{ kind: "showRows", of: { table }, criteria }],
  expects: [],
});

const SIZES: WorkbookDescription = beside({
  rows: [
    ["Id", "Size"],
    ["C1", "14?"],
    ["C2", "145"],
    ["C3", 14],
  ],
});

const hidden = ({ workbook }: Opened) => workbook.read({ table: "Table1" }, ["hidden"]).then((block) => block.hidden);

export function describeFilterTraps(): void {
  describe("Excel's traps with filters", () => {
    it(
      "a question mark that Excel takes for any letter is not passed off as chosen",
      using(SIZES, async (host) => {
        const receipt = await apply(host.workbook, show("Table1", { column: 1, keeps: ["14?"] }));
        expect(receipt).toMatchObject({ outcome: "refused", done: [] });
        expect(receipt.sentence).toMatch(/filter cannot tell/);
        expect(await hidden(host)).toEqual([false, false, false, false]);
      }),
    );

    it(
      "an earlier filter comes back as it was, although Excel tells it with nulls",
      using(FILTERED, async (host) => {
        const before = await hidden(host);
        expect(before).toEqual([false, false, true, false, true]);
        const receipt = await apply(host.workbook, show("Table1", { column: 1, keeps: [12] }));
        expect(await hidden(host)).toEqual([false, true, false, true, true]);
        expect(await host.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
        expect(await hidden(host)).toEqual(before);
      }),
    );

    it(
      "a list's filter goes for good at taking back, or returns to what it was",
      using(beside({ tables: [] }), async ({ workbook, book, model }) => {
        const { id } = (await workbook.overview()).sheets[0]!;
        const list = { sheet: id, area: parseArea("A1:B4")! };
        const showIn = (...criteria: Criterion[]): Change => ({
          steps: [{ kind: "showRows", of: { list }, criteria }],
          expects: [],
        });
        const rows = async () => (await workbook.read(list, ["hidden"])).hidden;
        const filter = () => model.filters.onSheet(model, book.sheet("Sheet1")!).properties!["enabled"]!.get();
        const first = await apply(workbook, showIn({ column: 1, keeps: [10] }));
        const second = await apply(workbook, showIn({ column: 0, keeps: ["C2"] }));
        expect(await rows()).toEqual([false, true, false, true]);
        await workbook.takeBack(second);
        expect(await rows()).toEqual([false, false, true, true]);
        expect(filter()).toBe(true);
        await workbook.takeBack(first);
        expect(await rows()).toEqual([false, false, false, false]);
        expect(filter()).toBe(false);
      }),
    );

    it(
      "the filter of another list on the same sheet is not taken away",
      using(beside({ tables: [], cells: { E1: "Other", E2: 1, E3: 2 } }), async ({ workbook }) => {
        const { id } = (await workbook.overview()).sheets[0]!;
        const showIn = (address: string, keeps: number): Change => ({
          steps: [
            {
              kind: "showRows",
              of: { list: { sheet: id, area: parseArea(address)! } },
              criteria: [{ column: address.startsWith("E") ? 0 : 1, keeps: [keeps] }],
            },
          ],
          expects: [],
        });
        expect((await apply(workbook, showIn("E1:E3", 2))).outcome).toBe("done");
        const refused = await apply(workbook, showIn("A1:B4", 10));
        expect(refused).toMatchObject({ outcome: "refused", done: [] });
        expect(refused.sentence).toMatch(/Another list/);
        const other = await workbook.read({ sheet: id, area: parseArea("E1:E3")! }, ["hidden"]);
        expect(other.hidden).toEqual([false, true, false]);
      }),
    );

    it(
      "rows hidden by hand do not count as missed",
      using(beside({ hiddenRows: [2] }), async (host) => {
        const receipt = await apply(host.workbook, show("Table1", { column: 1, keeps: [10, 12] }));
        expect(receipt.outcome).toBe("done");
        expect(await hidden(host)).toEqual([false, true, false, true]);
      }),
    );
  });
}
