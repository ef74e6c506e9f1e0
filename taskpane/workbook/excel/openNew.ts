/** A workbook that was made here, opened by Excel as one beside the present one. */
import { errorSentence } from "./sentences";

type Opened = { readonly outcome: "opened" } | { readonly outcome: "refused"; readonly sentence: string };

/** `Excel.createWorkbook` came with this set. */
const NEEDED = "1.8";
const TOO_OLD =
  "This Excel cannot open a new workbook from here. Update Excel, or set the caseload up in the browser workbook and save it.";

/** A call takes only so many arguments. */
const AT_ONCE = 0x8000;

export function base64Of(bytes: Uint8Array): string {
  let binary = "";
  for (let at = 0; at < bytes.length; at += AT_ONCE) {
    binary += String.fromCharCode(...bytes.subarray(at, at + AT_ONCE));
  }
  return btoa(binary);
}

/** Excel names the new workbook by itself. */
export async function openNew(bytes: Uint8Array, _name: string): Promise<Opened> {
  if (!Office.context.requirements.isSetSupported("ExcelApi", NEEDED)) return { outcome: "refused", sentence: TOO_OLD };
  try {
    await Excel.createWorkbook(base64Of(bytes));
    return { outcome: "opened" };
  } catch (error) {
    return { outcome: "refused", sentence: errorSentence(error) };
  }
}
