/** New files in the embedded grid's real engine. */
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import type { Engine } from "../../../taskpane/workbook/embedded/engine";
import { gridOn } from "../../../taskpane/workbook/embedded/face";
import type { Grid } from "../../../taskpane/workbook/embedded/interface";
import type { Value } from "../../../taskpane/workbook/port";
import { CellError } from "../../../src/worksheet/error";
import { startHeadless } from "../../hosts/grid/headless";

export interface InGrid {
  readonly engine: Engine;
  readonly grid: Grid;
  readonly said: string[];
}

export function startGrid(today: number): InGrid {
  const engine = startHeadless();
  const said: string[] = [];
  const grid = gridOn(engine, { today, dayFirst: true, say: (sentence) => said.push(sentence), hush: () => undefined });
  return { engine, grid, said };
}

/** How many formulas of the workbook there the reader does not know, and leaves to the engine. */
export function leftToEngine({ grid }: InGrid): number {
  const { results } = grid.workbook as unknown as { results: { engines: Map<string, Map<string, unknown>> } };
  return [...results.engines.values()].reduce((sum, formulas) => sum + formulas.size, 0);
}

/** Without stored results, so that nothing but the engine can give one. */
export function withoutResults(bytes: Uint8Array): Uint8Array {
  const parts = unzipSync(bytes);
  for (const [name, content] of Object.entries(parts)) {
    if (!name.startsWith("xl/worksheets/sheet")) continue;
    const xml = strFromU8(content)
      .replace(/<\/f><v>[^<]*<\/v>/g, "</f>")
      .replace(/ t="(?:str|b|e)"><f>/g, "><f>");
    parts[name] = strToU8(xml);
  }
  return zipSync(parts, { level: 0 });
}

/** Comparable: the grid's engine says 1 for TRUE, and "" or nothing for a formula that gives "". */
export function plain(value: Value | undefined): string | number {
  if (value === null || value === undefined) return "";
  if (value instanceof CellError) return value.code;
  return typeof value === "boolean" ? Number(value) : value;
}
