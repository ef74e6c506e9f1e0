/** The grid, on its real engine without a page, held to the same contract as every host. */
import { CellValueType, type IWorkbookData } from "@univerjs/core";
import { afterAll } from "vitest";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Engine } from "../../../taskpane/workbook/embedded/engine";
import { GridWorkbookPort } from "../../../taskpane/workbook/embedded/book/workbook";
import { describeContract } from "../contract/contract";
import { described } from "./described";
import { atRest } from "./at-rest";
import { startHeadless } from "./headless";

const TODAY = 46_000;

const engines: Engine[] = [];
afterAll(async () => {
  // the engine's own timers ask for a living engine
  await atRest();
  for (const engine of engines) engine.univer.dispose();
});

describeContract("The grid", async (description) => {
  const engine = startHeadless();
  engines.push(engine);
  const workbook = new GridWorkbookPort(engine, TODAY);
  const { snapshot, facts } = described(description);
  workbook.load(snapshot as unknown as Partial<IWorkbookData>, facts);
  await atRest();
  const sheetNamed = (name: string) => engine.api.getActiveWorkbook()!.getSheetByName(name)!;
  if (description.selection) {
    const sheet = sheetNamed(description.selection.sheet);
    await workbook.reveal({ sheet: sheet.getSheetId(), area: parseArea(description.selection.area)! });
  }
  return {
    workbook,
    async type(sheet, address, typed) {
      const range = sheetNamed(sheet).getRange(address);
      if (typeof typed === "string" && typed.startsWith("=")) range.setValue({ f: typed });
      else if (typed === null) range.clearContent();
      else if (typeof typed === "string") range.setValue({ v: typed, t: CellValueType.STRING });
      else range.setValue(typed);
      await atRest();
    },
    isBold(sheet, address) {
      const { top, left } = parseArea(address)!;
      return workbook.reader(sheetNamed(sheet).getSheetId()).style(top, left)?.bl === 1;
    },
  };
});
