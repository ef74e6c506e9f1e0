/** The embedded spreadsheet as the page uses it (interface.ts). */
import "./mends/style-elements";
import { IUniverInstanceService, LifecycleService, LifecycleStages, UniverInstanceType } from "@univerjs/core";
import type { Engine } from "./engine";
import { gridOn, type OnPage } from "./face";
import type { CreateGrid, Grid, GridOptions } from "./interface";
import { colour } from "./page/colours";
import { keepDoor } from "./mends/taken-keyboard";
import { startPage } from "./page/page";
import { openEntry } from "./page/page-entry";
import { startPackages } from "./packages/start";
import { watchPasting } from "./by-hand/pasting";
import { watchPointer } from "./page/pointed-at";
import { keepReachable, roomIn } from "./page/reachable";
import { watchStatusBar } from "./page/status-bar";
import { nameTools } from "./mends/nameless-tools";

/** With the engine, which tests ask for what it can do. */
export function startGrid(
  container: HTMLElement,
  options: GridOptions,
): { readonly grid: Grid; readonly engine: Engine } {
  const door = keepDoor(container);
  const engine: Engine = { ...startPage(container), room: () => roomIn(container) };
  colour(engine);
  const instances = engine.injector.get(IUniverInstanceService);
  instances.getCurrentTypeOfUnit$(UniverInstanceType.UNIVER_SHEET).subscribe(door.close);
  const onPage = async ({ dayFirst, readFormula, say, unitId, workbook }: OnPage) => {
    // what a person types or pastes before that finds half of the grid
    await engine.injector.get(LifecycleService).onStage(LifecycleStages.Rendered);
    watchPasting(engine, { dayFirst, readFormula, say });
    watchStatusBar(engine, workbook);
    keepReachable(engine, container);
    nameTools(container);
    return openEntry(engine, unitId);
  };
  const grid = gridOn(engine, options, onPage, startPackages());
  const focus = () => {
    door.open();
    grid.focus();
  };
  const onPointer: Grid["onPointer"] = (listen) => watchPointer(engine, container, listen);
  return { grid: { ...grid, focus, onPointer }, engine };
}

export const createGrid: CreateGrid = async (container, options) => startGrid(container, options).grid;
