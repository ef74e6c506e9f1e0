/** The checksum of a zip entry (APPNOTE 4.4.7; ISO 3309 polynomial). */
const table = new Uint32Array(256);
for (let byte = 0; byte < 256; byte++) {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  table[byte] = value;
}

export function crc32(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (let index = 0; index < bytes.length; index++) {
    value = (table[(value ^ (bytes[index] as number)) & 255] as number) ^ (value >>> 8);
  }
  return (value ^ 0xffffffff) >>> 0;
}
