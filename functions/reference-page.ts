/** The same reference as one web page: what Excel's "Help on this function" opens. Plain HTML, no script. */
import { QUIET_LINE } from "../src/words/who-decides";
import type { SheetFunction } from "../src/worksheet/define";
import { argumentHelp } from "./metadata";
import { exampleFormula, givenText, usage } from "./formula-text";

const text = (value: string): string =>
  value.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

const list = (items: readonly string[]): string => `<ul>${items.map((item) => `<li>${text(item)}</li>`).join("")}</ul>`;

const section = (definition: SheetFunction): string => {
  const { cautions, details, evidence, examples, sources } = definition.documentation!;
  return `<section id="${definition.name.toLowerCase()}">
<h2>${definition.name}</h2>
<p>${text(definition.summary)}</p>
<p><code>${text(usage(definition))}</code></p>
<p>${text(details)}</p>
<h3>Arguments</h3>
<dl>${definition.order.map(({ name, param }) => `<dt><code>${name}</code></dt><dd>${text(argumentHelp(param))}</dd>`).join("\n")}</dl>
<h3>Cautions</h3>
${list(cautions)}
<h3>Worked examples</h3>
<table><thead><tr><th>Formula</th><th>Gives</th><th>Where the value comes from</th></tr></thead>
<tbody>${examples
    .map(
      (example) =>
        `<tr><td><code>${text(exampleFormula(definition, example))}</code></td><td>${text(givenText(definition, example))}</td><td>${text(example.source)}</td></tr>`,
    )
    .join("\n")}</tbody></table>
<p>Evidence: <strong>${evidence}</strong></p>
${list(sources)}
</section>`;
};

export const referencePageHtml = (definitions: readonly SheetFunction[]): string => `<!doctype html>
<!-- Written by "npm run generate" from the functions' own files in src/. -->
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'">
<title>Worksheet functions</title>
<link rel="stylesheet" href="reference.css">
</head>
<body>
<main>
<h1>Worksheet functions</h1>
<p>${QUIET_LINE}</p>
<nav aria-label="Functions"><ul>${definitions.map((f) => `<li><a href="#${f.name.toLowerCase()}">${f.name}</a> ${text(f.summary)}</li>`).join("\n")}</ul></nav>
${definitions.map(section).join("\n")}
</main>
</body>
</html>
`;
