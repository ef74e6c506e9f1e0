/** Longer texts are cut short in a sentence: a cell can hold 32,767 characters, and the sentence must still be read. */
const LONGEST = 40;

/** What stands in a cell, in quotation marks, as sentences cite it. */
export const cited = (text: string): string => `"${text.length > LONGEST ? `${text.slice(0, LONGEST)}...` : text}"`;
