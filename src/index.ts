import type { SheetFunction } from "./worksheet/define";

/** Every worksheet function, in the order in which guides and lists show them. */
export const functions: readonly SheetFunction[] = [];
