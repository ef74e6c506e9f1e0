/** Bytes in the order in which they come, in chunks: what becomes larger than one text may be never is one. */
const CHUNK = 64 * 1024;
/** A longer stretch of somebody else's bytes is not copied. */
const LENT = 4 * 1024;
/** The most bytes that UTF-8 needs for one unit of a text. */
const WIDEST = 3;

const encoder = new TextEncoder();

export class ByteWriter {
  readonly chunks: Uint8Array[] = [];
  length = 0;
  private chunk = new Uint8Array(CHUNK);
  private used = 0;

  text(text: string): void {
    if (text.length * WIDEST > CHUNK - this.used) this.close();
    if (text.length * WIDEST > CHUNK) this.put(encoder.encode(text));
    else {
      const { written } = encoder.encodeInto(text, this.chunk.subarray(this.used));
      this.used += written;
      this.length += written;
    }
  }

  /** @param bytes nobody changes them afterwards */
  bytes(bytes: Uint8Array): void {
    if (bytes.length > LENT) {
      this.close();
      this.put(bytes);
      return;
    }
    if (bytes.length > CHUNK - this.used) this.close();
    this.chunk.set(bytes, this.used);
    this.used += bytes.length;
    this.length += bytes.length;
  }

  /** To be called at the end. */
  close(): void {
    if (this.used === 0) return;
    this.chunks.push(this.chunk.subarray(0, this.used));
    this.chunk = new Uint8Array(CHUNK);
    this.used = 0;
  }

  private put(bytes: Uint8Array): void {
    if (bytes.length === 0) return;
    this.chunks.push(bytes);
    this.length += bytes.length;
  }
}

/** Whether chunks hold the same bytes as these. */
export function isSame(chunks: readonly Uint8Array[], bytes: Uint8Array): boolean {
  let at = 0;
  for (const chunk of chunks) {
    if (at + chunk.length > bytes.length) return false;
    for (let index = 0; index < chunk.length; index++, at++) if (chunk[index] !== bytes[at]) return false;
  }
  return at === bytes.length;
}

export function joined(chunks: readonly Uint8Array[]): Uint8Array {
  if (chunks.length === 1) return chunks[0] as Uint8Array;
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
