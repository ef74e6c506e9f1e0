import { Inflate } from "fflate";
import type { Limits } from "../limits";
import { refuse, Refused } from "../refusal";
import { type ArchiveEntry, readArchive } from "./archive";
import { crc32 } from "./crc32";

/** Deflate makes at most so much of one byte, so no step can outgrow memory before it is counted. */
const MOST_OF_ONE_BYTE = 1032;
const STEP = 16 * 1024;

const DAMAGED =
  "This file is damaged: one of its parts cannot be unpacked. Get it again, or open it in Excel and save a copy.";

/** A package with its parts unpacked beforehand. */
export interface Unpacked {
  readonly entries: readonly ArchiveEntry[];
  /** By name; what is missing is unpacked when it is needed. */
  readonly contents: ReadonlyMap<string, Uint8Array>;
}

/**
 * All parts unpacked by the machine's own inflate, which takes a third of the time; where it has none, or finds fault with
 * a part, nothing is said of that part here.
 * @param isKnown whether a part need not be unpacked
 */
export async function unpackNatively(
  bytes: Uint8Array,
  limits: Limits,
  isKnown: (entry: ArchiveEntry) => boolean = () => false,
): Promise<Unpacked> {
  const entries = readArchive(bytes, limits);
  const contents = new Map<string, Uint8Array>();
  const unpacker = new Unpacker(limits);
  for (const entry of entries) {
    if (isKnown(entry) || entry.method !== 8 || entry.packed.length < WORTH_IT) continue;
    const content = await unpacker.natively(entry);
    if (content) contents.set(entry.name, content);
  }
  return { entries, contents };
}

/** Setting the machine's inflate up takes as long as inflating so many bytes. */
const WORTH_IT = 2_000;

/** RFC 1952: ten bytes in front of what is deflated, its checksum and length behind. */
const GZIP_HEADER = Uint8Array.of(0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 255);

function gzipTrailer({ crc, unpackedSize }: ArchiveEntry): Uint8Array {
  const trailer = new DataView(new ArrayBuffer(8));
  trailer.setUint32(0, crc, true);
  trailer.setUint32(4, unpackedSize, true);
  return new Uint8Array(trailer.buffer);
}

/** Unpacks entries and counts what comes out; one budget for the whole package. */
export class Unpacker {
  private total = 0;

  constructor(private readonly limits: Limits) {}

  /** As a gzip, so that the machine compares the checksum and the size too. Undefined where it cannot say. */
  async natively(entry: ArchiveEntry): Promise<Uint8Array | undefined> {
    if (typeof DecompressionStream === "undefined") return undefined;
    const before = this.total;
    const inflate = new DecompressionStream("gzip");
    const writer = inflate.writable.getWriter();
    const writing = (async () => {
      await writer.write(GZIP_HEADER);
      await writer.write(entry.packed as BufferSource);
      await writer.write(gzipTrailer(entry) as BufferSource);
      await writer.close();
    })();
    // what it throws comes out at the other end too
    writing.catch(() => undefined);
    const reader = (inflate.readable as ReadableStream<Uint8Array>).getReader();
    const content = new Uint8Array(Math.min(entry.unpackedSize, entry.packed.length * MOST_OF_ONE_BYTE));
    let size = 0;
    try {
      for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
        const end = size + piece.value.length;
        this.count(piece.value.length);
        this.refuseRatio(end, entry);
        if (end > content.length) throw new TypeError("longer than it says");
        content.set(piece.value, size);
        size = end;
      }
    } catch (problem) {
      await reader.cancel().catch(() => undefined);
      if (problem instanceof Refused) throw problem;
      this.total = before;
      return undefined;
    }
    return size === entry.unpackedSize ? content : undefined;
  }

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
      this.refuseRatio(size, entry);
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

  /** A part that was unpacked elsewhere. */
  take(content: Uint8Array): Uint8Array {
    this.count(content.length);
    return content;
  }

  private refuseRatio(size: number, { packed }: ArchiveEntry): void {
    if (size > this.limits.ratioFrom && size > this.limits.ratio * packed.length) {
      refuse("This file unpacks to many times its size, as files made to attack do. It was not opened.");
    }
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
