/** The library as another program gets it: packed, installed without a network, used from JavaScript and TypeScript. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));
const project = mkdtempSync(join(tmpdir(), "library-"));
afterAll(() => rmSync(project, { recursive: true, force: true }));

function run(command: string, args: readonly string[], cwd = project): string {
  const shell = process.platform === "win32";
  const { status, stdout, stderr, error } = spawnSync(command, args, { cwd, encoding: "utf8", shell });
  if (status !== 0) throw new Error(`${command} ${args.join(" ")}: ${error?.message ?? stdout + stderr}`);
  return stdout;
}

/** A file of the consumer's, with its lines. */
const file = (name: string, ...lines: readonly string[]): void =>
  writeFileSync(join(project, name), `${lines.join("\n")}\n`);

let packed: readonly string[];
beforeAll(() => {
  // Builds first (prepack); what the build prints goes before the list.
  const said = run("npm", ["pack", "--json", "--foreground-scripts=false", "--pack-destination", project], root);
  const [tarball] = JSON.parse(said.slice(said.indexOf("[\n"))) as { filename: string; files: { path: string }[] }[];
  packed = tarball!.files.map(({ path }) => path);
  file("package.json", JSON.stringify({ name: "consumer", private: true, type: "module" }));
  run("npm", ["install", "--offline", "--no-audit", "--no-fund", join(project, tarball!.filename)]);
});

test("holds the library and the notices, nothing else", () => {
  const notices = ["CHANGELOG.md", "LICENSE", "NOTICE", "README.md", "package.json"];
  expect(packed.filter((path) => !path.startsWith("dist-library/")).sort()).toEqual(notices);
  for (const path of packed) expect(path).not.toMatch(/office|taskpane/i);
});

test("needs no other package", () => {
  const installed = readdirSync(join(project, "node_modules")).filter((name) => !name.startsWith("."));
  expect(installed).toEqual(["gastrostomy-workbook"]);
});

test("works from plain JavaScript", () => {
  file(
    "plain.js",
    `import { call, changeDue, frToMm, functions, isoText, SheetError } from "gastrostomy-workbook";`,
    `const fault = changeDue({ lastchange: "3/4/2026", interval: 3 });`,
    `console.log(JSON.stringify({`,
    `  due: isoText(changeDue({ lastchange: "2019-01-31", interval: 1, unit: "months" })),`,
    `  misspelt: changeDue({ lastchange: "2019-01-31", interval: 1, units: "weeks" }).message,`,
    `  fault: fault instanceof SheetError && fault.message,`,
    `  column: call(frToMm.definition, [[[12], ["15 Fr"], [""]]]),`,
    `  documented: functions.every(({ documentation }) => documentation.examples.length > 0),`,
    `}));`,
  );
  const said = JSON.parse(run(process.execPath, ["plain.js"])) as Record<string, unknown>;
  expect(said).toEqual({
    due: "2019-02-28",
    misspelt: "units is not an argument of CHANGEDUE, which takes lastchange, interval, unit, closed",
    fault: expect.stringContaining("lastchange must be a date"),
    column: [[4], [5], [""]],
    documented: true,
  });
});

test("holds TypeScript to the arguments, and to looking for faults", () => {
  file(
    "typed.ts",
    `import { changeDue, lifeQuantile, SheetError, type DayNumber } from "gastrostomy-workbook";`,
    `const due: DayNumber | null | SheetError = changeDue({ lastchange: 46143, interval: 12, unit: "weeks" });`,
    `if (typeof due === "number") due.toFixed();`,
    `const lives = lifeQuantile({ days: [90, 150], failed: [true, false], share: 0.5 });`,
    `if (!(lives instanceof SheetError)) { const [days, low, high] = lives; days?.toFixed(); low?.toFixed(); high?.toFixed(); }`,
    `// @ts-expect-error a misspelt argument that could be left out`,
    `changeDue({ lastchange: 46143, interval: 12, units: "weeks" });`,
    `// @ts-expect-error a misspelt argument that cannot`,
    `changeDue({ lastchanged: 46143, interval: 12 });`,
    `// @ts-expect-error a word that is none of the choices`,
    `changeDue({ lastchange: 46143, interval: 12, unit: "fortnights" });`,
    `// @ts-expect-error no interval`,
    `changeDue({ lastchange: 46143 });`,
    `// @ts-expect-error a result that may be blank or a fault`,
    `due.toFixed();`,
  );
  const tsc = join(root, "node_modules", "typescript", "bin", "tsc");
  const strict = { strict: true, exactOptionalPropertyTypes: true, skipLibCheck: false, noEmit: true };
  const compilerOptions = { ...strict, module: "node16", lib: ["es2022"] };
  file("tsconfig.json", JSON.stringify({ compilerOptions, files: ["typed.ts"] }));
  run(process.execPath, [tsc]);
});

test("says units and limits where an editor shows them", () => {
  const types = join(project, "node_modules/gastrostomy-workbook/dist-library/functions/generated/library.d.ts");
  expect(readFileSync(types, "utf8")).toContain("/** Feed to be given in a day (mL; above 0, at most 20000). */");
});
