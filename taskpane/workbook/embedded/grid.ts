/** The embedded spreadsheet as the page uses it (interface.ts). */
import "./styleSheets";
import { LifecycleService, LifecycleStages } from "@univerjs/core";
import { gridOn } from "./face";
import type { CreateGrid } from "./interface";
import { startPage } from "./page";
import { watchPasting } from "./pasting";

export const createGrid: CreateGrid = async (container, options) => {
  const engine = startPage(container);
  return gridOn(engine, options, async (dayFirst) => {
    // what a person types or pastes before that finds half of the grid
    await engine.injector.get(LifecycleService).onStage(LifecycleStages.Rendered);
    watchPasting(engine, dayFirst, options.say);
  });
};
