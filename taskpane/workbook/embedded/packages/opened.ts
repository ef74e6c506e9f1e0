/** Opened, tried whether it can be saved again, and looked at: what either thread does with a file. */
import { isRefusal, openUnhurried, whyNotSaved, type OpenedPackage, type Refusal, type Watching } from "../../package";
import { readDisplay, type Display } from "../open/display";

export interface HeldFile {
  readonly opened: OpenedPackage;
  readonly display: Display;
}

export async function openFile(bytes: Uint8Array, watching: Watching = {}): Promise<HeldFile | Refusal> {
  const opened = await openUnhurried(bytes, watching);
  if (isRefusal(opened)) return opened;
  if (!opened.sheets.some((sheet) => sheet.kind === "worksheet"))
    return { refused: "This workbook holds charts only and no sheet with cells." };
  const reason = whyNotSaved(opened);
  if (reason !== undefined) return { refused: reason };
  return { opened, display: await readDisplay(opened) };
}
