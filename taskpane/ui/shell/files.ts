import { shell as shellTexts } from "../../texts/shell";

/** Larger files are refused before they are read; the opener has its own, finer limits for what is inside. */
const MOST_BYTES = 64 * 1024 * 1024;

/** The bytes of a chosen file, or a sentence why not. */
export async function readFile(file: File): Promise<Uint8Array | string> {
  if (file.size > MOST_BYTES) return shellTexts.tooLarge(Math.ceil(file.size / 1024 / 1024));
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch {
    return shellTexts.unreadable;
  }
}
