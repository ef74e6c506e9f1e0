import { exampleFormula } from "../../../functions/formula-text";
import type { Params, Example, SheetFunction } from "../../../src/worksheet/define";
import { givesDate } from "../../../src/worksheet/result-kind";
import { guide as guideTexts } from "../../texts/guide";
import { dateText } from "../parts/dates";

/** Rows of a block shown; the reference pages show all of it. */
const MOST_ROWS = 4;
/** Examples shown at once. */
const FIRST = 3;

function given(fn: SheetFunction, { gives, args }: Example<Params>, locale: string): string {
  const one = (cell: unknown, column = 0): string => {
    if (cell === null || cell === "") return guideTexts.emptyResult;
    if (typeof cell === "number") {
      return givesDate(fn, column, args)
        ? dateText(cell, locale)
        : `${cell}${fn.result.unit && fn.result.kind === "number" ? ` ${fn.result.unit}` : ""}`;
    }
    if (typeof cell === "object") {
      const { error, says } = cell as { error: string; says?: string };
      return says ? `${error} (${says})` : error;
    }
    return String(cell);
  };
  if (!Array.isArray(gives)) return one(gives);
  const rows = (gives as readonly (readonly unknown[])[]).map((row) => row.map((cell, i) => one(cell, i)).join(", "));
  return rows.slice(0, MOST_ROWS).join("; ") + (rows.length > MOST_ROWS ? "; …" : "");
}

export function Examples({ fn, locale }: { readonly fn: SheetFunction; readonly locale: string }) {
  const examples: readonly Example<Params>[] = fn.documentation?.examples ?? [];
  if (examples.length === 0) return null;
  const show = (some: readonly Example<Params>[]) =>
    some.map((example, i) => (
      <div className="example" key={i}>
        <code className="formula">{exampleFormula(fn, example)}</code>
        <p className="gives">
          <span>{guideTexts.expected}</span>
          <strong>{given(fn, example, locale)}</strong>
          {example.within !== undefined && <span className="note">{guideTexts.within(example.within)}</span>}
        </p>
        <p className="note">{guideTexts.source(example.source)}</p>
      </div>
    ));
  const more = examples.slice(FIRST);
  return (
    <div className="stack">
      <h4>{guideTexts.examples}</h4>
      {show(examples.slice(0, FIRST))}
      {more.length > 0 && (
        <details className="fold">
          <summary>{guideTexts.moreExamples(more.length)}</summary>
          <div className="stack">{show(more)}</div>
        </details>
      )}
    </div>
  );
}
