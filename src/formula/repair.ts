/**
 * Formulas that call our functions by a name under which no program finds them any more: a file's own spelling that was
 * left standing (`_xldudf_TUBE_FRTOMM`, `_xlfn.TUBE.FRTOMM`, `_xludf.TUBE.FRTOMM`), another workbook's or add-in's name before
 * it (`[1]!TUBE.FRTOMM`), or the namespace gone (`FRTOMM`).
 */
import { NAMESPACE } from "./ours";
import { isFunctionName, tokens, untokened, type Token } from "./tokens";

const SPELLED = new RegExp(`^(?:@?_xl[a-z]*\\.|@)*(?:_xldudf_)?${NAMESPACE}[._]([A-Z0-9]+)$`, "i");

/** Names of ours that Excel has too: without the namespace they are Excel's. From Microsoft's list of its functions. */
const EXCELS: ReadonlySet<string> = new Set(["RATE"]);

/**
 * @param names of our functions, in capitals, without the namespace
 * @returns the formula as people type it; null where it calls none of ours
 */
export function repaired(formula: string, names: ReadonlySet<string>): string | null {
  const all = tokens(formula);
  let isOurs = false;
  const found = all.map((token, at): Token => {
    if (!isFunctionName(all, at)) return token;
    const spelled = SPELLED.exec(token.text)?.[1]?.toUpperCase();
    const bare = token.text.toUpperCase();
    const name = spelled ?? (EXCELS.has(bare) ? undefined : bare);
    if (name === undefined || !names.has(name)) return token;
    isOurs = true;
    return { kind: "word", text: `${NAMESPACE}.${name}` };
  });
  return isOurs ? untokened(withoutBooks(found)) : null;
}

/** Another workbook's name before one of ours goes: `[1]!TUBE.X`, `'tubes.xlam'!TUBE.X`. */
function withoutBooks(all: readonly Token[]): readonly Token[] {
  const gone = new Set<number>();
  all.forEach(({ text }, at) => {
    if (!text.startsWith(`${NAMESPACE}.`) || all[at - 1]?.text !== "!") return;
    gone.add(at - 1);
    if (["bracket", "sheet", "word"].includes(all[at - 2]?.kind ?? "")) gone.add(at - 2);
  });
  return all.filter((_, at) => !gone.has(at));
}
