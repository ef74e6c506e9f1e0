/** How a cell's look now differs from the file's style it came from. */
import { WrapStrategy, HorizontalAlign, type IStyleData, type Nullable } from "@univerjs/core";
import type { StyleChange, StyleEdit } from "../../package";
import type { OriginStyle } from "../open/styles";

const ALIGNMENTS: Readonly<Record<number, NonNullable<StyleChange["horizontal"]>>> = {
  [HorizontalAlign.LEFT]: "left",
  [HorizontalAlign.CENTER]: "center",
  [HorizontalAlign.RIGHT]: "right",
  [HorizontalAlign.JUSTIFIED]: "justify",
};

const hexadecimal = (color: Nullable<{ rgb?: Nullable<string> }>): string | undefined => {
  const rgb = color?.rgb;
  if (!rgb) return undefined;
  const long = /^#([0-9a-f]{6})/i.exec(rgb);
  if (long) return long[1]!.toUpperCase();
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(rgb);
  if (short)
    return [1, 2, 3]
      .map((at) => short[at]!.repeat(2))
      .join("")
      .toUpperCase();
  const parts = /^rgba?\((\d+),\s*(\d+),\s*(\d+)/.exec(rgb);
  return parts
    ?.slice(1)
    .map((part) => Number(part).toString(16).padStart(2, "0"))
    .join("")
    .toUpperCase();
};

const isOn = (flag: unknown): boolean => flag === 1 || flag === true;

export interface Look {
  /** Undefined: the file's own style stays. */
  readonly edit: StyleEdit | undefined;
  /** Something of the look cannot be saved. */
  readonly isLossy: boolean;
}

/** Looks that a file's style has and this page does not change. */
const UNTOLD = ["ff", "fs", "ul", "st", "bd", "va", "vt", "tr"] as const;

export const isUntold = (key: string): boolean => (UNTOLD as readonly string[]).includes(key) || key === "ol";

const LETTERS: ReadonlySet<string> = new Set(["ff", "fs", "vt"]);

export interface StyleNow {
  readonly id: string | undefined;
  readonly style: Nullable<IStyleData>;
}

/**
 * @param own the style index the file gives this cell (or its column) now
 * @param keepFormat the engine hands number formats on to results; such a gain is nobody's wish
 */
export function lookOf(
  now: StyleNow,
  own: number,
  styles: Readonly<Record<string, OriginStyle>>,
  keepFormat: boolean,
): Look {
  const exact = now.id === undefined ? undefined : /^xf(\d+)$/.exec(now.id);
  if (exact) return { edit: Number(exact[1]) === own ? undefined : Number(exact[1]), isLossy: false };
  const style = (now.style ?? {}) as OriginStyle;
  const from = style.xf ?? own;
  const base: OriginStyle = styles[`xf${from}`] ?? {};
  const pattern = style.n?.pattern || "General";
  const basePattern = base.n?.pattern || "General";
  const horizontal = style.ht ? ALIGNMENTS[style.ht] : undefined;
  const fontColor = hexadecimal(style.cl);
  const fill = hexadecimal(style.bg);
  const change: StyleChange = {
    ...(pattern !== basePattern && !(keepFormat && basePattern === "General") && { numberFormat: pattern }),
    ...(isOn(style.bl) !== isOn(base.bl) && { bold: isOn(style.bl) }),
    ...(isOn(style.it) !== isOn(base.it) && { italic: isOn(style.it) }),
    ...((style.tb === WrapStrategy.WRAP) !== (base.tb === WrapStrategy.WRAP) && {
      wrap: style.tb === WrapStrategy.WRAP,
    }),
    ...((style.ht ?? 0) !== (base.ht ?? 0) && { horizontal: horizontal ?? "general" }),
    ...(fontColor !== hexadecimal(base.cl) && fontColor !== undefined && { fontColor }),
    ...(fill !== hexadecimal(base.bg) && { fill: fill ?? null }),
  };
  // pasted text brings the page's own letters along, which nobody chose
  const isPasted = style.xf === undefined;
  const isLossy = UNTOLD.filter((key) => !isPasted || !LETTERS.has(key)).some(
    (key) => JSON.stringify(style[key] ?? null) !== JSON.stringify(base[key] ?? null),
  );
  if (Object.keys(change).length === 0) return { edit: from === own ? undefined : from, isLossy };
  return { edit: { from, ...change }, isLossy };
}
