/** A clinic's own list of lengths in stock, as people type it: "0.8, 1.0, 1.2" or "0,8; 1,0; 1,2". */
import { lengthCm, LONGEST } from "../fit/lengths";
import { cited } from "../worksheet/cited";

const oneLength = lengthCm("");

/** Commas part two lengths where a space follows, or where a point is the decimal sign. */
const partsOf = (text: string): readonly string[] =>
  text
    .split(/[;\n]|,\s|\s+/)
    .flatMap((part) => (/\..*,|,.*[.,]/.test(part) ? part.split(",") : [part]))
    .map((part) => part.replace(/,$/, "").trim())
    .filter((part) => part !== "" && part.toLowerCase() !== "cm");

/** Ascending, each once; or a sentence that says what cannot be read. */
export function readLengths(text: string): readonly number[] | string {
  const found = new Set<number>();
  for (const part of partsOf(text)) {
    const length = oneLength.read(part);
    if (typeof length !== "number") return `${cited(part)} is no length in cm above 0 and up to ${LONGEST}.`;
    found.add(length);
  }
  return found.size === 0 ? "Type the lengths that you stock, in cm." : [...found].sort((a, b) => a - b);
}
