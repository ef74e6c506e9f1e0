/**
 * Opening and saving without hurry: by the machine's own inflate and deflate where it has them, and in slices, so that it
 * can be done beside a page's life, watched and stopped. The same steps as openPackage and patchPackage, in their order.
 */
import type { PackageEdits, Patched } from "./edits";
import { LIMITS } from "../xlsx/limits";
import type { OpenedPackage } from "./opened";
import { opening, refuseAtFirstSight } from "./open-package";
import { readBack } from "./patch/check/read-back";
import { withNewSheets } from "./new-sheets";
import { patch, patchedWith } from "./patch-package";
import { Refused, type Refusal } from "../xlsx/refusal";
import { inSlices, Stopped, type Watching } from "../xlsx/slices";
import { unpackNatively } from "../xlsx/zip/unpack";

/** Throws `Stopped` where somebody stopped it. */
export function openUnhurried(bytes: Uint8Array, watching: Watching = {}): Promise<OpenedPackage | Refusal> {
  return orRefusal(async () => {
    refuseAtFirstSight(bytes, LIMITS);
    const unpacked = await unpackNatively(bytes, LIMITS);
    goOn(watching);
    return inSlices(opening(bytes, LIMITS, { unpacked }), watching, UNPACKED, 1);
  });
}

export function patchUnhurried(
  opened: OpenedPackage,
  edits: PackageEdits,
  watching: Watching = {},
): Promise<Patched | Refusal> {
  return orRefusal(async () => {
    const base = await inSlices(withNewSheets(opened, edits.newSheets ?? []));
    const { files, limits } = base.opened.parts;
    const patching = await inSlices(patch(base.opened, edits), watching, 0, PATCHED);
    if (!patching.isChanged) return patchedWith(patching, files.bytes.slice(), base);
    const bytes = await patching.outgoing.writeNatively();
    goOn(watching);
    watching.tell?.(PACKED);
    const unpacked = await unpackNatively(bytes, limits, (entry) => files.sameContent(entry) !== undefined);
    goOn(watching);
    await inSlices(readBack(base.opened, bytes, patching.meaning, unpacked), watching, PACKED, 1);
    return patchedWith(patching, bytes, base);
  });
}

/** Shares of the whole that are done then (a sheet of 100,000 x 15, measured). */
const UNPACKED = 0.3;
const PATCHED = 0.4;
const PACKED = 0.6;

function goOn({ signal }: Watching): void {
  if (signal?.aborted) throw new Stopped();
}

async function orRefusal<T>(work: () => Promise<T>): Promise<T | Refusal> {
  try {
    return await work();
  } catch (problem) {
    if (problem instanceof Refused) return { refused: problem.message };
    throw problem;
  }
}
