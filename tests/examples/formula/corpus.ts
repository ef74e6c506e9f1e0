/** Formulas of workbooks that other programs wrote, where such a collection is on this machine. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";

/** A folder of .xlsx files; they belong to others and are not part of this project. */
const FOLDER = process.env["FORMULA_CORPUS"] ?? "";

export const hasCorpus = FOLDER !== "" && existsSync(FOLDER);

const unescaped = (xml: string): string =>
  xml
    .replace(/&#x([0-9a-f]+);/gi, (_, code: string) => String.fromCodePoint(parseInt(code, 16)))
    .replace(/&#(\d+);/g, (_, code: string) => String.fromCodePoint(Number(code)))
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&apos;", "'")
    .replaceAll("&amp;", "&");

/** Files that cannot be opened hold none. */
function parts(file: string): readonly string[] {
  try {
    const found = unzipSync(readFileSync(join(FOLDER, file)), {
      filter: ({ name, originalSize }) => /^xl\/worksheets\/[^/]+\.xml$/i.test(name) && originalSize < 20_000_000,
    });
    return Object.values(found).map((bytes) => strFromU8(bytes));
  } catch {
    return [];
  }
}

/** Each once, in the file's spelling, without "=". */
export function corpusFormulas(): readonly { readonly file: string; readonly formula: string }[] {
  const all = new Map<string, string>();
  for (const file of readdirSync(FOLDER))
    for (const xml of parts(file))
      for (const [, text] of xml.matchAll(/<(?:\w+:)?f(?:\s[^>]*)?>([^<]+)<\/(?:\w+:)?f>/g)) {
        const formula = unescaped(text!);
        if (!all.has(formula)) all.set(formula, file);
      }
  return [...all].map(([formula, file]) => ({ formula, file }));
}
