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

/** Functions in which every word typed occurs; those that have it in their name come first. */
export function search(functions: readonly SheetFunction[], typed: string): readonly SheetFunction[] {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  if (words.length === 0) return functions;
  const hits = functions.filter((fn) => {
    const text = haystack(fn);
    return words.every((word) => text.includes(word));
  });
  const named = (fn: SheetFunction) => words.some((word) => plain(fn.name).includes(word.replace(/^tube\./, "")));
  return [...hits.filter(named), ...hits.filter((fn) => !named(fn))];
}
