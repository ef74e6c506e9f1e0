import type { PackageEdits, PatchAnswer } from "./edits";
import type { OpenedPackage } from "./opened";

/** Saves the changes into a copy of the opened package, reads that copy back and compares; or says why not. */
export function patchPackage(_opened: OpenedPackage, _edits: PackageEdits): PatchAnswer {
  throw new Error("in work");
}
