/**
 * npm run witness: asks every independent engine that is installed, and writes docs/witness.md. What is not installed is
 * skipped in words.
 */
import { execFileSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import prettier from "prettier";
import { asked } from "./libreoffice/books";
import { compare, type Difference } from "./libreoffice/compare";
import { findOffice } from "./libreoffice/office";
import { differencesFrom, readCases } from "./r/cases";

interface Line {
  readonly engine: string;
  readonly what: string;
  readonly cells: number;
  readonly beside: string;
  readonly differences: readonly string[];
}

/** So many differences of each book stand on the page. */
const SHOWN = 3;

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const page = here("../../docs/witness.md");

/** @returns undefined where R is not installed */
function byR(): readonly Line[] | undefined {
  try {
    for (const script of ["r/statistics.R", "r/pictures.R"])
      execFileSync("Rscript", [here(script)], { stdio: ["ignore", "ignore", "inherit"] });
  } catch (error) {
    if ((error as { code?: string }).code === "ENOENT") return undefined;
    throw error;
  }
  const { versions, cases } = readCases();
  const engine = versions.replace(/^.*with R version ([\d.]+).*survival ([\d.]+)$/, "R $1, survival $2");
  return [...new Set(cases.map(({ name }) => name))].map((name) => {
    const own = cases.filter((one) => one.name === name);
    return {
      engine,
      what: `\`TUBE.${name}\``,
      cells: own.reduce((sum, { expected }) => sum + expected.length, 0),
      beside: "",
      differences: own.flatMap(differencesFrom),
    };
  });
}

const inWords = ({ where, stored, found, row }: Difference): string =>
  `${where}: stored ${JSON.stringify(stored)}, found ${JSON.stringify(found)}. Row: \`${row}\``;

/** @returns undefined where LibreOffice is not installed */
async function byLibreOffice(): Promise<readonly Line[] | undefined> {
  const office = findOffice();
  if (!office) return undefined;
  const lines: Line[] = [];
  for (const one of asked()) {
    const { what, cells, withOurs, differences } = await compare(one, office);
    const beside = withOurs === 0 ? "" : `${withOurs} call a function of ours, whose result was given`;
    lines.push({ engine: office.version, what, cells, beside, differences: differences.map(inWords) });
  }
  return lines;
}

const found: readonly (readonly [engine: string, lines: readonly Line[] | undefined])[] = [
  ["R", byR()],
  ["LibreOffice", await byLibreOffice()],
];
const lines = found.flatMap(([, own]) => own ?? []);
const absent = found.flatMap(([engine, own]) => (own ? [] : [engine]));
const differing = lines.filter(({ differences }) => differences.length > 0);

const today = new Date().toISOString().slice(0, 10);
const text = [
  "# Witnesses",
  "",
  `Written by \`npm run witness\` on ${today}. Other engines work out the same cells, and each is compared with what our functions and our files give. \`tests/witness/README.md\` says how.`,
  "",
  "| engine | what | cells | differences | beside |",
  "| --- | --- | --- | --- | --- |",
  ...lines.map(
    ({ engine, what, cells, differences, beside }) =>
      `| ${engine} | ${what} | ${cells} | ${differences.length} | ${beside} |`,
  ),
  ...absent.map((engine) => `\n${engine} was not installed: not asked.`),
  ...(differing.length > 0 ? ["", "## Differences", ""] : []),
  ...differing.flatMap(({ what, differences }) => [
    ...differences.slice(0, SHOWN).map((one) => `- ${what}, ${one}`),
    ...(differences.length > SHOWN ? [`- ${what}: ${differences.length - SHOWN} more, printed by the command`] : []),
  ]),
  "",
].join("\n");

writeFileSync(page, await prettier.format(text, { ...(await prettier.resolveConfig(page)), parser: "markdown" }));

for (const { engine, what, cells, differences } of lines)
  console.log(`${engine}: ${what}: ${cells} cells, ${differences.length} differences`);
for (const engine of absent) console.log(`${engine} is not installed: skipped`);
for (const { what, differences } of differing) for (const one of differences) console.error(`${what}, ${one}`);
if (differing.length > 0) process.exitCode = 1;
