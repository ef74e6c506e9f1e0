/** The embedded spreadsheet as the page uses it (interface.ts). */
import "./styleSheets";
import { LifecycleService, LifecycleStages } from "@univerjs/core";
import type { Engine } from "./engine";
import { gridOn, type OnPage } from "./face";
import type { CreateGrid, Grid, GridOptions } from "./interface";
import { startPage } from "./page";
import { openEntry } from "./pageEntry";
import { startPackages } from "./packages/start";
import { watchPasting } from "./pasting";
import { watchStatusBar } from "./statusBar";

/** With the engine, which tests ask for what it can do. */
export function startGrid(
  container: HTMLElement,
  options: GridOptions,
): { readonly grid: Grid; readonly engine: Engine } {
  const engine = startPage(container);
  const onPage = async ({ dayFirst, readFormula, say, unitId, workbook }: OnPage) => {
    // what a person types or pastes before that finds half of the grid
    await engine.injector.get(LifecycleService).onStage(LifecycleStages.Rendered);
    watchPasting(engine, { dayFirst, readFormula, say });
    watchStatusBar(engine, workbook);
    return openEntry(engine, unitId);
  };
  return { grid: gridOn(engine, options, onPage, startPackages()), engine };
}

export const createGrid: CreateGrid = async (container, options) => startGrid(container, options).grid;
