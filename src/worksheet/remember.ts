/**
 * Keeps the last answer of work on long columns. A column of formulas, one a row, asks for the same fit again and again;
 * the host hands the same cells over as new arrays each time, so contents are compared where identity does not decide.
 * Columns are read afresh from every call's cells and never changed, so an answer cannot grow old.
 */
import type { Column } from "./rows";

const sameMarks = (a: Uint8Array | undefined, b: Uint8Array | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && a.every((mark, i) => mark === b[i]));

const sameColumn = (a: Column, b: Column): boolean => {
  if (a === b) return true;
  if (a.rows !== b.rows || a.columns !== b.columns) return false;
  for (let i = 0; i < a.values.length; i++) if (!Object.is(a.values[i], b.values[i])) return false;
  return sameMarks(a.written, b.written);
};

export function rememberLast<C extends readonly Column[], R>(work: (...columns: C) => R): (...columns: C) => R {
  let last: { readonly columns: C; readonly answer: R } | undefined;
  return (...columns) => {
    const known = last !== undefined && columns.every((column, i) => sameColumn(column, last!.columns[i]!));
    // The newest columns are kept also when they hold the same as the last: the next row then finds them by identity.
    last = { columns, answer: known ? last!.answer : work(...columns) };
    return last.answer;
  };
}

/** Answers kept at most, then all are forgotten: nothing long stays behind. */
const KEPT = 10_000;

/** Keeps the answer for each of the last keys: a long column holds the same few sizes or dates again and again. */
export function rememberEach<K extends number | string, R extends string | object>(work: (key: K) => R): (key: K) => R {
  const known = new Map<K, R>();
  return (key) => {
    let answer = known.get(key);
    if (answer === undefined) {
      answer = work(key);
      if (known.size >= KEPT) known.clear();
      known.set(key, answer);
    }
    return answer;
  };
}
