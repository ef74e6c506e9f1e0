/** Colours of a file as the grid paints them. */
import type { CellStyle } from "hucre/xlsx";
import { resolveThemeColor } from "hucre/ooxml";

type Color = NonNullable<NonNullable<CellStyle["font"]>["color"]>;

/** The palette of old files, indexes 8 to 63 (ECMA-376 part 1, 18.8.27); 0 to 7 are the first eight again. */
const PALETTE = (
  "000000FFFFFFFF000000FF000000FFFFFF00FF00FF00FFFF800000008000000080808000800080008080C0C0C08080809999FF993366FFFFCC" +
  "CCFFFF660066FF80800066CCCCCCFF000080FF00FFFFFF0000FFFF8000808000000080800000FF00CCFFCCFFFFCCFFCCFFFF9999CCFFFF99CC" +
  "CC99FFFFCC993366FF33CCCC99CC00FFCC00FF9900FF6600666699969696003366339966003300333300993300993366333399333333"
).match(/.{6}/g)!;

/** The theme lists dark before light, cells count light before dark (Excel swaps both pairs). */
const THEME_ORDER = [1, 0, 3, 2];

export function rgbOf(color: Color | undefined, theme: readonly string[]): string | undefined {
  if (!color) return undefined;
  if (color.rgb) return `#${color.rgb.slice(-6)}`;
  if (color.theme !== undefined) {
    const resolved = resolveThemeColor([...theme], THEME_ORDER[color.theme] ?? color.theme, color.tint);
    return resolved ? `#${resolved.slice(-6)}` : undefined;
  }
  if (color.indexed === undefined || color.indexed > 63) return undefined;
  const hexadecimal = PALETTE[color.indexed < 8 ? color.indexed : color.indexed - 8];
  return hexadecimal && `#${hexadecimal}`;
}

/** Two colours mixed, as a pattern of dots or lines looks from afar. */
export function mixed(ink: string, paper: string, share: number): string {
  const channel = (color: string, at: number) => parseInt(color.slice(1 + at * 2, 3 + at * 2), 16);
  const mix = [0, 1, 2].map((at) => Math.round(channel(ink, at) * share + channel(paper, at) * (1 - share)));
  return `#${mix.map((value) => value.toString(16).padStart(2, "0")).join("")}`;
}
