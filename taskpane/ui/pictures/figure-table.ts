/** The figures of a picture: what a person reads, and the number behind it where there is one. */
export type FigureCell = string | { readonly text: string; readonly value: number };
export type FigureRow = readonly FigureCell[];

export const figureText = (cell: FigureCell): string => (typeof cell === "string" ? cell : cell.text);

export const number = (value: number, text: string = String(value)): FigureCell => ({ text, value });

/** Blank where it is not known. */
export const maybe = (value: number | undefined, text: (value: number) => string): FigureCell =>
  value === undefined || !Number.isFinite(value) ? "" : number(value, text(value));
