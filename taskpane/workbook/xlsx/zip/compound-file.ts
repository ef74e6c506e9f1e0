/**
 * The older container (MS-CFB): an encrypted .xlsx is one, and so is an .xls. Only its directory is read, to say which.
 */
const SIGNATURE = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];
const END_OF_CHAIN = 0xfffffffa;

export function isCompoundFile(bytes: Uint8Array): boolean {
  return SIGNATURE.every((byte, index) => bytes[index] === byte);
}

/** Names of streams and storages; as many as can be read of a damaged file. */
export function compoundFileNames(bytes: Uint8Array): string[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const names: string[] = [];
  try {
    const sectorSize = 1 << Math.min(view.getUint16(30, true), 16);
    const seen = new Set<number>();
    let sector = view.getUint32(48, true);
    while (sector < END_OF_CHAIN && !seen.has(sector)) {
      seen.add(sector);
      for (let entry = (sector + 1) * sectorSize; entry < (sector + 2) * sectorSize; entry += 128) {
        names.push(entryName(view, entry));
      }
      sector = nextSector(view, sector, sectorSize);
    }
  } catch (problem) {
    if (!(problem instanceof RangeError)) throw problem;
  }
  return names.filter((name) => name !== "");
}

function entryName(view: DataView, at: number): string {
  const length = Math.min(view.getUint16(at + 64, true), 64) / 2 - 1;
  let name = "";
  for (let index = 0; index < length; index++) name += String.fromCharCode(view.getUint16(at + index * 2, true));
  return name;
}

/** Only the first 109 sectors of the allocation table are listed in the header: enough for a directory. */
function nextSector(view: DataView, sector: number, sectorSize: number): number {
  const perSector = sectorSize / 4;
  const listed = Math.floor(sector / perSector);
  if (listed >= 109) return END_OF_CHAIN;
  const tableSector = view.getUint32(76 + listed * 4, true);
  return view.getUint32((tableSector + 1) * sectorSize + (sector % perSector) * 4, true);
}
