/** Writes the table of GS1's formats; before all else, because the functions read it. */
import { readFileSync, writeFileSync } from "node:fs";
import { gs1FormatsSource } from "./formats";

const identifiers = readFileSync(new URL("identifiers.txt", import.meta.url), "utf8");
writeFileSync(new URL("../../src/supplies/generated/gs1-formats.ts", import.meta.url), gs1FormatsSource(identifiers));
