import { refuse } from "../refusal";

/** Never repaired here: a guess could change somebody's figures without anyone noticing. */
export function damaged(partName: string, offset: number, what: string): never {
  return refuse(
    `This workbook is damaged: ${what} (${partName}, character ${offset + 1}). ` +
      `Open it in Excel, let Excel repair it, save a copy and open that.`,
  );
}
