/** Identifiers are compared without regard to case; people write them in capitals. */
export const shownId = (person: string): string => person.toUpperCase();
