/**
 * Excel keeps functions.json for up to a day and asks anew where the manifest's version has risen: so each functions.json
 * has a version of its own. The manifest says which one its version belongs to.
 */
import { createHash } from "node:crypto";

const VERSION = /<Version>(\d+\.\d+\.\d+)\.(\d+)<\/Version>(?:<!-- functions\.json ([0-9a-f]+) -->)?/;
/** Enough to tell two files apart. */
const DIGITS = 16;

/** The manifest with the version of this functions.json: as it is where it has it, else the last part raised by one. */
export function withVersionOf(functionsJson: string, manifest: string): string {
  const found = VERSION.exec(manifest);
  if (!found) throw new Error("manifest.xml has no <Version> of four numbers");
  const [, kept, last, known] = found;
  const now = createHash("sha256").update(functionsJson).digest("hex").slice(0, DIGITS);
  if (known === now) return manifest;
  return manifest.replace(VERSION, `<Version>${kept}.${Number(last) + 1}</Version><!-- functions.json ${now} -->`);
}
