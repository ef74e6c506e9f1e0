/** What saving says of a sheet that the file cannot hold as it stands on the screen. */
import type { SheetDifference } from "./sheet-edits";

const some = (addresses: readonly string[]): string =>
  addresses.slice(0, 5).join(", ") + (addresses.length > 5 ? ` and ${addresses.length - 5} more` : "");

interface FilterTold {
  readonly keepsArrows?: boolean;
  readonly isLossy: boolean;
}

export function toldOf(
  sheetName: string,
  { malformed, outdated, lossyLooks }: SheetDifference,
  filter: FilterTold,
): readonly string[] {
  const told: string[] = [];
  const say = (sentence: string): void => void told.push(`"${sheetName}": ${sentence}`);
  if (malformed.length > 0)
    say(`what stands in ${some(malformed)} is no formula that can be read. It is saved as a text; write it anew.`);
  if (outdated.length > 0)
    say(
      `this page cannot work out ${some(outdated)}, and what they read has changed. Their old results are wrong now: the file holds #N/A there until Excel works them out.`,
    );
  if (lossyLooks.length > 0) say(`some of the look of ${some(lossyLooks)} is not saved.`);
  if (filter.keepsArrows) say("the arrows of its filter stay in the file.");
  if (filter.isLossy) say("rows stay hidden, but the filter's condition is not saved.");
  return told;
}

/** Told only where the file becomes another one. */
export const notWorkedOut = (sheetName: string, kept: readonly string[]): string =>
  `"${sheetName}": not worked out here: ${some(kept)}. The file holds the results it came with. Let Excel work them out before anybody relies on them.`;
