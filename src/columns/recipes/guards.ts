/** Pieces of formulas that read one cell alike in Excel and in the grid's engine. */
import { formula, type ColumnSlot } from "../formula";

/** Blank, spaces, or the 0 that a link to a blank cell gives: no date. */
export const noDateIn = (cell: ColumnSlot) => formula`OR(LEN(TRIM(${cell}))=0,EXACT(TRIM(${cell}),"0"))`;

/** The cell, or "" where it is blank: a blank handed to a function arrives as 0 in some hosts. */
export const blankKept = (cell: ColumnSlot) => formula`IF(LEN(${cell})=0,"",${cell})`;

/** Looks like an ISO date: 2026-05-14 ... */
export const isIso = (cell: ColumnSlot) => formula`EXACT(MID(TRIM(${cell}),5,1)&MID(TRIM(${cell}),8,1),"--")`;
