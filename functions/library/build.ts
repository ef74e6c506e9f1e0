/**
 * Builds the library for Node and bundlers: ESM JavaScript and types, by the TypeScript compiler. Runs before
 * `npm pack`.
 *
 * It is compiled without the types of Node, of a page or of Office: what it needs is the language alone.
 */
import { rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import ts from "typescript";

const root = fileURLToPath(new URL("../..", import.meta.url));
const outDir = `${root}dist-library`;

/** Our sources import without extensions; Node and its type resolution want them. */
function withExtensions(text: string): string {
  const { importedFiles } = ts.preProcessFile(text, true, true);
  return importedFiles
    .filter(({ fileName }) => fileName.startsWith("."))
    .reduceRight((all, { fileName, pos }) => {
      const end = all.indexOf(fileName, pos) + fileName.length;
      return `${all.slice(0, end)}.js${all.slice(end)}`;
    }, text);
}

const host: ts.ParseConfigFileHost = { ...ts.sys, onUnRecoverableConfigFileDiagnostic: () => {} };
const config = ts.getParsedCommandLineOfConfigFile(
  `${root}tsconfig.json`,
  { noEmit: false, declaration: true, sourceMap: false, types: [], lib: ["lib.es2022.d.ts"], rootDir: root, outDir },
  host,
)!;
const program = ts.createProgram([`${root}functions/generated/library.ts`], config.options);

rmSync(outDir, { recursive: true, force: true });
const { diagnostics } = program.emit(undefined, (path, text) => ts.sys.writeFile(path, withExtensions(text)));
const faults = [...ts.getPreEmitDiagnostics(program), ...diagnostics];
if (faults.length > 0) {
  throw new Error(ts.formatDiagnostics(faults, { ...ts.sys, getNewLine: () => "\n", getCanonicalFileName: (f) => f }));
}
