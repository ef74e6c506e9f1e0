import { Inflate } from "fflate";
import type { Limits } from "../limits";
import { refuse } from "../refusal";
import type { ArchiveEntry } from "./archive";
import { crc32 } from "./crc32";

/** Deflate makes at most 1032 bytes of one, so no step can outgrow memory before it is counted. */
const STEP = 16 * 1024;

const DAMAGED =
  "This file is damaged: one of its parts cannot be unpacked. Get it again, or open it in Excel and save a copy.";

/** Unpacks entries and counts what comes out; one budget for the whole package. */
export class Unpacker {
  private total = 0;

  constructor(private readonly limits: Limits) {}

  unpack(entry: ArchiveEntry): Uint8Array {
    const bytes = entry.method === 0 ? this.stored(entry) : this.inflated(entry);
    if (bytes.length !== entry.unpackedSize || crc32(bytes) !== entry.crc) refuse(DAMAGED);
    return bytes;
  }

  private stored(entry: ArchiveEntry): Uint8Array {
    this.count(entry.packed.length);
    return entry.packed;
  }

  private inflated(entry: ArchiveEntry): Uint8Array {
    const pieces: Uint8Array[] = [];
    let size = 0;
    const inflate = new Inflate((piece) => {
      size += piece.length;
      this.count(piece.length);
      if (size > this.limits.ratioFrom && size > this.limits.ratio * entry.packed.length) {
        refuse("This file unpacks to many times its size, as files made to attack do. It was not opened.");
      }
      pieces.push(piece);
    });
    try {
      for (let at = 0; at < entry.packed.length; at += STEP) {
        const end = Math.min(at + STEP, entry.packed.length);
        inflate.push(entry.packed.subarray(at, end), end === entry.packed.length);
      }
    } catch (problem) {
      // fflate's own errors carry a numeric code.
      if (problem instanceof Error && "code" in problem) refuse(DAMAGED);
      throw problem;
    }
    return joined(pieces, size);
  }

  private count(bytes: number): void {
    this.total += bytes;
    if (this.total > this.limits.unpackedBytes) {
      const megabytes = Math.round(this.limits.unpackedBytes / 1024 / 1024);
      refuse(
        `This workbook is too large for this page: unpacked it takes more than ${megabytes} MB. Work with it in Excel, or split it.`,
      );
    }
  }
}

function joined(pieces: readonly Uint8Array[], size: number): Uint8Array {
  if (pieces.length === 1) return pieces[0] as Uint8Array;
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}
