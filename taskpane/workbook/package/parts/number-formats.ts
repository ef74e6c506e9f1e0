/** Number formats that a workbook names by id only (ECMA-376 part 1, 18.8.30; their en-US codes). */
const BUILT_IN: Readonly<Record<number, string>> = {
  0: "General",
  1: "0",
  2: "0.00",
  3: "#,##0",
  4: "#,##0.00",
  9: "0%",
  10: "0.00%",
  11: "0.00E+00",
  12: "# ?/?",
  13: "# ??/??",
  14: "mm-dd-yy",
  15: "d-mmm-yy",
  16: "d-mmm",
  17: "mmm-yy",
  18: "h:mm AM/PM",
  19: "h:mm:ss AM/PM",
  20: "h:mm",
  21: "h:mm:ss",
  22: "m/d/yy h:mm",
  37: "#,##0 ;(#,##0)",
  38: "#,##0 ;[Red](#,##0)",
  39: "#,##0.00;(#,##0.00)",
  40: "#,##0.00;[Red](#,##0.00)",
  45: "mm:ss",
  46: "[h]:mm:ss",
  47: "mmss.0",
  48: "##0.0E+0",
  49: "@",
};

/** The first id a workbook may give to a code of its own. */
export const FIRST_CUSTOM_FORMAT = 164;

export function builtInFormat(id: number): string | undefined {
  return BUILT_IN[id];
}

/**
 * The id to write for a code. Ids 14 to 22 and 37 to 40 are left out: Excel shows them in the reader's own order of day and
 * month, which is not what a code says.
 */
export function builtInId(code: string): number | undefined {
  const id = Object.keys(BUILT_IN).find((key) => BUILT_IN[Number(key)] === code && !showsByRegion(Number(key)));
  return id === undefined ? undefined : Number(id);
}

function showsByRegion(id: number): boolean {
  return (id >= 14 && id <= 22) || (id >= 37 && id <= 40);
}
