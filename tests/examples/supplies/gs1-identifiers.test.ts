/**
 * Every identifier of GS1's dictionary (functions/gs1/identifiers.txt, its extract) stands in the table, with its format:
 * one element more on a label never refuses the label. Values are made here from the dictionary's own notation.
 */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { gs1FormatsSource } from "../../../functions/gs1/formats";
import { SheetError } from "../../../src/worksheet/error";
import { tube } from "../caller";

const file = (path: string) => readFileSync(new URL(`../../../${path}`, import.meta.url), "utf8");
const identifiers = file("functions/gs1/identifiers.txt");

interface Entry {
  readonly id: string;
  readonly closed: boolean;
  readonly format: string;
}
const entries: readonly Entry[] = identifiers
  .split("\n")
  .filter((line) => /^\d/.test(line))
  .flatMap((line) => {
    const ids = line.slice(0, 9).trim();
    const [first, last = first] = ids.split("-") as [string, string?];
    const [closed, format] = [line[10] === "*", line.slice(11).trim()];
    return Array.from({ length: Number(last) - Number(first) + 1 }, (_, i) => ({
      id: String(Number(first) + i).padStart(first.length, "0"),
      closed,
      format,
    }));
  });

/** GS1's check digit: weights 3, 1, 3, ... from the right. */
const withCheckDigit = (body: string): string => {
  const sum = [...body].reverse().reduce((total, d, i) => total + Number(d) * (i % 2 === 0 ? 3 : 1), 0);
  return body + String((10 - (sum % 10)) % 10);
};

/** A right value; the shortest, or the longest with all that may be left out. */
function valueOf(format: string, longest: boolean): string {
  return format
    .split(" ")
    .map((part) => {
      const [, bracket, type, upTo, most, check] = /^(\[?)([NXYZ])(\.\.)?(\d+)\]?(?:,(\w+))?/.exec(part)!;
      if (bracket && !longest) return "";
      const length = upTo && !longest ? 1 : Number(most);
      if (check === "csum") return withCheckDigit("1".repeat(length - 1));
      if (check === "yymmdd" || check === "yymmd0") return "261231";
      if (check === "hhmi") return "2359";
      return (type === "N" ? "1" : "A").repeat(length);
    })
    .join("");
}

const ITEM = "12345678901231";

test("the dictionary's extract holds 224 lines, and the table is what the script makes of it", () => {
  expect(identifiers.split("\n").filter((line) => /^\d/.test(line))).toHaveLength(224);
  expect(entries.length).toBeGreaterThan(500);
  expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length);
  expect(file("src/supplies/generated/gs1-formats.ts")).toBe(gs1FormatsSource(identifiers));
});

test("no identifier begins another: what stands first decides", () => {
  const all = entries.map(({ id }) => id);
  expect(all.filter((id) => all.some((other) => other !== id && other.startsWith(id)))).toEqual([]);
});

describe.each(entries)("element ($id) $format", ({ id, closed, format }) => {
  test.each([false, true])("does not refuse the label it stands on; longest: %s", (longest) => {
    const value = valueOf(format, longest);
    const before = id === "01" ? "" : `01${ITEM}`;
    const scanned = `]d2${before}${id}${id === "01" ? ITEM : value}${closed ? "" : "\u001d"}`;
    const lot = id === "10" ? (value as string) : "LOT7";
    const own = id === "10" ? scanned : `${scanned}10LOT7`;
    expect(tube("READCODE", own, "lot")).toBe(lot);
    const bracketed = `(${id})${id === "01" ? ITEM : value}${id === "10" ? "" : "(10)LOT7"}`;
    expect(tube("READCODE", bracketed, "lot")).toBe(lot);
  });

  test("is refused by its name where it is too long, empty or of other characters", () => {
    const value = valueOf(format, true);
    for (const wrong of [`${value}1`, "", `${value.slice(0, -1)}~`]) {
      const answer = tube("READCODE", `(${id})${wrong}(240)x`, "lot");
      expect(answer, wrong).toBeInstanceOf(SheetError);
      expect((answer as SheetError).message).toContain(`element (${id})`);
    }
  });
});

test("an identifier that GS1 has not given out is refused by its name", () => {
  const known = new Set(entries.map(({ id }) => id));
  for (const id of ["04", "05", "14", "18", "19", "89", "8201", "718"]) {
    expect(known.has(id)).toBe(false);
    const answer = tube("READCODE", `(01)${ITEM}(${id})1`, "item") as SheetError;
    expect(answer.message).toContain(`(${id})`);
  }
});
