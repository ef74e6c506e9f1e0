/** The figures of a picture. */
import type { FigureCell } from "../../actions/pictures/put-in-sheet";

export type FigureRow = readonly FigureCell[];

export const figureText = (cell: FigureCell): string => (typeof cell === "string" ? cell : cell.text);

export const number = (value: number, text: string = String(value)): FigureCell => ({ text, value });

/** Blank where it is not known. */
export const maybe = (value: number | undefined, text: (value: number) => string): FigureCell =>
  value === undefined || !Number.isFinite(value) ? "" : number(value, text(value));
