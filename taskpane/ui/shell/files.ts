import { shell as shellTexts } from "../../texts/shell";

/** Larger files are refused before they are read; the opener has its own, finer limits for what is inside. */
const MOST_BYTES = 64 * 1024 * 1024;
const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** The bytes of a chosen file, or a sentence why not. */
export async function readFile(file: File): Promise<Uint8Array | string> {
  if (file.size > MOST_BYTES) return shellTexts.tooLarge(Math.ceil(file.size / 1024 / 1024));
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch {
    return shellTexts.unreadable;
  }
}

/** Hands bytes to the browser's downloads. Nothing is sent anywhere. */
export function download(bytes: Uint8Array, name: string): void {
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: XLSX }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  /* The browser reads the address after the click has returned. */
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
