/** Structured references kept true when a table's column gets another name. */
import { escapedColumn, needsOwnBrackets, unescapedColumn } from "./columns";
import { tokens, untokened } from "./tokens";

export interface ColumnRename {
  readonly table: string;
  readonly from: string;
  readonly to: string;
}

/** The formula with the columns' new names; the same text where it names none of them. */
export function renameColumns(formula: string, renames: readonly ColumnRename[]): string {
  if (!formula.includes("[")) return formula;
  const all = tokens(formula);
  return untokened(
    all.map((token, at) => {
      const before = all[at - 1];
      if (token.kind !== "bracket" || before?.kind !== "word") return token;
      const table = before.text.toLowerCase();
      const here = renames.filter((one) => one.table.toLowerCase() === table);
      return here.length === 0 ? token : { ...token, text: `[${renamedInside(token.text.slice(1, -1), here)}]` };
    }),
  );
}

/** What stands between the outer brackets: one column or item, or several in brackets of their own. */
function renamedInside(inside: string, renames: readonly ColumnRename[]): string {
  const [mark, rest] = inside.startsWith("@") ? ["@", inside.slice(1)] : ["", inside];
  const parts = tokens(rest);
  if (parts.some(({ kind }) => kind === "bracket") && /^\s*\[/.test(rest)) {
    const renamed = parts.map((part) => {
      const name = part.kind === "bracket" ? renamedOne(part.text.slice(1, -1), renames) : undefined;
      return name === undefined ? part : { ...part, text: `[${name}]` };
    });
    return mark + untokened(renamed);
  }
  const renamed = renamedOne(rest, renames);
  if (renamed === undefined) return inside;
  return mark + (needsOwnBrackets(renamed) ? `[${renamed}]` : renamed);
}

function renamedOne(escaped: string, renames: readonly ColumnRename[]): string | undefined {
  if (escaped.startsWith("#")) return undefined;
  const name = unescapedColumn(escaped).toLowerCase();
  const rename = renames.find((one) => one.from.toLowerCase() === name);
  return rename && escapedColumn(rename.to);
}
