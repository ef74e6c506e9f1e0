/**
 * Which program has opened the page. Asked once at the start, before anything of Office is touched.
 *
 * Measured in Chromium with Microsoft's library: without a host `Office.onReady` answers at once and names none; with
 * one of its own files missing it never answers, hence the clock; with office.js blocked `Office` does not exist.
 */
export type HostKind = "excel" | "other Office program" | "browser";

/** Long enough for Excel on a slow machine; a page outside Excel is answered in milliseconds. */
const PATIENCE = 4_000;

export async function detectHost(patience = PATIENCE): Promise<HostKind> {
  if (typeof Office === "undefined" || typeof Office.onReady !== "function") return "browser";
  let clock: ReturnType<typeof setTimeout> | undefined;
  const silence = new Promise<null>((answer) => {
    clock = setTimeout(() => answer(null), patience);
  });
  const info = await Promise.race([Office.onReady(), silence]).catch(() => null);
  clearTimeout(clock);
  if (!info?.host) return "browser";
  return info.host === Office.HostType.Excel ? "excel" : "other Office program";
}
