/**
 * What eyes and printers make of a colour, by published formulas: contrast (WCAG 2.2), simulated colour blindness
 * (Machado, Oliveira, Fernandes 2009, IEEE TVCG 15(6), severity 1.0), distance (CIEDE2000).
 */
export type Rgb = readonly [number, number, number];

/** Shares of light, 0 to 1, of a colour as RRGGBB. */
export function light(color: string): Rgb {
  return [0, 2, 4].map((at) => {
    const share = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as unknown as Rgb;
}

export const luminance = ([red, green, blue]: Rgb): number => 0.2126 * red + 0.7152 * green + 0.0722 * blue;

export function contrast(one: string, other: string): number {
  const [dark, bright] = [luminance(light(one)), luminance(light(other))].sort((a, b) => a - b) as [number, number];
  return (bright + 0.05) / (dark + 0.05);
}

type Matrix = readonly [Rgb, Rgb, Rgb];

/** Machado et al. 2009, table of the authors' page, severity 1.0; applied to light, not to the numbers in a file. */
export const blindness: Readonly<Record<string, Matrix>> = {
  "no red cones": [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  "no green cones": [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  "no blue cones": [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

export const seenWith = (matrix: Matrix, [red, green, blue]: Rgb): Rgb =>
  matrix.map(([r, g, b]) => Math.min(1, Math.max(0, r * red + g * green + b * blue))) as unknown as Rgb;

export type Lab = readonly [number, number, number];

/** CIELAB under D65 (IEC 61966-2-1 for the primaries, CIE 15 for the rest). */
export function lab([red, green, blue]: Rgb): Lab {
  const x = (0.4124564 * red + 0.3575761 * green + 0.1804375 * blue) / 0.95047;
  const y = 0.2126729 * red + 0.7151522 * green + 0.072175 * blue;
  const z = (0.0193339 * red + 0.119192 * green + 0.9503041 * blue) / 1.08883;
  const f = (t: number) => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);
  return [116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))];
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const hue = (b: number, a: number): number => (Math.atan2(b, a) * 180) / Math.PI + (b < 0 ? 360 : 0);

/** CIEDE2000, in the steps of Sharma, Wu, Dalal 2005 (Color Research and Application 30:21). */
export function distance([l1, a1, b1]: Lab, [l2, a2, b2]: Lab): number {
  const mean = (Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2;
  const g = 0.5 * (1 - Math.sqrt(mean ** 7 / (mean ** 7 + 25 ** 7)));
  const [A1, A2] = [a1 * (1 + g), a2 * (1 + g)];
  const [C1, C2] = [Math.hypot(A1, b1), Math.hypot(A2, b2)];
  const [h1, h2] = [hue(b1, A1), hue(b2, A2)];
  const isGrey = C1 * C2 === 0;
  const turn = isGrey ? 0 : h2 - h1 > 180 ? h2 - h1 - 360 : h2 - h1 < -180 ? h2 - h1 + 360 : h2 - h1;
  const dH = 2 * Math.sqrt(C1 * C2) * Math.sin(radians(turn / 2));
  const L = (l1 + l2) / 2;
  const C = (C1 + C2) / 2;
  const sum = h1 + h2;
  const H = isGrey ? sum : Math.abs(h1 - h2) <= 180 ? sum / 2 : sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
  const T =
    1 -
    0.17 * Math.cos(radians(H - 30)) +
    0.24 * Math.cos(radians(2 * H)) +
    0.32 * Math.cos(radians(3 * H + 6)) -
    0.2 * Math.cos(radians(4 * H - 63));
  const SL = 1 + (0.015 * (L - 50) ** 2) / Math.sqrt(20 + (L - 50) ** 2);
  const SC = 1 + 0.045 * C;
  const SH = 1 + 0.015 * C * T;
  const RT = -2 * Math.sqrt(C ** 7 / (C ** 7 + 25 ** 7)) * Math.sin(radians(60 * Math.exp(-(((H - 275) / 25) ** 2))));
  const [l, c, h] = [(l2 - l1) / SL, (C2 - C1) / SC, dH / SH];
  return Math.sqrt(l * l + c * c + h * h + RT * c * h);
}
