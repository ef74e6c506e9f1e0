/**
 * Header words that clinics use for what we need, in the languages we are sure of. Left out on purpose is what may mean
 * two things: "Date", "Change date" (last or next?), "Volume" (in or out?), "Inserted" (the stoma or this tube?),
 * "Mark" (then or now?), "Stoma length" (of the opening or the tube?), "Route", "Zugang" (a new person?), "Letzte
 * Kontrolle" (of the balloon or the person?), "Lengte" (of the tube or the person?).
 */
import { balloonHeaders } from "./headers/balloon";
import { changeHeaders } from "./headers/change";
import { fitHeaders } from "./headers/fit";
import { tubeHeaders } from "./headers/tube";
import type { Role } from "./role";

export const headerWords: { readonly [R in Role]: readonly string[] } = {
  ...changeHeaders,
  ...tubeHeaders,
  ...balloonHeaders,
  ...fitHeaders,
};

/** Headers that mean something else as soon as a word stands beside them: "Last check of weight", "Water changed on". */
export const wholeHeaders: ReadonlySet<string> = new Set([
  ...["last check", "last check date", "date of last check", "checked on"],
  ...["changed by", "changed on", "date changed"],
]);

/** Without accents, punctuation and letter case: "Größe [mL]" is "grosse ml". "#" means a number. */
export const plainHeader = (header: string): string =>
  header
    .toLowerCase()
    .replaceAll("ß", "ss")
    .replaceAll("#", " number ")
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/[^\p{L}\p{Nd}]+/gu, " ")
    .trim();

const rolesOf = new Map<string, Role[]>();
for (const [role, words] of Object.entries(headerWords) as [Role, readonly string[]][]) {
  for (const word of words) rolesOf.set(word, [...(rolesOf.get(word) ?? []), role]);
}

/** Roles that a header names outright. */
export const rolesNamed = (header: string): readonly Role[] => rolesOf.get(plainHeader(header)) ?? [];

/** Other words that are at home in the header row of such a list. */
const companions = new Set([
  ...[
    "id",
    "no",
    "nr",
    "number",
    "name",
    "initials",
    "notes",
    "note",
    "remarks",
    "comment",
    "comments",
    "date",
    "born",
  ],
  ...["date of birth", "dob", "hosp no", "hospital number", "nhs number", "mrn", "item", "lot"],
  ...["weight", "weight kg", "age", "ward", "area", "nurse", "phone"],
  ...[
    "kurzel",
    "kennung",
    "bemerkung",
    "bemerkungen",
    "notizen",
    "geboren",
    "nom",
    "remarques",
    "notas",
    "opmerkingen",
  ],
]);

/** Is this a word that one expects at the head of a column? */
export const isHeaderWord = (text: string): boolean =>
  rolesOf.has(plainHeader(text)) || companions.has(plainHeader(text));
