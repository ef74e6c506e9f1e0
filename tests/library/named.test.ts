/** Named functions give what the worksheet gives, in the types that they declare. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { labelOf, libraryName } from "../../functions/library/names";
import { librarySource } from "../../functions/library/source";
import * as library from "../../functions/generated/library";
import type { NamedFunction } from "../../functions/library/named";
import { exampleArguments, exampleFormula } from "../../functions/formula-text";
import { functions } from "../../src/index";
import { call } from "../../src/worksheet/call";
import { CellError, SheetError } from "../../src/worksheet/error";

const byName = library as unknown as Readonly<Record<string, NamedFunction<Record<string, unknown>, unknown>>>;

const { bolusPlan, book, changeDue, dueState, feedPlan, frToMm, isoText, lifeQuantile, lifeTable } = library;

test("what is committed is what the definitions give (npm run generate)", () => {
  const committed = readFileSync(new URL("../../functions/generated/library.ts", import.meta.url), "utf8");
  expect(committed).toBe(librarySource(functions));
});

test("every function has a name of its own in which its words can be told apart", () => {
  const names = functions.map(({ name }) => libraryName(name));
  expect(new Set(names).size).toBe(functions.length);
  // A new last word goes into LAST_WORDS (functions/library/names.ts); a name of one word into this list.
  const oneWord = names.filter((name) => name === name.toLowerCase());
  expect(oneWord.sort()).toEqual(["book", "rate", "removal", "retention", "unplanned"]);
  expect(libraryName("FRTOMM")).toBe("frToMm");
  expect(labelOf("share still working")).toBe("shareStillWorking");
});

/** A cell as a declared kind. */
const KINDS = {
  number: (cell: unknown) => typeof cell === "number",
  date: (cell: unknown) => typeof cell === "number",
  text: (cell: unknown) => typeof cell === "string",
  mixed: (cell: unknown) => typeof cell === "number" || typeof cell === "string",
};

describe.each(functions.map((f) => [f.name, f] as const))("%s", (name, definition) => {
  const { order, result } = definition;
  const named = byName[libraryName(name)]!;

  const oneRow = definition.documentation!.examples.filter(({ args }) =>
    order.every(({ name, param }) => {
      const argument = (args as Record<string, unknown>)[name];
      return !(argument instanceof CellError) && (param.mode === "range" || !Array.isArray(argument));
    }),
  );

  test("has an example of one row", () => expect(oneRow.length).toBeGreaterThan(0));

  test.each(oneRow.map((example) => [exampleFormula(definition, example), example] as const))("%s", (_, example) => {
    const gives = named(example.args as Record<string, unknown>);
    const worksheet = [call(definition, exampleArguments(definition, example))].flat(2);
    const fault = worksheet.find((cell) => cell instanceof SheetError);
    if (fault) return expect(gives).toEqual(fault);

    const cells = [gives].flat(2) as unknown[];
    expect(cells).toEqual(worksheet.map((cell) => (cell === "" ? null : cell)));
    for (const cell of cells) {
      const declared = KINDS[result.kind](cell) || result.words?.includes(cell as string);
      expect(declared || (cell === null && !(result.kind === "text" && result.blank !== ""))).toBe(true);
    }
  });

  test("refuses an argument that it does not have", () => {
    const gives = named({ misspelt: 1 });
    expect(gives).toBeInstanceOf(SheetError);
    expect((gives as SheetError).message).toContain("misspelt is not an argument");
  });
});

test("cells, rows and blocks have the shapes of their types", () => {
  expect(changeDue({ lastchange: "2019-01-31", interval: 1 })).toBe(library.dayOfText("2019-02-28"));
  expect(bolusPlan({ volume: 1000, largest: 300 })).toEqual([4, 250]);
  const lives = lifeTable({ days: [90, 150, 90], failed: ["yes", "no", "no"] });
  expect(lives).toHaveLength(1);
  expect((lives as readonly (readonly unknown[])[])[0]!.slice(0, 4)).toEqual([90, 3, 1, 2 / 3]);
});

test("lists are columns; blocks, and one value alone, are taken as well", () => {
  const asked = { due: ["2026-05-20", "2026-05-10"], sessions: [["2026-05-12"], ["2026-05-26"]], places: 1 };
  const booked = book(asked) as (readonly [number])[];
  expect(booked.map(([session]) => isoText(session))).toEqual(["2026-05-26", "2026-05-12"]);
});

describe("blanks and faults", () => {
  test("a blank is null in and null out, or the word for it; never another answer", () => {
    expect(frToMm({ size: null })).toBeNull();
    expect(feedPlan(undefined as never)).toEqual(new Array(7).fill(null));
    expect(changeDue({ lastchange: "", interval: 3 })).toBeNull();
    expect(dueState({ due: null, asof: "2026-05-01" })).toBe("no date");
    expect(lifeQuantile({ days: [90, 120], failed: ["no", "no"] })).toEqual([null, null, null]);
  });

  test("a missing argument, a bad one and one of another type are named", () => {
    const said = (gives: unknown) => (gives as SheetError).message;
    expect(said(changeDue({ lastchange: "2026-01-31" } as never))).toBe("interval is missing");
    expect(said(changeDue({ lastchange: "31/1/2026", interval: 3 }))).toContain("lastchange must be a date");
    expect(said(changeDue({ lastchange: new Date(0), interval: 3 } as never))).toContain(
      "lastchange must be a number, a",
    );
    expect(said(changeDue({ lastchange: ["2026-01-31"], interval: 3 } as never))).toContain(
      "lastchange must be one value",
    );
    expect(said(lifeTable({ days: [new Date(0)], failed: ["yes"] } as never))).toContain("days must hold numbers");
  });
});

test("whole columns go through call", () => {
  expect(call(changeDue.definition, [[["2019-01-31"], [""]], 1])).toEqual([[library.dayOfText("2019-02-28")], [""]]);
});
