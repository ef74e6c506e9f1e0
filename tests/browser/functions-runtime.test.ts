/**
 * Microsoft's own custom-functions runtime, in a real browser, running the built functions.js as Excel would: every
 * example of every function, and what goes over the wire for errors, blanks and blocks.
 */
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { functions } from "../../src/index";
import type { Example, Params, RawArgument, SheetFunction } from "../../src/worksheet/define";
import { CellError } from "../../src/worksheet/error";
import { launchBrowser } from "./launch";
import { asScript } from "./modules";
import { serveFiles, type Served } from "./serve";

const RUNTIME = createRequire(import.meta.url).resolve("@microsoft/office-js/dist/custom-functions-runtime.js");
const dist = (name: string) => readFile(new URL(`../../dist/${name}`, import.meta.url), "utf8");

/** Excel's numbers for error values, as the runtime sends them. */
const CODES: Readonly<Record<number, string>> = { 1: "#N/A", 5: "#DIV/0!", 6: "#NUM!", 7: "#VALUE!", 8: "#NULL!" };

/** Number of the call, did it go well, the value or the sentence, the error's number. */
type Result = readonly [call: number, isGood: boolean, value: unknown, code?: number];

let browser: Browser;
let page: Page;
let described: readonly { readonly id: string; readonly parameters: readonly { readonly name: string }[] }[];
const problems: string[] = [];
const served: Served[] = [];

/** A page with Microsoft's runtime and functions.js: as built, or another. */
async function openRuntime(functionsScript?: string): Promise<Page> {
  const opened = await browser.newPage();
  opened.on("pageerror", (error) => problems.push(String(error)));
  await opened.addInitScript(() => {
    interface Bridge {
      sendMessageToHost(json: string): void;
      onMessageFromHost?(json: string): void;
    }
    interface Body {
      readonly Actions: readonly {
        readonly Name: string;
        readonly ArgumentInfo: { readonly Arguments: unknown[][] };
      }[];
    }
    const results = new Map<number, unknown>();
    const bridge: Bridge = {
      sendMessageToHost(json) {
        const { id, message } = JSON.parse(json) as { id: number; message: { body: string | Body } };
        const body = typeof message.body === "string" ? (JSON.parse(message.body) as Body) : message.body;
        for (const action of body.Actions)
          if (action.Name === "SetInvocationArrayResults")
            for (const result of action.ArgumentInfo.Arguments[0] as [number][]) results.set(result[0], result);
        const response = { statusCode: 200, headers: {}, body: '{"Results":[]}' };
        setTimeout(() => this.onMessageFromHost?.(JSON.stringify({ id, type: 2, flags: 0, message: response })), 0);
      },
    };
    Object.assign(window, { _richApiNativeBridge: bridge, results });
  });
  /* The runtime insists on its own file name. */
  const files = {
    "index.html":
      '<!doctype html><script src="custom-functions-runtime.js"></script><script src="functions.js"></script>',
    "custom-functions-runtime.js": await readFile(RUNTIME, "utf8"),
    "functions.js": functionsScript ?? (await dist("functions.js")),
  };
  const where = await serveFiles(files);
  served.push(where);
  await opened.goto(where.url);
  return opened;
}

beforeAll(async () => {
  browser = await launchBrowser();
  described = (JSON.parse(await dist("functions.json")) as { functions: typeof described }).functions;
  page = await openRuntime();
});
afterAll(async () => {
  await browser?.close();
  await Promise.all(served.map((each) => each.close()));
});

let called = 0;

/** Lets the runtime call functions as Excel asks it to. */
async function run(
  calls: readonly (readonly [name: string, args: readonly unknown[]])[],
  where: Page = page,
): Promise<readonly Result[]> {
  const first = called;
  called += calls.length;
  const results = await where.evaluate(
    async ([wanted, from]) => {
      const { _richApiNativeBridge: bridge, results } = window as unknown as {
        _richApiNativeBridge: { onMessageFromHost(json: string): void };
        results: Map<number, unknown>;
      };
      const numbers = wanted.map((_, i) => from + i);
      const entries = wanted.map(([name, args], i) => ({
        messageCategory: 1,
        messageType: 1000,
        message: [from + i, name, args, "Sheet1!A1", 0],
      }));
      bridge.onMessageFromHost(JSON.stringify({ type: 3, message: { entries } }));
      const deadline = Date.now() + 120_000;
      while (!numbers.every((number) => results.has(number))) {
        if (Date.now() > deadline) throw new Error("the runtime did not answer every call");
        await new Promise((later) => setTimeout(later, 10));
      }
      return numbers.map((number) => results.get(number));
    },
    [calls, first] as const,
  );
  return results as Result[];
}

/** An argument as Excel hands it over: a block for a matrix, even of one cell; null for one left out. */
function wire(argument: RawArgument | undefined, isChoice: boolean): unknown {
  if (argument === undefined) return null;
  const cell = (one: unknown) =>
    one instanceof CellError ? { type: "Error", basicType: "Error", basicValue: one.code } : one;
  if (isChoice) return cell(argument);
  return Array.isArray(argument) ? argument.map((row: readonly unknown[]) => row.map(cell)) : [[cell(argument)]];
}

const wireArgs = (definition: SheetFunction, example: Example<Params>) =>
  definition.order.map(({ name, param }) => wire(example.args[name], param.mode === "choice"));

/** One value, whether it is sent as it is or as a block of one. */
const single = (value: unknown) => (Array.isArray(value) ? (value as unknown[][])[0]![0] : value);

const isClose = (got: unknown, want: unknown, within: number | undefined): boolean =>
  typeof got === "number" && typeof want === "number"
    ? Math.abs(got - want) <= (within ?? 1e-12 * Math.max(1, Math.abs(want)))
    : got === want;

describe("functions.js in Microsoft's runtime", () => {
  it("associates every function of functions.json and no other", async () => {
    const ids = await page.evaluate(() => {
      const { _association } = CustomFunctions as unknown as { _association: { mappings: Record<string, unknown> } };
      return Object.keys(_association.mappings);
    });
    const stale = "dist is older than the sources: run npm run generate and npm run build";
    expect(ids.sort(), stale).toEqual(described.map((one) => one.id).sort());
    expect(ids.sort(), stale).toEqual(functions.map((one) => one.name).sort());
    expect(problems).toEqual([]);
  });

  it("describes its arguments in the order in which the code reads them", () => {
    for (const definition of functions)
      expect(described.find((one) => one.id === definition.name)!.parameters.map((one) => one.name)).toEqual(
        definition.order.map((one) => one.name),
      );
  });

  /* All at once: the runtime waits half a second between its answers. */
  const cases = functions.flatMap((definition) =>
    definition.documentation!.examples.map((example) => ({ definition, example })),
  );
  let answers: ReadonlyMap<Example<Params>, Result>;
  beforeAll(async () => {
    const results = await run(cases.map(({ definition, example }) => [definition.name, wireArgs(definition, example)]));
    answers = new Map(cases.map(({ example }, i) => [example, results[i]!]));
  });

  for (const definition of functions)
    it(`${definition.name} gives what its examples say`, () => {
      const { examples } = definition.documentation!;
      expect(examples.length).toBeGreaterThan(0);
      examples.forEach((example) => {
        const result = answers.get(example)!;
        const [, isGood, value, code] = result;
        const label = `${definition.name} ${JSON.stringify(example.args)} gave ${JSON.stringify(result)}`;
        const { gives } = example;
        if (Array.isArray(gives)) {
          expect(isGood, label).toBe(true);
          const rows = value as unknown[][];
          expect([rows.length, new Set(rows.map((row) => row.length))], label).toEqual([
            gives.length,
            new Set(gives.map((row: readonly unknown[]) => row.length)),
          ]);
          gives.forEach((row: readonly unknown[], r) =>
            row.forEach((want, c) => expect(sameCell(rows[r]![c], want, example.within), label).toBe(true)),
          );
        } else if (typeof gives === "object" && gives !== null && "error" in gives) {
          expect(isGood, label).toBe(false);
          expect(CODES[code!], label).toBe(gives.error);
          expect(typeof value === "string" && value.length > 5, label).toBe(true);
          if (gives.says) expect(value, label).toContain(gives.says);
        } else {
          expect(isGood, label).toBe(true);
          expect(isClose(single(value), gives ?? "", example.within), label).toBe(true);
        }
      });
    });

  it("answers a column cell by cell, a bad cell by itself", async () => {
    const [result] = await run([["FRTOMM", [[[12], ["CH 14"], ["14?"], [null], [""]]]]]);
    const [, isGood, value] = result!;
    expect(isGood).toBe(true);
    const rows = value as unknown[][];
    /* 3 Fr is 1 mm: the definition of the French scale. */
    expect([rows[0], rows[1]]).toEqual([[4], [14 / 3]]);
    expect(errorOf(rows[2]![0])).toEqual({ code: "#VALUE!", message: expect.stringMatching(/^size /) });
    expect([rows[3], rows[4]]).toEqual([[""], [""]]);
  });

  it("takes null and an empty text for a blank, whatever the platform sends", async () => {
    const blanks = [null, ""].map((blank) => ["BALLOONSTATE", [[[blank]], [[5]], null, null]] as const);
    for (const [, isGood, value] of await run(blanks)) {
      expect(isGood).toBe(true);
      expect(single(value)).toBe("not measured");
    }
    /* Where Excel sends 0 for a blank the function cannot know: the columns guard it in the sheet (docs). */
    const [zero] = await run([["BALLOONSTATE", [[[0]], [[5]], null, null]]]);
    expect(single(zero![2])).toBe("empty");
  });

  it("gives one value for one cell in, so that it works inside a table", async () => {
    const [result] = await run([["FRTOMM", [[[12]]]]]);
    expect(result!.slice(1, 3)).toEqual([true, 4]);
  });

  it("would give a block of one, errors too, if a real Excel asks for that", async () => {
    const source = await readFile(new URL("../../functions/excel.ts", import.meta.url), "utf8");
    expect(source).toContain("SINGLE_AS_BLOCK = false");
    const asBlock = source.replace("SINGLE_AS_BLOCK = false", "SINGLE_AS_BLOCK = true");
    const other = await openRuntime(await asScript(asBlock, "functions"));
    const [good, bad] = await run(
      [
        ["FRTOMM", [[[12]]]],
        ["FRTOMM", [[["14?"]]]],
      ] as const,
      other,
    );
    expect(good!.slice(1, 3)).toEqual([true, [[4]]]);
    expect(errorOf((bad![2] as unknown[][])[0]![0])?.code).toBe("#VALUE!");
    await other.close();
  });

  it("reads data types by their plain value, and its own invocation object as an argument left out", async () => {
    const formatted = { type: "FormattedNumber", basicType: "Double", basicValue: 12, numberFormat: "0 Fr" };
    const card = { type: "Entity", text: "Tube", properties: {}, basicType: "Error", basicValue: "#VALUE!" };
    // An older functions.json had no unit, no closed days: the runtime's own object comes in the unit's place.
    const [block, due] = await run([
      ["FRTOMM", [[[formatted], [{ type: "String", basicType: "String", basicValue: "CH 15" }], [card]]]],
      ["CHANGEDUE", [[["2026-05-14"]], [[3]]]],
    ]);
    const rows = block![2] as unknown[][];
    expect([rows[0], rows[1]]).toEqual([[4], [5]]);
    expect(errorOf(rows[2]![0])?.code).toBe("#VALUE!");
    // 14 August 2026, three months on.
    expect(due!.slice(1, 3)).toEqual([true, 46248]);
  });

  it("puts the sentence as a text into a spill where the build asks for that, and leaves an error that stands alone", async () => {
    const source = await readFile(new URL("../../functions/excel.ts", import.meta.url), "utf8");
    const asText = `const ERRORS_AS_TEXT = true;\n${source.replace(/declare const ERRORS_AS_TEXT.*/, "")}`;
    const other = await openRuntime(await asScript(asText, "functions"));
    const [spill, alone] = await run(
      [
        ["FRTOMM", [[[12], ["14?"]]]],
        ["FRTOMM", [[["14?"]]]],
      ] as const,
      other,
    );
    const rows = spill![2] as unknown[][];
    expect(rows[0]).toEqual([4]);
    expect(rows[1]![0]).toMatch(/^#VALUE! size /);
    expect([alone![1], CODES[alone![3]!]]).toEqual([false, "#VALUE!"]);
    await other.close();
  });

  it("says the sentence with #VALUE!", async () => {
    const [result] = await run([["FRTOMM", [[["14?"]]]]]);
    const [, isGood, sentence, code] = result!;
    expect([isGood, CODES[code!]]).toEqual([false, "#VALUE!"]);
    expect(sentence).toMatch(/^size /);
  });

  it("sends neither null nor anything but cells for blocks of hostile cells", async () => {
    const hostile = [null, "", 0, -1, 1e308, true, "x", "#N/A", { type: "Error", basicValue: "#REF!" }, "14 Fr", " "];
    const calls = functions.map((definition) => {
      const args = definition.order.map(({ param }, i) =>
        param.mode === "choice" ? null : hostile.map((_, r) => [hostile[(r + i) % hostile.length]]),
      );
      return [definition.name, args] as const;
    });
    const results = await run(calls);
    results.forEach(([, isGood, value, code], i) => {
      /* An error in a whole block answers for all of it. */
      if (!isGood) {
        expect(["#VALUE!", "#N/A"]).toContain(CODES[code!]);
        expect(value).toMatch(/\w+ \w+/);
        return;
      }
      for (const cell of (value as unknown[][]).flat())
        expect(cell !== null && cell !== undefined, `${calls[i]![0]} ${JSON.stringify(value)}`).toBe(true);
    });
    expect(results.filter(([, isGood]) => isGood).length).toBeGreaterThan(functions.length / 2);
  });

  it("works through 20,000 cells in one call", async () => {
    const column = Array.from({ length: 20_000 }, (_, i) => [1 + (i % 60)]);
    const [result] = await run([["FRTOMM", [column]]]);
    const rows = result![2] as number[][];
    expect(rows.length).toBe(20_000);
    expect(rows[59]![0]).toBe(20);
  });
});

/** A cell of a block; an error in it goes over the wire as an object of its own. */
function sameCell(got: unknown, want: unknown, within: number | undefined): boolean {
  if (typeof want === "object" && want !== null && "error" in want) return errorOf(got)?.code === want.error;
  return isClose(got, want ?? "", within);
}

function errorOf(cell: unknown): { readonly code: string; readonly message: string } | undefined {
  const { type, basicValue, message } = (cell ?? {}) as Record<string, unknown>;
  return type === "Error" ? { code: String(basicValue), message: String(message) } : undefined;
}
