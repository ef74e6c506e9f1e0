/**
 * How cells of a sheet look that the pane adds to a workbook, by what they are; the same on every host. In our own files
 * the same inks and grounds stand (workbook/file/looks.ts).
 */
export interface SheetPaint {
  /** RRGGBB. */
  readonly ink?: string;
  readonly ground?: string;
  readonly isBold?: boolean;
  readonly wraps?: boolean;
}

export const ACCENT_INK = "084452";
export const HEADER_GROUND = "0C5A6B";
export const HEADER_INK = "FFFFFF";

export const sheetLooks = {
  title: { ink: ACCENT_INK, isBold: true },
  header: { ink: HEADER_INK, ground: HEADER_GROUND, isBold: true, wraps: true },
  text: { wraps: true },
} satisfies Record<string, SheetPaint>;

export type SheetLook = keyof typeof sheetLooks;

/** What stands at the foot of every printed page: "&" begins a code there, and a digit right behind one is a size of letters. */
export const footerOf = (text: string): { readonly left: string; readonly right: string } => ({
  left: text.replaceAll("&", "&&").replace(/^(?=\d)/, " "),
  right: "Page &P of &N",
});
