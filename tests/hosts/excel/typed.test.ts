import { describe, expect, it } from "vitest";
import { entered } from "./typed";

/* What Excel does with such entries: support.microsoft.com, "Stop automatically changing numbers to dates" and "Format numbers as text". */
describe("what the stand-in for Excel makes of a text", () => {
  it.each([
    ["0070", 70],
    ["1E5", 100_000],
    ["+1", 1],
    ["50%", 0.5],
    ["true", true],
    ["2026-05-14", 46_156],
    ["14 May 2026", 46_156],
  ])("%s is no text any more", (typed, value) => {
    expect(entered(typed, "General").value).toBe(value);
  });

  it("03-04 is a date, =A1 and -A1 are formulas, @x is refused", () => {
    expect(entered("03-04", "General")).toMatchObject({ value: expect.any(Number), format: "dd/mm/yyyy" });
    expect(entered("=A1", "General").formula).toBe("=A1");
    expect(entered("-A1", "General").formula).toBe("=-A1");
    expect(() => entered("@x", "General")).toThrow();
  });

  it("an apostrophe keeps a text and goes; the format for text keeps all, and makes texts of numbers", () => {
    expect(entered("'03-04", "General")).toEqual({ value: "03-04" });
    expect(entered("03-04", "@")).toEqual({ value: "03-04" });
    expect(entered(14, "@")).toEqual({ value: "14" });
  });
});
