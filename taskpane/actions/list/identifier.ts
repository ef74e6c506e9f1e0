/** Which column of somebody's own list says whose row it is. */
import { plainHeader } from "../../../src/columns/header-words";

const IDENTIFIERS = new Set([
  ...["id", "identifier", "hosp no", "hospital number", "nhs number", "mrn", "initials", "no", "nr", "number"],
  ...["kennung", "kurzel", "patient", "name"],
]);

/** Counted from 0 within the list; null where no header says so. */
export function identifierIn({
  columns,
}: {
  readonly columns: readonly { readonly header: string; readonly index: number }[];
}): number | null {
  const found = columns.find(({ header }) => IDENTIFIERS.has(plainHeader(header)));
  return found?.index ?? null;
}
