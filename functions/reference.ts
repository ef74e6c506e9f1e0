/** The reference: one page a function, written from its definition. */
import type { SheetFunction } from "../src/worksheet/define";
import { argumentHelp } from "./metadata";
import { exampleFormula, givenText, usage } from "./formula-text";

const cell = (text: string): string => text.replaceAll("|", "\\|").replaceAll("\n", " ");

const table = (headings: readonly string[], rows: readonly (readonly string[])[]): string =>
  [headings, headings.map(() => "---"), ...rows.map((row) => row.map(cell))]
    .map((row) => `| ${row.join(" | ")} |`)
    .join("\n");

const GENERATED = "<!-- Written by `npm run generate` from the function's own file in src/. -->";

const withWords = (param: SheetFunction["order"][number]["param"]): string =>
  argumentHelp(param) + (param.words ? `: ${param.words.map((word) => `\`${word}\``).join(", ")}` : "");

const whenBlank = ({ subject, result }: SheetFunction): string =>
  subject.length === 0
    ? ""
    : ` When ${subject.join(" or ")} is blank: ${result.blank === "" ? "a blank" : `\`${result.blank}\``}.`;

export function referencePage(definition: SheetFunction): string {
  const { cautions, details, evidence, examples, sources } = definition.documentation!;
  const { result } = definition;
  return `${GENERATED}
# ${definition.name}

${definition.summary}

\`${usage(definition)}\`

${details}

## Arguments

${table(
  ["Argument", "Meaning", "One cell or a range"],
  definition.order.map(({ name, param }) => [
    name,
    withWords(param),
    { each: "one cell, or a range: one result for each", range: "the whole range", choice: "one word" }[param.mode],
  ]),
)}

## Result

${result.help}${result.unit ? `, ${result.unit}` : ""}.${whenBlank(definition)}

## Cautions

${cautions.map((caution) => `- ${caution}`).join("\n")}

## Worked examples

${table(
  ["Formula", "Gives", "Where the value comes from"],
  examples.map((example) => [
    `\`${exampleFormula(definition, example)}\``,
    givenText(definition, example) + (example.within ? ` (within ${example.within})` : ""),
    example.source,
  ]),
)}

## How far to rely on it

Evidence: **${evidence}**.

${sources.map((source) => `- ${source}`).join("\n")}
`;
}

export const referenceIndex = (definitions: readonly SheetFunction[]): string => `${GENERATED}
# Worksheet functions

${table(
  ["Function", "Family", "What it gives"],
  definitions.map((f) => [`[\`${usage(f)}\`](${f.name.toLowerCase()}.md)`, f.family, f.summary]),
)}

How arguments are read, for all of them: [arguments.md](../arguments.md).
`;
