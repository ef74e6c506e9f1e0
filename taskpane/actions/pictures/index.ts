/** What the pictures show: the devices of a ready-made caseload as its formulas tell them, or of somebody's own list. Writes nothing. */
import type { Overview, Workbook } from "../../workbook/port";
import { recogniseCaseload } from "../caseload/recognise";
import { readCaseloadPictured } from "./caseload";
import type { NoPictures, Pictured } from "./interface";
import { readListPictured, type Said } from "./own-list";

export type { NoPictures, OwnSource, Pictured } from "./interface";

/**
 * @param today by the computer's clock, where the workbook names no day of its own
 * @param said what somebody has said of words for a reason in their own list
 */
export async function readPictured(
  workbook: Workbook,
  overview: Overview,
  today: number,
  said: Said = new Map(),
): Promise<Pictured | NoPictures> {
  const recognised = recogniseCaseload(overview);
  if (recognised.is === "caseload") return readCaseloadPictured(workbook, overview, recognised.tables, today);
  if (recognised.is === "incomplete") return { is: "none", sentence: recognised.sentence };
  return readListPictured(workbook, today, said);
}
