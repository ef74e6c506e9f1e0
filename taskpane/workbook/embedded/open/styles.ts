/**
 * Styles of a file as the grid paints them.
 *
 * Every style carries the file's own index as `xf`. The grid keeps what it does not know when it merges styles (measured),
 * so that a cell keeps its origin when it is moved, copied or made bold, and saving can write "like 12, but bold".
 */
import {
  BorderStyleTypes,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
  type IBorderData,
  type IStyleData,
} from "@univerjs/core";
import type { CellStyle } from "hucre/xlsx";
import { mixed, rgbOf } from "./colors";
import type { Display } from "./display";

/** A style of the grid with the file's style index it came from. */
export interface OriginStyle extends IStyleData {
  xf?: number;
}

type BorderSide = NonNullable<NonNullable<CellStyle["border"]>["top"]>;

export const styleId = (index: number): string => `xf${index}`;

const LINES: Readonly<Record<BorderSide["style"], BorderStyleTypes>> = {
  thin: BorderStyleTypes.THIN,
  medium: BorderStyleTypes.MEDIUM,
  thick: BorderStyleTypes.THICK,
  dotted: BorderStyleTypes.DOTTED,
  dashed: BorderStyleTypes.DASHED,
  double: BorderStyleTypes.DOUBLE,
  hair: BorderStyleTypes.HAIR,
  mediumDashed: BorderStyleTypes.MEDIUM_DASHED,
  dashDot: BorderStyleTypes.DASH_DOT,
  mediumDashDot: BorderStyleTypes.MEDIUM_DASH_DOT,
  dashDotDot: BorderStyleTypes.DASH_DOT_DOT,
  mediumDashDotDot: BorderStyleTypes.MEDIUM_DASH_DOT_DOT,
  slantDashDot: BorderStyleTypes.SLANT_DASH_DOT,
};

const HORIZONTAL: Readonly<Record<string, HorizontalAlign>> = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  centerContinuous: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
  justify: HorizontalAlign.JUSTIFIED,
  distributed: HorizontalAlign.DISTRIBUTED,
};
const VERTICAL: Readonly<Record<string, VerticalAlign>> = {
  top: VerticalAlign.TOP,
  center: VerticalAlign.MIDDLE,
  bottom: VerticalAlign.BOTTOM,
};

/** How much of a cell a pattern inks over, in eighths or near it (names: ECMA-376 part 1, 18.18.55). */
const INK: Readonly<Record<string, number>> = {
  gray0625: 1 / 16,
  gray125: 1 / 8,
  lightGray: 1 / 4,
  mediumGray: 1 / 2,
  darkGray: 3 / 4,
};
const inkOf = (pattern: string): number => INK[pattern] ?? (pattern.startsWith("dark") ? 1 / 2 : 1 / 4);

function background(fill: CellStyle["fill"], theme: readonly string[]): string | undefined {
  if (!fill) return undefined;
  if (fill.type === "gradient") return rgbOf(fill.stops[0]?.color, theme);
  if (fill.pattern === "none") return undefined;
  const ink = rgbOf(fill.fgColor, theme);
  const paper = rgbOf(fill.bgColor, theme);
  if (fill.pattern === "solid") return ink ?? paper;
  return mixed(ink ?? "#000000", paper ?? "#ffffff", inkOf(fill.pattern));
}

function borders(border: CellStyle["border"], theme: readonly string[]): IBorderData | undefined {
  if (!border) return undefined;
  const side = (one: BorderSide | undefined) => {
    const line = one && (LINES[one.style] as BorderStyleTypes | undefined);
    return line === undefined ? undefined : { s: line, cl: { rgb: rgbOf(one?.color, theme) ?? "#000000" } };
  };
  const data: IBorderData = {};
  const sides = { t: side(border.top), r: side(border.right), b: side(border.bottom), l: side(border.left) };
  for (const [name, line] of Object.entries(sides)) if (line) data[name as "t"] = line;
  return Object.keys(data).length > 0 ? data : undefined;
}

/** A rotation above 90 turns clockwise: 91 is 1 degree (ECMA-376 part 1, 18.8.1); 255 stands upright. */
function rotation(degrees: number | undefined): IStyleData["tr"] {
  if (!degrees) return undefined;
  if (degrees === 255) return { a: 0, v: 1 };
  return { a: degrees > 90 ? degrees - 90 : -degrees };
}

/** Pixels: a number and the word in the next column do not touch. */
export const PADDING = { t: 1, r: 4, b: 2, l: 4 };

export function gridStyle(style: CellStyle | undefined, theme: readonly string[]): IStyleData {
  const { font, alignment } = style ?? {};
  const color = rgbOf(font?.color, theme);
  const fill = background(style?.fill, theme);
  const bd = borders(style?.border, theme);
  const tr = rotation(alignment?.textRotation);
  const ht = HORIZONTAL[alignment?.horizontal ?? ""];
  const vt = VERTICAL[alignment?.vertical ?? ""];
  return {
    ...(font?.name && { ff: font.name }),
    ...(font?.size && { fs: font.size }),
    ...(font?.bold && { bl: 1 as const }),
    ...(font?.italic && { it: 1 as const }),
    ...(font?.underline && { ul: { s: 1 as const } }),
    ...(font?.strikethrough && { st: { s: 1 as const } }),
    ...(font?.vertAlign && { va: font.vertAlign === "superscript" ? 3 : 2 }),
    ...(color && { cl: { rgb: color } }),
    ...(fill && { bg: { rgb: fill } }),
    ...(bd && { bd }),
    ...(ht !== undefined && { ht }),
    ...(vt !== undefined && { vt }),
    ...(alignment?.wrapText && { tb: WrapStrategy.WRAP }),
    pd: { ...PADDING, l: PADDING.l + (alignment?.indent ?? 0) * 9 },
    ...(tr && { tr }),
    ...(style?.numFmt && style.numFmt !== "General" && { n: { pattern: style.numFmt } }),
  };
}

/** All styles of a file, by the id that cells use. Number formats from our own reader, which tells them all. */
export function gridStyles(
  count: number,
  display: Pick<Display, "styles" | "themeColors">,
  numberFormat: (index: number) => string,
): Record<string, OriginStyle> {
  const styles: Record<string, OriginStyle> = {};
  for (let index = 0; index < count; index++) {
    const style: OriginStyle = { ...gridStyle(display.styles[index], display.themeColors), xf: index };
    const pattern = numberFormat(index);
    if (pattern === "General") delete style.n;
    else style.n = { pattern };
    styles[styleId(index)] = style;
  }
  return styles;
}
