/** The shipped dist/functions.js, registered as Excel would register it, with all functions warm. */
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { runInThisContext } from "node:vm";
import { functions } from "../../../src/index";
import { CellError } from "../../../src/worksheet/error";

/** One registered function: cells in, a value or a block out; a fault that stands alone is thrown. */
export type Shipped = (...cells: readonly unknown[]) => unknown;

class ErrorInCell {
  constructor(
    readonly code: unknown,
    readonly message: string,
  ) {}
}

/** Times that every example of every function has run before anything is timed, as in a workbook that uses them all. */
const ROUNDS = 100;

function load(): ReadonlyMap<string, Shipped> {
  const file = fileURLToPath(new URL("../../../dist/functions.js", import.meta.url));
  if (!existsSync(file)) throw new Error("dist/functions.js is missing: npm run build first");
  const shipped = new Map<string, Shipped>();
  Object.assign(globalThis, {
    CustomFunctions: {
      associate: (name: string, run: Shipped) => void shipped.set(name, run),
      Error: ErrorInCell,
      ErrorCode: { notAvailable: "#N/A", invalidValue: "#VALUE!" },
    },
  });
  runInThisContext(readFileSync(file, "utf8"), { filename: file });
  return shipped;
}

let warm: ReadonlyMap<string, Shipped> | undefined;

export const warmBundle = (): ReadonlyMap<string, Shipped> => (warm ??= warmed());

function warmed(): ReadonlyMap<string, Shipped> {
  const shipped = load();
  const calls = functions.flatMap(({ name, order, documentation }) =>
    documentation!.examples.map(({ args }) => {
      const given = args as Readonly<Record<string, unknown>>;
      // Excel hands errors in cells over in its own shape: those examples are left out.
      return { run: shipped.get(name)!, cells: order.map((argument) => given[argument.name] ?? null) };
    }),
  );
  const usable = calls.filter(
    ({ cells }) => !JSON.stringify(cells).includes('"code"') && !cells.some((c) => c instanceof CellError),
  );
  for (let round = 0; round < ROUNDS; round++)
    for (const { run, cells } of usable) {
      try {
        run(...cells);
      } catch (fault) {
        if (!(fault instanceof ErrorInCell)) throw fault;
      }
    }
  return shipped;
}
