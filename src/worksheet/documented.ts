/**
 * Examples, cautions and long help belong to a function's own file, but Excel's functions.js needs none of them: its
 * build defines FUNCTIONS_ONLY, and the minifier then drops everything behind `documented &&`.
 */
declare const FUNCTIONS_ONLY: boolean | undefined;

export const documented = typeof FUNCTIONS_ONLY === "undefined";
