/** How formulas call the functions of this add-in. */
export const NAMESPACE = "TUBE";

const OURS = `${NAMESPACE}.`;
const OURS_IN_FILES = `_xldudf_${NAMESPACE}_`;
const MENTIONS = new RegExp(`\\b${NAMESPACE}\\.[A-Z]|${OURS_IN_FILES}`, "i");

/** `TUBE.X` for `X`: one of our functions as people type it. */
export const oursNamed = (name: string): string => OURS + name;

/** `_xldudf_TUBE_X` for `TUBE.X`; undefined for other functions. */
export const oursInFile = (name: string): string | undefined => {
  const capitals = name.toUpperCase();
  return capitals.startsWith(OURS) ? OURS_IN_FILES + capitals.slice(OURS.length) : undefined;
};

/** `TUBE.X` for `_xldudf_TUBE_X`; undefined for other words. */
export const oursFromFile = (word: string): string | undefined =>
  word.startsWith(OURS_IN_FILES) ? oursNamed(word.slice(OURS_IN_FILES.length)) : undefined;

/** `X` for `TUBE.X` and `_xldudf_TUBE_X`, in any case; undefined for functions that are not ours. */
export const oursWithoutPrefix = (name: string): string | undefined => {
  const capitals = name.toUpperCase();
  const prefix = [OURS, OURS_IN_FILES.toUpperCase()].find((one) => capitals.startsWith(one));
  return prefix === undefined ? undefined : capitals.slice(prefix.length);
};

/** A function's name in capitals; ours as people type it, wherever it came from. */
export const functionInCapitals = (name: string): string => {
  const own = oursWithoutPrefix(name);
  return own === undefined ? name.toUpperCase() : oursNamed(own);
};

/** Whether a formula calls one of our functions, as people type them or as files store them. */
export const mentionsOurs = (formula: string): boolean => MENTIONS.test(formula);

/** Whether a formula calls one of our functions, as people type them. */
export const callsOurs = (formula: string): boolean => formula.toUpperCase().includes(OURS);
