/** Packages on this thread: where no other can be had. */
import { patchUnhurried, type OpenedPackage } from "../../package";
import type { Packages } from "./interface";
import { openFile } from "./opened";

export const packagesHere = (): Packages => ({
  open: openFile,
  patch: (opened, edits, watching) => patchUnhurried(opened as OpenedPackage, edits, watching),
  release: () => undefined,
  dispose: () => undefined,
});
