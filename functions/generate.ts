/**
 * Writes everything that is derived from the definitions: functions.json, the manifest's version, the reference (pages and
 * web page), the library's face and the self-checking workbook. The results are committed; CI runs this again and
 * compares.
 */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { functions } from "../src/index";
import { documentation } from "./documentation";
import { librarySource } from "./library/source";
import { withVersionOf } from "./manifest-version";
import { metadata } from "./metadata";
import { referenceIndex, referencePage } from "./reference";
import { referencePageHtml } from "./reference-page";
import { selfCheckingWorkbook } from "./write-self-checking";

const at = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));

rmSync(at("docs/reference"), { recursive: true, force: true });
mkdirSync(at("docs/reference"), { recursive: true });
mkdirSync(at("functions/generated"), { recursive: true });

const functionsJson = `${JSON.stringify(metadata(functions), null, 2)}\n`;
writeFileSync(at("functions/generated/functions.json"), functionsJson);
writeFileSync(at("manifest.xml"), withVersionOf(functionsJson, readFileSync(at("manifest.xml"), "utf8")));
writeFileSync(at("functions/generated/documentation.json"), `${JSON.stringify(documentation(functions), null, 1)}\n`);
writeFileSync(at("functions/generated/library.ts"), librarySource(functions));
writeFileSync(at("functions/generated/reference.html"), referencePageHtml(functions));
writeFileSync(at("docs/reference/README.md"), referenceIndex(functions));
for (const definition of functions) {
  writeFileSync(at(`docs/reference/${definition.name.toLowerCase()}.md`), referencePage(definition));
}
writeFileSync(at("docs/self-checking.xlsx"), await selfCheckingWorkbook(functions));
console.log(`Wrote functions.json, the reference and the self-checking workbook for ${functions.length} functions`);
