/** The embedded spreadsheet as the page uses it (interface.ts). */
import "./styleSheets";
import { gridOn } from "./face";
import type { CreateGrid } from "./interface";
import { startPage } from "./page";
import { watchPasting } from "./pasting";

export const createGrid: CreateGrid = async (container, options) => {
  const engine = startPage(container);
  return gridOn(engine, options, (dayFirst) => watchPasting(engine, dayFirst, options.say));
};
