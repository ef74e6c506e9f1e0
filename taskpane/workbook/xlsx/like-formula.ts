/**
 * Texts that a program takes for a formula, a number or its own sign as soon as somebody edits their cell (F2, Enter):
 * files mark them (`quotePrefix`, ECMA-376 part 1, 18.8.45), so that they stay texts.
 */
export const isLikeFormula = (text: string): boolean => /^[=+\-@'\t]/.test(text);
