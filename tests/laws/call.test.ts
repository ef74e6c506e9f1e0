/** Laws of the boundary that hold for every function, with a fixed seed. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { functions } from "../../src/index";
import { call } from "../../src/worksheet/call";
import type { SheetFunction } from "../../src/worksheet/define";
import { CellError, SheetError } from "../../src/worksheet/error";

const options = { seed: 20261125, numRuns: 500 };

const cell = fc.oneof(
  fc.constantFrom<unknown>("", null, 0, 5, 4.5, 14, 45_700, 45_800, "14 Fr", "4,5 mL", "2026-05-14", "?", true),
  fc.constantFrom<unknown>(new CellError("#N/A"), new CellError("#REF!")),
  fc.integer({ min: -10, max: 60 }),
);
const plain = (answer: unknown): unknown =>
  Array.isArray(answer)
    ? answer.map(plain)
    : answer instanceof SheetError
      ? `${answer.code} ${answer.message}`
      : answer;

/**
 * Cells of Excel's data types, as its documentation of them says (Microsoft Learn, "Data types core concepts" and
 * Excel.*CellValue): `basicValue` is what a formula that knows no data types reads; of a card, a picture or an array it
 * is an error.
 */
const dataTypes: readonly (readonly [string, unknown, unknown])[] = [
  ["a number", { type: "Double", basicType: "Double", basicValue: 14 }, 14],
  ["a formatted number", { type: "FormattedNumber", basicType: "Double", basicValue: 14, numberFormat: "0 Fr" }, 14],
  ["a text", { type: "String", basicType: "String", basicValue: "14 Fr" }, "14 Fr"],
  ["a truth", { type: "Boolean", basicType: "Boolean", basicValue: true }, true],
  ["nothing", { type: "Empty", basicType: "Empty", basicValue: "" }, null],
  [
    "an error",
    { type: "Error", basicType: "Error", basicValue: "#N/A", errorType: "NotAvailable" },
    new CellError("#N/A"),
  ],
  [
    "a card",
    { type: "Entity", text: "Tube", properties: {}, basicType: "Error", basicValue: "#VALUE!" },
    new CellError("#VALUE!"),
  ],
  [
    "a linked card",
    { type: "LinkedEntity", text: "Tube", basicType: "Error", basicValue: "#VALUE!" },
    new CellError("#VALUE!"),
  ],
  ["a picture", { type: "WebImage", address: "", basicType: "Error", basicValue: "#VALUE!" }, new CellError("#VALUE!")],
  ["an array", { type: "Array", elements: [[]], basicType: "Array", basicValue: "#VALUE!" }, new CellError("#VALUE!")],
  ["a text of an error", "#VALUE! size is missing", new CellError("#VALUE!")],
  ["another host's error", { code: "#DIV/0!" }, new CellError("#DIV/0!")],
  ["something that nobody knows", { some: "thing" }, new CellError("#VALUE!")],
];

describe.each(functions.map((f) => [f.name, f] as const))(
  "%s reads Excel's data types by their plain value",
  (_, f) => {
    test.each(dataTypes)("%s", (_, typed, same) => {
      f.order.forEach(({ param }, position) => {
        const given = (value: unknown) =>
          f.order.map((one, i) =>
            i === position ? [[value]] : one.param.mode === "choice" ? one.param.words![0] : [[3]],
          );
        const bare = (value: unknown) =>
          param.mode === "choice" ? given(value).map((one, i) => (i === position ? value : one)) : given(value);
        expect(plain(call(f, bare(typed)))).toEqual(plain(call(f, bare(same))));
      });
    });
  },
);

/**
 * Excel keeps functions.json for up to a day, and hands its invocation object over behind the arguments that it knows: it
 * lands in one that has come since (office-js issue 2777).
 */
class Invocation {
  get functionName(): string {
    return "TUBE";
  }
  setResult = () => undefined;
}

test("Excel's invocation object in a new optional argument is an argument left out", () => {
  let tried = 0;
  for (const f of functions) {
    const first = f.order.findIndex(({ param }) => param.optional);
    for (let known = first; first >= 0 && known < f.order.length; known++) {
      const before = f.order
        .slice(0, known)
        .map(({ param }) => (param.mode === "choice" ? param.words![0] : param.optional ? null : [[3]]));
      expect(plain(call(f, [...before, new Invocation()])), f.name).toEqual(plain(call(f, before)));
      tried++;
    }
  }
  expect(tried).toBeGreaterThan(50);
});

/** The first word for every choice that must be made. */
const choices = ({ order }: SheetFunction): unknown[] =>
  order.map(({ param }) => (param.mode === "choice" && !param.optional ? param.words![0] : undefined));

const oneByOne = functions.filter(
  (f) => f.result.shape === "cell" && f.order.every(({ param }) => param.mode !== "range" || param.optional),
);

describe.each(oneByOne.map((f) => [f.name, f] as const))("%s", (_, definition) => {
  const each = definition.order.filter(({ param }) => param.mode === "each").length;
  const rows = fc.array(fc.array(cell, { minLength: each, maxLength: each }), { minLength: 2, maxLength: 6 });

  test("a column gives what its cells give one by one", () => {
    fc.assert(
      fc.property(rows, (table) => {
        const asColumns = Array.from({ length: each }, (_, i) => table.map((row) => [row[i]]));
        const positions = definition.order.flatMap(({ param }, i) => (param.mode === "each" ? [i] : []));
        const place = (values: unknown[]) => {
          const args = choices(definition);
          positions.forEach((position, i) => (args[position] = values[i]));
          return args;
        };
        const together = call(definition, place(asColumns));
        const single = table.map((row) => [call(definition, place(row))]);
        expect(plain(together)).toEqual(plain(single));
      }),
      options,
    );
  });

  test("a block of one cell is that cell, and an argument behind the last is passed over", () => {
    fc.assert(
      fc.property(fc.array(cell, { minLength: each, maxLength: each }), (row) => {
        const args: unknown[] = definition.order.map(({ param }) => (param.mode === "each" ? row.shift() : undefined));
        const blocks = args.map((value) => (value === undefined ? value : [[value]]));
        expect(plain(call(definition, blocks))).toEqual(plain(call(definition, [...args, { invocation: true }])));
      }),
      options,
    );
  });

  test("ranges of different shapes are refused for the whole call, naming both", () => {
    if (each < 2) return;
    const [first, second] = definition.order.filter(({ param }) => param.mode === "each");
    const args = choices(definition);
    args[definition.order.indexOf(first!)] = [[1], [2], [3]];
    args[definition.order.indexOf(second!)] = [[1, 2]];
    const answer = call(definition, args);
    expect(answer).toBeInstanceOf(SheetError);
    expect((answer as SheetError).message).toContain("3 x 1");
    expect((answer as SheetError).message).toContain("1 x 2");
  });
});

/** A long result is made at places of its own (src/worksheet/call.ts). */
const LONG = 6000;

const inColumns = functions.filter(
  ({ result, order }) => result.shape !== "block" && order.some(({ param }) => param.mode === "each"),
);

describe.each(inColumns.map((f) => [f.name, f] as const))("%s", (_, definition) => {
  const each = definition.order.filter(({ param }) => param.mode === "each").length;
  const number = fc.constantFrom(0, 0.5, 3, 5, 12, 700, 45_700, 45_800);
  const row = fc.array(fc.oneof({ weight: 5, arbitrary: number }, cell), { minLength: each, maxLength: each });

  test("a long column gives what a short one gives, row by row", () => {
    const rows = fc.sample(row, { seed: options.seed, numRuns: 60 });
    const columns = (list: readonly unknown[][]): unknown[] => {
      let next = 0;
      return definition.order.map(({ param }) => {
        if (param.mode === "range") return undefined;
        if (param.mode === "choice") return param.optional ? undefined : param.words![0];
        const place = next++;
        return list.map((cells) => [cells[place]]);
      });
    };
    const short = plain(call(definition, columns(rows)));
    const long = plain(call(definition, columns(Array.from({ length: LONG }, (_, i) => rows[i % rows.length]!))));
    const repeated = Array.isArray(short) ? Array.from({ length: LONG }, (_, i) => short[i % rows.length]) : short;
    expect(long).toEqual(repeated);
  });
});
