/** The browser workbook's grid. */
export type {
  CreateGrid,
  DayFirst,
  Grid,
  GridOptions,
  Opened,
  Refusal,
  RowEntry,
  Saved,
  SelectedRow,
} from "./interface";
export { createGrid } from "./grid";
