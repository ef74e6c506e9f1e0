/** Names that LET and LAMBDA give inside a formula: files prefix them wherever they stand ([MS-XLSX] 2.2.2). */
import type { Token } from "./tokens";

const BINDS = /^(?:LET|LAMBDA)$/i;

/** In capitals. */
export function boundNames(formula: readonly Token[]): ReadonlySet<string> {
  const bound = new Set<string>();
  if (!formula.some(({ text }) => BINDS.test(text))) return bound;
  const all = formula.filter((token) => token.text.trim() !== "");
  const open: { letOrLambda: "LET" | "LAMBDA" | null; argument: number }[] = [];
  all.forEach((token, at) => {
    const name = token.text.toUpperCase();
    if (token.text === "(") {
      const before = all[at - 1]?.text.toUpperCase();
      open.push({ letOrLambda: before === "LET" || before === "LAMBDA" ? before : null, argument: 0 });
    } else if (token.text === ")") open.pop();
    else if (token.text === "," && open.length > 0) open.at(-1)!.argument++;
    else if (token.kind === "word" && all[at + 1]?.text === ",") {
      const call = open.at(-1);
      const startsArgument = all[at - 1]?.text === "(" || all[at - 1]?.text === ",";
      if (startsArgument && call?.letOrLambda === "LAMBDA") bound.add(name);
      if (startsArgument && call?.letOrLambda === "LET" && call.argument % 2 === 0) bound.add(name);
    }
  });
  return bound;
}
