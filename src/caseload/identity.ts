/**
 * Hidden columns that say whose row it is. Lookups go by text in front of which "k:" stands, so that "1E5", "03-04" and
 * "007" are never read as numbers or dates, and an identifier "*" matches nobody else.
 */
import { identityOf, isBlank } from "./phrases";
import { hidden } from "./shown";

export const person = hidden("Person", `IF(${isBlank("[@ID]")},"","k:"&${identityOf("[@ID]")})`);

/** Person and device: one person can have a G and a J. */
export const key = hidden("Key", `IF([@Person]="","",[@Person]&"|"&${identityOf("[@Access]")})`);
