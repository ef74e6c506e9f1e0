/** Names of table columns inside structured references, `Tubes[[#This Row],[Fr]]`. */

/** These take an apostrophe before them (Microsoft: "Using structured references with Excel tables"). */
const SPECIAL = /[[\]#'@]/g;

export const escapedColumn = (name: string): string => name.replace(SPECIAL, "'$&");
export const unescapedColumn = (text: string): string => text.replace(/'(.)/gs, "$1");

/** Anything but letters, digits, blanks and _ asks for brackets of its own (same source). */
export const needsOwnBrackets = (escaped: string): boolean => /[^A-Za-z0-9_ \u0080-\uffff]/.test(escaped);
