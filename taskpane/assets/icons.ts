/**
 * Draws the icons: rows of a list, and the end of a tube beside them. Our own drawing, made of four shapes.
 * Run: npx tsx taskpane/assets/icons.ts
 */
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { crc32, deflateSync } from "node:zlib";

/** 16, 32 and 80 for the ribbon, 32 and 64 for the add-in's own entry. */
export const SIZES = [16, 32, 64, 80] as const;

type Colour = readonly [red: number, green: number, blue: number];
const GROUND: Colour = [31, 94, 112];
const PAPER: Colour = [255, 255, 255];

/* Everything is measured in the icon's width. */
const CORNER = 0.18;
const ROWS = [0.25, 0.5, 0.75] as const;
const ROW = { from: 0.16, to: 0.84, thick: 0.1 };
const TUBE = { x: 0.66, y: 0.62, outer: 0.24, inner: 0.11, gap: 0.31 };

/** The colour at a point of the unit square; null outside the rounded ground. */
function colourAt(x: number, y: number): Colour | null {
  const beyond = (v: number) => Math.max(CORNER - v, v - (1 - CORNER), 0);
  if (Math.hypot(beyond(x), beyond(y)) > CORNER) return null;
  const fromTube = Math.hypot(x - TUBE.x, y - TUBE.y);
  if (fromTube < TUBE.gap) return fromTube < TUBE.outer && fromTube > TUBE.inner ? PAPER : GROUND;
  const isRow = ROWS.some((row) => Math.abs(y - row) < ROW.thick / 2) && x > ROW.from && x < ROW.to;
  return isRow ? PAPER : GROUND;
}

/** Points looked at in each direction of a pixel: smooths the edges. */
const FINENESS = 8;

/** Pixels row by row, each red, green, blue, opacity. */
export function draw(size: number): Uint8Array {
  const pixels = new Uint8Array(size * size * 4);
  for (let row = 0; row < size; row++)
    for (let column = 0; column < size; column++) {
      const sum = [0, 0, 0];
      let inside = 0;
      for (let i = 0; i < FINENESS * FINENESS; i++) {
        const x = (column + ((i % FINENESS) + 0.5) / FINENESS) / size;
        const y = (row + (Math.floor(i / FINENESS) + 0.5) / FINENESS) / size;
        const colour = colourAt(x, y);
        if (!colour) continue;
        inside++;
        colour.forEach((part, p) => (sum[p]! += part));
      }
      const at = (row * size + column) * 4;
      if (inside > 0) sum.forEach((total, p) => (pixels[at + p] = Math.round(total / inside)));
      pixels[at + 3] = Math.round((255 * inside) / (FINENESS * FINENESS));
    }
  return pixels;
}

function chunk(type: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(data.length, 0);
  body.copy(whole, 4);
  whole.writeUInt32BE(crc32(body), body.length + 4);
  return whole;
}

/** A PNG file (W3C PNG specification): 8 bits a channel with opacity, rows unfiltered. */
function png(size: number): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 6, 0, 0, 0], 8);
  const pixels = draw(size);
  const rows = Buffer.alloc(size * (size * 4 + 1));
  for (let row = 0; row < size; row++)
    rows.set(pixels.subarray(row * size * 4, (row + 1) * size * 4), row * (size * 4 + 1) + 1);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(rows, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const size of SIZES) writeFileSync(new URL(`icon-${size}.png`, import.meta.url), png(size));
