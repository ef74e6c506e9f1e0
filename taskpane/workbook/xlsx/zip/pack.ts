/** Contents packed for an archive, chunk by chunk. */
import { Deflate } from "fflate";
import { joined } from "../byte-writer";
import { crc32 } from "./crc32";

export interface Packed {
  /** Deflated. */
  readonly bytes: Uint8Array;
  readonly crc: number;
  /** Of what was packed. */
  readonly size: number;
}

/** Level 6 takes twice the time for 3% less (a sheet of 10,000 x 15, measured). */
const LEVEL = 4;

export function packed(chunks: readonly Uint8Array[]): Packed {
  const out: Uint8Array[] = [];
  const deflate = new Deflate({ level: LEVEL }, (piece) => void out.push(piece));
  let crc = 0;
  let size = 0;
  for (const chunk of chunks) {
    crc = crc32(chunk, crc);
    size += chunk.length;
    deflate.push(chunk);
  }
  deflate.push(new Uint8Array(), true);
  return { bytes: joined(out), crc, size };
}

/** RFC 1952: a plain gzip has ten bytes in front and eight behind, of which four are the checksum. */
const [HEADER, TRAILER] = [10, 8];

/** By the machine's own deflate, as a gzip, so that it makes the checksum too. */
export async function packedNatively(chunks: readonly Uint8Array[]): Promise<Packed> {
  if (typeof CompressionStream === "undefined") return packed(chunks);
  const deflate = new CompressionStream("gzip");
  const writer = deflate.writable.getWriter();
  const writing = (async () => {
    for (const chunk of chunks) await writer.write(chunk as BufferSource);
    await writer.close();
  })();
  const out: Uint8Array[] = [];
  const reader = (deflate.readable as ReadableStream<Uint8Array>).getReader();
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) out.push(piece.value);
  await writing;
  const gzip = joined(out);
  if (gzip[3] !== 0) return packed(chunks);
  const crc = new DataView(gzip.buffer, gzip.byteOffset).getUint32(gzip.length - TRAILER, true);
  const size = chunks.reduce((sum, chunk) => sum + chunk.length, 0);
  return { bytes: gzip.subarray(HEADER, gzip.length - TRAILER), crc, size };
}
