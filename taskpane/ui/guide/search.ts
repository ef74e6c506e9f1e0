import { nearestName } from "../../../functions/nearest-name";
import { NAMESPACE } from "../../../src/formula/ours";
import type { SheetFunction } from "../../../src/worksheet/define";
import { asked } from "./asked";

const plain = (text: string): string => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();

/** Words of questions that say nothing of what is asked. */
const EMPTY = new Set(
  "a an and are be can do does for from has have how i if in is it its me my of on or our should the their to what when which who why will with you your tube tubes".split(
    " ",
  ),
);

/** "leaks", "leaking" and "leaked" are one word here. */
const stem = (word: string): string => (word.length > 4 ? word.replace(/(?:ing|ed|s)$/, "") : word.replace(/s$/, ""));

/** Letters and figures; the names of functions keep their dot. */
const wordsOf = (text: string): readonly string[] => plain(text).match(/[\p{L}\p{N}.]+/gu) ?? [];

/** All that a person may have in mind when looking for a function. */
function haystack(fn: SheetFunction): string {
  const argumentTexts = fn.order.map(({ name, param }) => `${name} ${param.help} ${param.unit ?? ""}`);
  const { documentation } = fn;
  return plain(
    [
      fn.name,
      `${NAMESPACE}.${fn.name}`,
      fn.family,
      fn.summary,
      documentation?.details ?? "",
      ...argumentTexts,
      fn.result.help,
    ].join(" "),
  );
}

/**
 * Names of the functions that answer a plain question, best first: those whose questions hold most of its telling words,
 * and of these those that hold most of the others.
 */
function answering(telling: readonly string[], all: readonly string[]): readonly string[] {
  const scored = asked.map(([questions, ...functions]) => {
    const known = new Set(wordsOf(questions).map(stem));
    const held = (words: readonly string[]) => words.filter((word) => known.has(stem(word))).length;
    return { functions, telling: held(telling), all: held(all) };
  });
  const most = Math.max(...scored.map((one) => one.telling));
  if (most === 0) return [];
  const best = scored.filter((one) => one.telling === most).sort((a, b) => b.all - a.all);
  return best.flatMap(({ functions }) => functions);
}

/**
 * Functions whose name holds what was typed, those that answer it as a question, then all others in which every telling
 * word occurs. Where there is none, the one whose name is nearly what was typed.
 */
export function search(functions: readonly SheetFunction[], typed: string): readonly SheetFunction[] {
  const all = wordsOf(typed);
  if (all.length === 0) return functions;
  const telling = all.filter((word) => !EMPTY.has(word));
  const words = telling.length > 0 ? telling : all;
  const isNamed = (fn: SheetFunction) =>
    words.filter((word) => plain(fn.name).includes(word.replace(/^tube\./, ""))).length;
  const found = functions.filter((fn) => {
    const text = haystack(fn);
    return words.every((word) => text.includes(word) || text.includes(stem(word)));
  });
  const answers = answering(words, all).flatMap((name) => functions.find((fn) => fn.name === name) ?? []);
  const named = found.filter((fn) => isNamed(fn) > 0).sort((a, b) => isNamed(b) - isNamed(a));
  /* Whoever says more than telling words asks a question; else a name may be meant. */
  const isQuestion = words.length < all.length;
  const hits = [...new Set([...(isQuestion ? [] : named), ...answers, ...named, ...found])];
  if (hits.length > 0) return hits;
  const nearest = nearestName(all.join(""), functions);
  return nearest ? [nearest] : [];
}
