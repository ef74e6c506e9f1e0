/** A workbook that was made here, opened by Excel as one beside the present one. */
import { errorSentence } from "./sentences";

type Opened = { readonly outcome: "opened" } | { readonly outcome: "refused"; readonly sentence: string };

/** `Excel.createWorkbook` came with this set. */
const NEEDED = "1.8";
const TOO_OLD =
  "This Excel cannot open a new workbook from here. Update Excel, or set the caseload up in the browser workbook and save it.";

/** A policy can forbid add-ins to open workbooks; it comes as any other refusal, in Excel's language (office-js 3568). */
const ELSEWHERE =
  "If that stays so, your organisation may not let add-ins open workbooks: set the caseload up on the browser page (index.html in the same folder), save it there, and open that file in Excel.";
const MID_EDIT = "InvalidOperationInCellEditMode";

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
    const sentence = errorSentence(error);
    const isMidEdit = (error as { code?: unknown } | null)?.code === MID_EDIT;
    return { outcome: "refused", sentence: isMidEdit ? sentence : `${sentence} ${ELSEWHERE}` };
  }
}
