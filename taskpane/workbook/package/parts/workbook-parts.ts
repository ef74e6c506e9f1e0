import type { Limits } from "../../xlsx/limits";
import type { SheetFacts } from "../sheet/inspect";
import type { DynamicArrayMetadata } from "./metadata";
import type { PackageFiles, Relationship } from "./package-files";

/** The package behind an opened workbook, for the patcher only. */
export interface WorkbookParts {
  readonly limits: Limits;
  readonly files: PackageFiles;
  readonly workbookPart: string;
  readonly relationships: readonly Relationship[];
  readonly stylesPart: string | undefined;
  readonly metadataPart: string | undefined;
  readonly metadata: DynamicArrayMetadata;
  readonly strings: readonly string[];
  /** By sheet name; worksheets only. */
  readonly facts: ReadonlyMap<string, SheetFacts>;
}

export function factsOf(opened: { readonly parts: WorkbookParts }, sheetName: string): SheetFacts {
  const facts = opened.parts.facts.get(sheetName);
  if (!facts) throw new Error(`There is no worksheet "${sheetName}".`);
  return facts;
}
