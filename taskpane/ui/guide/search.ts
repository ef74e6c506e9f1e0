import type { SheetFunction } from "../../../src/worksheet/define";

const plain = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

/** All that a person may have in mind when looking for a function. */
function haystack(fn: SheetFunction): string {
  const argumentTexts = fn.order.map(({ name, param }) => `${name} ${param.help} ${param.unit ?? ""}`);
  const { documentation } = fn;
  return plain(
    [
      fn.name,
      `TUBE.${fn.name}`,
      fn.family,
      fn.summary,
      documentation?.details ?? "",
      ...argumentTexts,
      fn.result.help,
    ].join(" "),
  );
}

/** Functions in which every word typed occurs; the more of them stand in the name, the further up. */
export function search(functions: readonly SheetFunction[], typed: string): readonly SheetFunction[] {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  if (words.length === 0) return functions;
  const hits = functions.filter((fn) => {
    const text = haystack(fn);
    return words.every((word) => text.includes(word));
  });
  const named = (fn: SheetFunction) =>
    words.filter((word) => plain(fn.name).includes(word.replace(/^tube\./, ""))).length;
  return hits.sort((a, b) => named(b) - named(a));
}
