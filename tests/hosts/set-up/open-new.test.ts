/** A made workbook on its way into Excel; Microsoft's objects are stood in for, as no Excel is at hand. */
import { afterEach, describe, expect, it, vi } from "vitest";
import { base64Of, openNew } from "../../../taskpane/workbook/excel/open-new";

const bytes = Uint8Array.from({ length: 200_001 }, (_, i) => (i * 7) % 256);

function standIn(isSupported: boolean, createWorkbook: (base64: string) => Promise<void>): void {
  vi.stubGlobal("Office", {
    context: {
      requirements: {
        isSetSupported: (set: string, version: string) => isSupported && set === "ExcelApi" && version === "1.8",
      },
    },
  });
  vi.stubGlobal("Excel", { createWorkbook });
}
afterEach(() => vi.unstubAllGlobals());

describe("opening a made workbook in Excel", () => {
  it("hands over every byte", async () => {
    const handed: string[] = [];
    standIn(true, async (base64) => void handed.push(base64));
    expect(await openNew(bytes, "Caseload.xlsx")).toEqual({ outcome: "opened" });
    expect(Buffer.compare(Buffer.from(handed[0]!, "base64"), bytes)).toBe(0);
  });

  it("encodes as Node does", () => {
    for (const length of [0, 1, 2, 3, 32_767, 32_768, 32_769])
      expect(base64Of(bytes.subarray(0, length))).toBe(Buffer.from(bytes.subarray(0, length)).toString("base64"));
  });

  it("asks nothing of an Excel that is too old", async () => {
    const create = vi.fn(async () => undefined);
    standIn(false, create);
    expect(await openNew(bytes, "x")).toMatchObject({
      outcome: "refused",
      sentence: expect.stringContaining("Update Excel"),
    });
    expect(create).not.toHaveBeenCalled();
  });

  it("offers the browser page where Excel may not open workbooks", async () => {
    // A policy that forbids it comes as InvalidOperation, its message in Excel's own language (office-js issue 3568).
    for (const code of ["InvalidOperation", "GeneralException", "AccessDenied"]) {
      standIn(true, async () => {
        throw Object.assign(new Error("Dieser Vorgang ist nicht zulässig"), { code });
      });
      const said = await openNew(bytes, "x");
      expect(said).toMatchObject({ outcome: "refused", sentence: expect.stringContaining("browser page (index.html") });
      expect(said).toMatchObject({ sentence: expect.not.stringContaining("Dieser") });
    }
  });

  it("says what Excel refuses", async () => {
    standIn(true, async () => {
      throw Object.assign(new Error("no"), { code: "InvalidOperationInCellEditMode" });
    });
    expect(await openNew(bytes, "x")).toEqual({
      outcome: "refused",
      sentence: "A cell is being edited. Press Enter or Esc in the sheet, then try again.",
    });
  });
});
