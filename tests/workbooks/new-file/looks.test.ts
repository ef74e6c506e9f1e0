/** Contrast by the formula of WCAG 2.2 ("relative luminance", "contrast ratio"). */
import { describe, expect, it } from "vitest";
import { groupPaint, looks, ruleLooks, type Paint } from "../../../taskpane/workbook/file/looks";

function luminance(color: string): number {
  const [red, green, blue] = [0, 2, 4].map((at) => {
    const share = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

describe("looks of new workbooks", () => {
  // #777777 on white is the well-known 4.48 : 1 that just misses.
  it("are measured rightly", () => expect(contrast("777777", "FFFFFF")).toBeCloseTo(4.48, 2));

  const paints: [string, Paint][] = [...Object.entries(looks), ...Object.entries(ruleLooks), ["group", groupPaint]];
  it.each(paints)("%s can be read", (_, { ink, ground = "FFFFFF" }) => {
    expect(contrast(ink, ground)).toBeGreaterThanOrEqual(4.5);
  });

  it.each(Object.entries(ruleLooks))("%s can be read where the cell's own ground shows", (_, { ink, ground }) => {
    for (const own of [looks.computed.ground!, "FFFFFF"]) expect(contrast(ink, ground ?? own)).toBeGreaterThanOrEqual(4.5);
  });
});
