/** LibreOffice without a window: works a file out, and says which version it is. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const NAMES = ["soffice", "libreoffice"];

export interface Office {
  readonly version: string;
  /** The same workbook with its formulas worked out: all that have no stored result. */
  readonly workedOut: (xlsx: Uint8Array) => Uint8Array;
}

/** @returns undefined where LibreOffice is not installed */
export function findOffice(): Office | undefined {
  for (const name of NAMES) {
    try {
      const [version] = /LibreOffice [\d.]+/.exec(execFileSync(name, ["--version"], { encoding: "utf8" })) ?? [name];
      return { version, workedOut: (xlsx) => workedOut(name, xlsx) };
    } catch (error) {
      if ((error as { code?: string }).code !== "ENOENT") throw error;
    }
  }
  return undefined;
}

/** A profile of its own, so that nobody's settings count and no window that is open gets in the way. */
function workedOut(command: string, xlsx: Uint8Array): Uint8Array {
  const folder = mkdtempSync(join(tmpdir(), "witness-"));
  try {
    const asked = join(folder, "asked.xlsx");
    const answered = join(folder, "answered");
    writeFileSync(asked, xlsx);
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, "profile")).href}`;
    execFileSync(command, [profile, "--headless", "--convert-to", "xlsx", "--outdir", answered, asked], {
      stdio: ["ignore", "ignore", "inherit"],
    });
    return readFileSync(join(answered, "asked.xlsx"));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
