/** What stands in a new file can be read (WCAG 2.2, 1.4.3). */
import { describe, expect, it } from "vitest";
import { groupPaint, looks, ruleLooks, type Paint } from "../../../taskpane/workbook/file/looks";
import { contrast } from "../../laws/colour";

describe("looks of new workbooks", () => {
  const paints: [string, Paint][] = [...Object.entries(looks), ...Object.entries(ruleLooks), ["group", groupPaint]];
  it.each(paints)("%s can be read", (_, { ink, ground = "FFFFFF" }) => {
    expect(contrast(ink, ground)).toBeGreaterThanOrEqual(4.5);
  });

  it.each(Object.entries(ruleLooks))("%s can be read where the cell's own ground shows", (_, { ink, ground }) => {
    for (const own of [looks.computed.ground!, "FFFFFF"]) expect(contrast(ink, ground ?? own)).toBeGreaterThanOrEqual(4.5);
  });
});
