/** How formulas call the functions of this add-in. */
export const NAMESPACE = "TUBE";

const OURS = `${NAMESPACE}.`;
const OURS_IN_FILES = `_xldudf_${NAMESPACE}_`;

/** `_xldudf_TUBE_X` for `TUBE.X`; undefined for other functions. */
export const oursInFile = (name: string): string | undefined => {
  const capitals = name.toUpperCase();
  return capitals.startsWith(OURS) ? OURS_IN_FILES + capitals.slice(OURS.length) : undefined;
};

/** `TUBE.X` for `_xldudf_TUBE_X`; undefined for other words. */
export const oursFromFile = (word: string): string | undefined =>
  word.startsWith(OURS_IN_FILES) ? OURS + word.slice(OURS_IN_FILES.length) : undefined;

/** Whether a formula calls one of our functions, as people type them. */
export const callsOurs = (formula: string): boolean => formula.toUpperCase().includes(OURS);
