/**
 * The zip around a package. Its central directory is read here rather than by a library, because entries that nobody
 * changes are carried over as they are, still packed, and because every claim of the file is checked.
 */
import type { Limits } from "../limits";
import { refuse } from "../refusal";

export interface ArchiveEntry {
  readonly name: string;
  readonly nameBytes: Uint8Array;
  readonly flags: number;
  /** 0 stored, 8 deflated. */
  readonly method: number;
  readonly time: number;
  readonly date: number;
  readonly crc: number;
  readonly packed: Uint8Array;
  readonly unpackedSize: number;
  readonly attributes: number;
}

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const END_64_LOCATOR = 0x07064b50;
const END_64 = 0x06064b50;
const IN_64 = 0xffffffff;

const NOT_WHOLE =
  "This file is damaged or not complete, as after an interrupted download or copy. Get it again, or open it in Excel and save a copy.";

export function isArchive(bytes: Uint8Array): boolean {
  return (
    bytes[0] === 0x50 && bytes[1] === 0x4b && ((bytes[2] === 3 && bytes[3] === 4) || (bytes[2] === 5 && bytes[3] === 6))
  );
}

export function readArchive(bytes: Uint8Array, limits: Limits): ArchiveEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    return readEntries(bytes, view, limits);
  } catch (problem) {
    // A DataView throws a RangeError when the file points beyond its own end.
    if (problem instanceof RangeError) return refuse(NOT_WHOLE);
    throw problem;
  }
}

function readEntries(bytes: Uint8Array, view: DataView, limits: Limits): ArchiveEntry[] {
  const directory = findDirectory(view);
  if (directory.count > limits.entries) {
    refuse(
      `This file holds more than ${limits.entries.toLocaleString("en-GB")} parts, which no workbook needs. It was not opened.`,
    );
  }
  const entries: ArchiveEntry[] = [];
  const seen = new Set<string>();
  let at = directory.offset;
  for (let index = 0; index < directory.count; index++) {
    if (view.getUint32(at, true) !== CENTRAL) refuse(NOT_WHOLE);
    const nameLength = view.getUint16(at + 28, true);
    const extraLength = view.getUint16(at + 30, true);
    const nameBytes = slice(bytes, at + 46, nameLength);
    const flags = view.getUint16(at + 8, true);
    const name = entryName(nameBytes, flags);
    refuseName(name, seen);
    if (flags & 1)
      refuse("This file is protected by a password. Open it, save a copy without the password, and open that.");
    const sizes = sizesOf(view, at, at + 46 + nameLength, extraLength);
    const entry = {
      name,
      nameBytes,
      flags,
      method: view.getUint16(at + 10, true),
      time: view.getUint16(at + 12, true),
      date: view.getUint16(at + 14, true),
      crc: view.getUint32(at + 16, true),
      packed: packedBytes(bytes, view, sizes.offset, sizes.packed, nameBytes),
      unpackedSize: sizes.unpacked,
      attributes: view.getUint32(at + 38, true),
    };
    if (entry.method !== 0 && entry.method !== 8) {
      refuse("This file is packed in a way workbooks are not. Open it in Excel, save a copy and open that.");
    }
    entries.push(entry);
    at += 46 + nameLength + extraLength + view.getUint16(at + 32, true);
  }
  return entries;
}

function findDirectory(view: DataView): { readonly offset: number; readonly count: number } {
  const length = view.byteLength;
  for (let at = length - 22; at >= Math.max(0, length - 22 - 0xffff); at--) {
    if (view.getUint32(at, true) !== END || at + 22 + view.getUint16(at + 20, true) !== length) continue;
    const count = view.getUint16(at + 10, true);
    const offset = view.getUint32(at + 16, true);
    if (count !== 0xffff && offset !== IN_64) return { offset, count };
    if (at < 20 || view.getUint32(at - 20, true) !== END_64_LOCATOR) break;
    const end64 = large(view, at - 12);
    if (view.getUint32(end64, true) !== END_64) break;
    return { offset: large(view, end64 + 48), count: large(view, end64 + 32) };
  }
  return refuse(NOT_WHOLE);
}

function sizesOf(view: DataView, at: number, extraAt: number, extraLength: number) {
  let unpacked = view.getUint32(at + 24, true);
  let packed = view.getUint32(at + 20, true);
  let offset = view.getUint32(at + 42, true);
  if (unpacked !== IN_64 && packed !== IN_64 && offset !== IN_64) return { unpacked, packed, offset };
  for (let field = extraAt; field + 4 <= extraAt + extraLength; field += 4 + view.getUint16(field + 2, true)) {
    if (view.getUint16(field, true) !== 1) continue;
    let place = field + 4;
    const take = (): number => large(view, (place += 8) - 8);
    if (unpacked === IN_64) unpacked = take();
    if (packed === IN_64) packed = take();
    if (offset === IN_64) offset = take();
    return { unpacked, packed, offset };
  }
  return refuse(NOT_WHOLE);
}

function packedBytes(
  bytes: Uint8Array,
  view: DataView,
  offset: number,
  size: number,
  nameBytes: Uint8Array,
): Uint8Array {
  if (view.getUint32(offset, true) !== LOCAL) refuse(NOT_WHOLE);
  const nameLength = view.getUint16(offset + 26, true);
  const localName = slice(bytes, offset + 30, nameLength);
  // Two names for one entry is how one program can be shown another file than the next.
  if (nameLength !== nameBytes.length || !localName.every((byte, index) => byte === nameBytes[index]))
    refuse(NOT_WHOLE);
  return slice(bytes, offset + 30 + nameLength + view.getUint16(offset + 28, true), size);
}

function refuseName(name: string, seen: Set<string>): void {
  const segments = name.split("/");
  if (
    name.startsWith("/") ||
    name.includes("\\") ||
    name.includes("\0") ||
    /^[A-Za-z]:/.test(name) ||
    segments.includes("..")
  ) {
    refuse(
      "This file names a part outside itself, which no workbook does and which can be used to attack. It was not opened.",
    );
  }
  // Part names are the same whatever their case (OPC, ECMA-376 part 2, 6.2.2.3).
  const key = name.toLowerCase();
  if (seen.has(key))
    refuse("This file holds the same part twice, so that nobody can tell which one counts. It was not opened.");
  seen.add(key);
}

/** APPNOTE 4.4.4: flag 11 says UTF-8; otherwise one byte is one character, which keeps different names different. */
function entryName(bytes: Uint8Array, flags: number): string {
  if (flags & 0x800) return new TextDecoder().decode(bytes);
  return Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
}

function large(view: DataView, at: number): number {
  return view.getUint32(at, true) + view.getUint32(at + 4, true) * 2 ** 32;
}

function slice(bytes: Uint8Array, start: number, length: number): Uint8Array {
  if (start + length > bytes.length) refuse(NOT_WHOLE);
  return bytes.subarray(start, start + length);
}
