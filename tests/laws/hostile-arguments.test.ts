/**
 * Whatever a host hands over, a registered function gives values, texts, booleans or sentences: no exception, NaN,
 * Infinity, null, undefined or ragged block. At least 100,000 combinations, with a fixed seed.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { functions } from "../../src/index";
import { call } from "../../src/worksheet/call";
import type { SheetFunction } from "../../src/worksheet/define";
import { CellError, SheetError } from "../../src/worksheet/error";

const SEED = 20261125;
const COMBINATIONS = 120_000;

const hostileCell = fc.oneof(
  fc.constantFrom<unknown>(
    ...[null, undefined, "", " ", 0, -0, 1, -1, 0.5, 14, 60, 61, 45658, 2958465, 2958466, 1e308, -1e308, 5e-324],
    ...[
      NaN,
      Infinity,
      -Infinity,
      true,
      false,
      "14 Fr",
      "CH14",
      "14,0",
      "14?",
      "12/14",
      "4.7 mm",
      "5 mL",
      "２０２６-05-14",
    ],
    ...["2026-05-14", "2026-02-30", "2026-05-14T10:00", "0001-01-01", "3/4/26", "months", "WEEKS", " % ", "mL", "Sat"],
    ...[
      "#N/A",
      "#VALUE!",
      "=1+1",
      "+44",
      "@x",
      "\u0000",
      "x".repeat(33_000),
      "14 Fr ".repeat(5_600),
      "__proto__",
      "constructor",
      "toString",
      "hasOwnProperty",
      "１４",
      "\u00a014\u00a0Fr",
      "ﷺ",
      "\ud800",
    ],
    ...[new CellError("#N/A"), new CellError("#REF!"), { code: "#DIV/0!" }, { basicValue: "#N/A" }, {}, new Date(0)],
    ...[[], [[]], () => 1, Symbol.iterator, 10n],
  ),
  fc.double(),
  fc.integer(),
  fc.string(),
);
const hostileBlock = fc.oneof(
  fc.array(fc.array(hostileCell, { maxLength: 3 }), { maxLength: 4 }),
  fc
    .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 3 }))
    .chain(([rows, columns]) =>
      fc.array(fc.array(hostileCell, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows }),
    ),
);
const hostileArgument = fc.oneof({ weight: 3, arbitrary: hostileCell }, { weight: 1, arbitrary: hostileBlock });
const hostileArguments = fc.array(hostileArgument, { maxLength: 7 });

/** A sentence can be read, and quotes no internal error. */
const isSentence = ({ message, code }: SheetError): boolean =>
  message.length > 0 &&
  message.length <= 250 &&
  !/could not be worked out|undefined|\[object|function|Cannot |is not a function|not iterable/.test(message) &&
  (code === "#VALUE!" || code === "#N/A");

const isSound = (value: unknown): boolean =>
  (typeof value === "number" && Number.isFinite(value)) ||
  // What a cell can hold in Excel.
  (typeof value === "string" && value.length <= 32_767) ||
  typeof value === "boolean" ||
  (value instanceof SheetError && isSentence(value));

/** What shows an error in its own words asks it for its arguments: it names those of its function, and the one it begins with. */
function namesItsOwn(definition: SheetFunction, error: SheetError): boolean {
  const own = definition.order.map(({ name }) => name);
  const begins = own.find((name) => error.message.startsWith(`${name} `));
  return error.named.every((name) => own.includes(name)) && (begins === undefined || error.about === begins);
}

const errorsIn = (answer: unknown): readonly SheetError[] =>
  (Array.isArray(answer) ? answer.flat() : [answer]).filter((value) => value instanceof SheetError);

const isSoundAnswer = (answer: unknown): boolean =>
  Array.isArray(answer)
    ? answer.length > 0 &&
      answer.every(
        (row) => Array.isArray(row) && row.length === answer[0].length && row.length > 0 && row.every(isSound),
      )
    : isSound(answer);

describe("hostile arguments", () => {
  let thrown = 0;
  const each = Math.ceil(COMBINATIONS / functions.length);

  test.each(functions.map((f) => [f.name, f] as const))("%s gives nothing that a host cannot show", (_, definition) => {
    fc.assert(
      fc.property(hostileArguments, (args) => {
        thrown += 1;
        const answer = call(definition, args);
        return isSoundAnswer(answer) && errorsIn(answer).every((error) => namesItsOwn(definition, error));
      }),
      { seed: SEED, numRuns: each },
    );
  });

  const words = [
    "__proto__",
    "constructor",
    "toString",
    "valueOf",
    "hasOwnProperty",
    "x".repeat(33_000),
    " - ".repeat(11_000),
  ];

  test.each(functions.map((f) => [f.name, f] as const))(
    "%s: each argument in turn is such a word, the others good",
    (_, definition) => {
      for (const { args } of definition.documentation!.examples) {
        const good = definition.order.map(({ name }) => args[name]);
        for (const i of good.keys()) {
          for (const word of words) {
            for (const hostile of [word, [[word], [word]]]) {
              const given = [...good];
              given[i] = hostile;
              const answer = call(definition, given);
              if (!isSoundAnswer(answer))
                expect.fail(`${definition.order[i]!.name}: ${JSON.stringify(answer).slice(0, 300)}`);
            }
          }
        }
      }
    },
  );

  test.each(functions.map((f) => [f.name, f] as const))(
    "%s: the errors of its examples name its own arguments",
    (_, definition) => {
      for (const { args } of definition.documentation!.examples) {
        for (const error of errorsIn(
          call(
            definition,
            definition.order.map(({ name }) => args[name]),
          ),
        ))
          expect(namesItsOwn(definition, error), error.message).toBe(true);
      }
    },
  );

  test("at least 100,000 combinations were tried", () => {
    console.log(`${thrown.toLocaleString("en-GB")} hostile argument combinations over ${functions.length} functions`);
    expect(thrown).toBeGreaterThanOrEqual(100_000);
  });
});
