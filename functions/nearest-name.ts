/** The function that a misspelt name was meant for. */
import { NAMESPACE } from "../src/formula/ours";

/** So many letters may be wrong, left out, too many or changed round, of a name of four letters or more. */
const mostSlips = (name: string): number => (name.length < 4 ? 0 : name.length < 8 ? 1 : 2);

/** Letters changed, left out, too many, or two changed round (optimal string alignment). */
function slips(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const isSame = a[i - 1] === b[j - 1];
      let least = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (isSame ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, before[j - 2]! + 1);
      row.push(least);
    }
    [before, last] = [last, row];
  }
  return last[b.length]!;
}

/**
 * @param typed with or without the namespace, in any case
 * @returns null where none is near, and where the name is a function's own
 */
export function nearestName<F extends { readonly name: string }>(typed: string, functions: readonly F[]): F | null {
  const name = typed
    .replace(new RegExp(`^${NAMESPACE}[._ ]?`, "i"), "")
    .replace(/[\s._-]/g, "")
    .toUpperCase();
  let nearest: F | null = null;
  let least = mostSlips(name) + 1;
  for (const one of functions) {
    const distance = slips(name, one.name);
    if (distance < least) [nearest, least] = [one, distance];
  }
  return nearest;
}
