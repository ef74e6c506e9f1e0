/** Who holds the packages behind the grid: another thread where there can be one, else this one. */
import type { OpenedWorkbook, PackageEdits, Patched, Refusal, Watching } from "../../package";
import type { Display } from "../open/display";

export interface OpenedFile {
  readonly opened: OpenedWorkbook;
  readonly display: Display;
}

/** Every work throws `Stopped` where somebody stopped it. */
export interface Packages {
  /** Refuses too what could not be saved again. Bytes are taken as hostile, and kept as they are. */
  open(bytes: Uint8Array, watching?: Watching): Promise<OpenedFile | Refusal>;
  /** @param opened one that `open` gave */
  patch(opened: OpenedWorkbook, edits: PackageEdits, watching?: Watching): Promise<Patched | Refusal>;
  /** It is not asked for again. */
  release(opened: OpenedWorkbook): void;
  dispose(): void;
}
