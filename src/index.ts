/** The library's face: every worksheet function, in the order in which guides and lists show them. */
import { BALLOONDEVIATION } from "./balloon/balloondeviation";
import { BALLOONSTATE } from "./balloon/balloonstate";
import { CHECKDUE } from "./balloon/checkdue";
import { REMOVAL } from "./device/removal";
import { RETENTION } from "./device/retention";
import { CHANGEDUE } from "./schedule/changedue";
import { DUESTATE } from "./schedule/duestate";
import { FRTOMM } from "./sizes/frtomm";
import { MMTOFR } from "./sizes/mmtofr";
import { READPRINT } from "./sizes/readprint";
import { STOCKSIZE } from "./sizes/stocksize";
import type { SheetFunction } from "./worksheet/define";

export const functions: readonly SheetFunction[] = [
  FRTOMM,
  MMTOFR,
  READPRINT,
  STOCKSIZE,
  RETENTION,
  REMOVAL,
  BALLOONDEVIATION,
  BALLOONSTATE,
  CHECKDUE,
  CHANGEDUE,
  DUESTATE,
];
