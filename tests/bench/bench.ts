/** `npm run bench`: what a person can feel, beside named peers. Figures are printed, never asserted. */
import { cpus } from "node:os";
import { benchBundles } from "./bundles";
import { benchCaseload } from "./caseload";
import { benchFunctions } from "./functions/index";
import { benchLives } from "./lives";
import { benchPage } from "./page";
import { benchFiles } from "./files";

console.log(`Node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? "unknown processor"}`);
benchBundles();
benchCaseload();
benchLives();
benchFunctions();
await benchFiles();
await benchPage();
