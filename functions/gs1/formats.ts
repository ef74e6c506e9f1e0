/** Turns GS1's identifiers and formats (identifiers.txt) into the table that READCODE reads by. */

/** What our reader checks of a part's characters; the dictionary's other checks (countries, bank numbers) it leaves. */
const CHECKED = new Set(["csum", "yymmdd", "yymmd0", "hhmi"]);

/** `N6,yymmdd N4,hhmi`, without checks that our reader does not make. */
const shortened = (format: string): string =>
  format
    .split(" ")
    .map((part) => {
      const [type, ...checks] = part.split(",");
      const check = checks.find((name) => CHECKED.has(name));
      return check === undefined ? type! : `${type!},${check}`;
    })
    .join(" ");

/** @param identifiers the text of identifiers.txt */
export function gs1FormatsSource(identifiers: string): string {
  const formats = new Map<string, string[]>();
  for (const line of identifiers.split("\n")) {
    if (line.trim() === "" || line.startsWith("#")) continue;
    const match = /^(\d{2,4}(?:-\d{2,4})?) *(\*?) +(.+)$/.exec(line);
    if (!match) throw new Error(`identifiers.txt: cannot read "${line}"`);
    const [, ids, flag, format] = match as unknown as [string, string, string, string];
    const key = `${flag}${shortened(format)}`;
    formats.set(key, [...(formats.get(key) ?? []), ids]);
  }
  const lines = [...formats].map(([format, ids]) => `  "${format} = ${ids.join(" ")}",`);
  return [
    "/**",
    " * GS1's identifiers by their format: `*N14,csum = 01 02 03`. Written by `npm run generate` from",
    " * functions/gs1/identifiers.txt (GS1 Barcode Syntax Dictionary, Apache-2.0), where the notation is explained.",
    " */",
    "export const gs1Formats: readonly string[] = [",
    ...lines,
    "];",
    "",
  ].join("\n");
}
