/** The checksum of a zip entry (APPNOTE 4.4.7; ISO 3309 polynomial), four bytes at a time. */
const tables = Array.from({ length: 4 }, () => new Uint32Array(256));
const [first, second, third, fourth] = tables as [Uint32Array, Uint32Array, Uint32Array, Uint32Array];
for (let byte = 0; byte < 256; byte++) {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  first[byte] = value;
}
for (let byte = 0; byte < 256; byte++) {
  for (let table = 1; table < 4; table++) {
    const before = tables[table - 1]![byte] as number;
    tables[table]![byte] = (first[before & 255] as number) ^ (before >>> 8);
  }
}

/** @param before the checksum of what comes in front of these bytes */
export function crc32(bytes: Uint8Array, before = 0): number {
  let value = ~before;
  const whole = bytes.length - (bytes.length % 4);
  let at = 0;
  for (; at < whole; at += 4) {
    value ^=
      (bytes[at] as number) |
      ((bytes[at + 1] as number) << 8) |
      ((bytes[at + 2] as number) << 16) |
      ((bytes[at + 3] as number) << 24);
    value =
      (fourth[value & 255] as number) ^
      (third[(value >>> 8) & 255] as number) ^
      (second[(value >>> 16) & 255] as number) ^
      (first[value >>> 24] as number);
  }
  for (; at < bytes.length; at++) value = (first[(value ^ (bytes[at] as number)) & 255] as number) ^ (value >>> 8);
  return ~value >>> 0;
}
