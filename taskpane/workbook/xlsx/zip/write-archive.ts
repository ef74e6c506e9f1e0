import type { ArchiveEntry } from "./archive";
import type { Packed } from "./pack";

/**
 * Entries in the order given. What came in unchanged goes out still packed, byte for byte; headers are written anew
 * (sizes in front, no extra fields), dates are kept.
 */
export function writeArchive(entries: readonly ArchiveEntry[]): Uint8Array {
  const length = entries.reduce((sum, one) => sum + 30 + 46 + 2 * one.nameBytes.length + one.packed.length, 22);
  const bytes = new Uint8Array(length);
  const view = new DataView(bytes.buffer);
  const offsets: number[] = [];
  let at = 0;
  for (const entry of entries) {
    offsets.push(at);
    view.setUint32(at, 0x04034b50, true);
    writeCommon(view, at + 4, entry);
    bytes.set(entry.nameBytes, at + 30);
    bytes.set(entry.packed, at + 30 + entry.nameBytes.length);
    at += 30 + entry.nameBytes.length + entry.packed.length;
  }
  const directoryAt = at;
  entries.forEach((entry, index) => {
    view.setUint32(at, 0x02014b50, true);
    view.setUint16(at + 4, 20, true);
    writeCommon(view, at + 6, entry);
    view.setUint32(at + 38, entry.attributes, true);
    view.setUint32(at + 42, offsets[index] as number, true);
    bytes.set(entry.nameBytes, at + 46);
    at += 46 + entry.nameBytes.length;
  });
  view.setUint32(at, 0x06054b50, true);
  view.setUint16(at + 8, entries.length, true);
  view.setUint16(at + 10, entries.length, true);
  view.setUint32(at + 12, at - directoryAt, true);
  view.setUint32(at + 16, directoryAt, true);
  return bytes;
}

/** The same fields stand in both headers (APPNOTE 4.3.7 and 4.3.12). */
function writeCommon(view: DataView, at: number, entry: ArchiveEntry): void {
  view.setUint16(at, 20, true);
  view.setUint16(at + 2, entry.flags & ~SIZES_FOLLOW, true);
  view.setUint16(at + 4, entry.method, true);
  view.setUint16(at + 6, entry.time, true);
  view.setUint16(at + 8, entry.date, true);
  view.setUint32(at + 10, entry.crc, true);
  view.setUint32(at + 14, entry.packed.length, true);
  view.setUint32(at + 18, entry.unpackedSize, true);
  view.setUint16(at + 22, entry.nameBytes.length, true);
}

const SIZES_FOLLOW = 8;

/** An entry with new content; date and flags are those of the entry it replaces, or of its neighbour. */
export function packedEntry(name: string, { bytes, crc, size }: Packed, like: ArchiveEntry): ArchiveEntry {
  return {
    name,
    nameBytes: name === like.name ? like.nameBytes : new TextEncoder().encode(name),
    flags: like.flags | (name === like.name ? 0 : 0x800),
    method: 8,
    time: like.time,
    date: like.date,
    crc,
    packed: bytes,
    unpackedSize: size,
    attributes: like.attributes,
  };
}
