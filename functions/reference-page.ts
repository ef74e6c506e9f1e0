/**
 * The same reference for the browser: what Excel's "Help on this function" opens. One page that shows its list or the one
 * function that its address names, so that each is a screen of its own; the list is searched by reference-search.ts, and
 * whole without it.
 */
import { QUIET_LINE } from "../src/words/who-decides";
import type { SheetFunction } from "../src/worksheet/define";
import { argumentHelp } from "./metadata";
import { exampleFormula, givenText, usage } from "./formula-text";

const text = (value: string): string =>
  value.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

const list = (items: readonly string[]): string => `<ul>${items.map((item) => `<li>${text(item)}</li>`).join("")}</ul>`;

/** The summary, the call and an example first: most readers need no more. */
const section = (definition: SheetFunction): string => {
  const { cautions, details, evidence, examples, sources } = definition.documentation!;
  const [first, ...others] = examples;
  const row = (example: (typeof examples)[number]) =>
    `<tr><td><code>${text(exampleFormula(definition, example))}</code></td><td>${text(givenText(definition, example))}</td><td>${text(example.source)}</td></tr>`;
  return `<article id="${definition.name.toLowerCase()}">
<p><a href="#functions">All functions</a> · ${text(definition.family)}</p>
<h2>${definition.name}</h2>
<p class="lead">${text(definition.summary)}</p>
<p class="call"><code>=${text(usage(definition))}</code></p>
<p class="example"><code>${text(exampleFormula(definition, first!))}</code> gives <strong>${text(givenText(definition, first!))}</strong></p>
<p>${text(details)}</p>
<h3>Arguments</h3>
<dl>${definition.order.map(({ name, param }) => `<dt><code>${name}</code></dt><dd>${text(argumentHelp(param))}</dd>`).join("\n")}</dl>
<h3>Cautions</h3>
${list(cautions)}
<details><summary>Worked examples, each with its source (${others.length + 1})</summary>
<table><thead><tr><th scope="col">Formula</th><th scope="col">Gives</th><th scope="col">Where the value comes from</th></tr></thead>
<tbody>${examples.map(row).join("\n")}</tbody></table></details>
<details><summary>How far to rely on it: ${evidence}</summary>
${list(sources)}</details>
</article>`;
};

const family = (name: string, of: readonly SheetFunction[]): string => `<section>
<h2>${text(name)}</h2>
<ul>${of.map((f) => `<li><a href="#${f.name.toLowerCase()}">${f.name}</a> <span>${text(f.summary)}</span></li>`).join("\n")}</ul>
</section>`;

export function referencePageHtml(definitions: readonly SheetFunction[]): string {
  const families = [...new Set(definitions.map((definition) => definition.family))];
  return `<!doctype html>
<!-- Written by "npm run generate" from the functions' own files in src/. -->
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'">
<title>Worksheet functions</title>
<link rel="stylesheet" href="reference.css">
<script src="reference.js" defer></script>
</head>
<body>
<header><h1>Worksheet functions</h1>
<p>${QUIET_LINE}</p></header>
<main>
<nav id="functions" aria-label="Functions">
<form role="search" hidden><label for="search">Search: a name, or what you want to know</label>
<input id="search" type="search" autocomplete="off" spellcheck="false"> <span id="found" role="status"></span></form>
${families
  .map((name) =>
    family(
      name,
      definitions.filter((one) => one.family === name),
    ),
  )
  .join("\n")}
</nav>
${definitions.map(section).join("\n")}
</main>
</body>
</html>
`;
}
