/**
 * Header words that clinics use for what we need, in the languages we are sure of. Left out on purpose is what may mean
 * two things: "Date", "Change date" (last or next?), "Volume" (in or out?), "Inserted" (the stoma or this tube?).
 */
import type { Role } from "./role";

export const headerWords: { readonly [R in Role]: readonly string[] } = {
  last: [
    ...["last change", "last changed", "last tube change", "date of last change", "last change date", "changed on"],
    ...["date changed", "tube changed", "tube last changed", "date last changed", "device in", "last changed on"],
    ...["tube fitted on", "current tube fitted", "current device fitted", "date last tube change"],
    ...["letzter wechsel", "letzter sondenwechsel", "wechsel am", "gewechselt am", "zuletzt gewechselt"],
    ...["dernier changement", "date du dernier changement", "derniere pose", "change le", "changee le"],
    ...["ultimo cambio", "fecha del ultimo cambio", "fecha ultimo cambio", "cambiada el"],
    ...["laatste wissel", "laatste vervanging", "laatst gewisseld", "gewisseld op", "laatste sondewissel"],
    ...["ultima sostituzione", "data ultima sostituzione", "data ultimo cambio"],
  ],
  kind: [
    ...["kind", "kind of tube", "kind of device", "tube kind", "tube type", "type of tube", "type of device", "type"],
    ...["device type", "device", "held by", "retention", "tube", "tube held by"],
    ...["sondenart", "sondentyp", "art der sonde", "art", "typ"],
    ...["type de sonde", "sonde"],
    ...["tipo de sonda", "tipo", "sonda"],
    ...["soort sonde", "type sonde", "soort"],
    ...["tipo di sonda", "tipo sonda"],
  ],
  size: [
    ...[
      "size",
      "tube size",
      "size fr",
      "french",
      "french size",
      "size french",
      "fr",
      "fr size",
      "ch",
      "charriere",
      "fg",
    ],
    ...["device size", "size ch", "size of tube"],
    ...["grosse", "groesse", "sondengrosse", "grosse ch", "grosse charriere"],
    ...["taille", "calibre", "taille ch", "calibre ch"],
    ...["calibre fr", "tamano"],
    ...["maat", "maat ch", "maat sonde"],
    ...["misura", "calibro"],
  ],
  out: [
    ...["water out", "out", "came out", "out ml", "water out ml", "volume out", "volume withdrawn", "withdrawn"],
    ...["water withdrawn", "drawn out", "water drawn out", "balloon out", "water removed"],
    ...["wasser raus", "abgezogen", "wasser abgezogen", "entnommen", "wasser heraus"],
    ...["eau retiree", "volume retire"],
    ...["agua extraida", "volumen extraido"],
    ...["water eruit"],
    ...["acqua estratta", "acqua tolta"],
  ],
  putIn: [
    ...["water put in", "put in", "put in ml", "water in", "in ml", "water in ml", "volume in", "volume put in"],
    ...["agreed fill", "fill", "fill ml", "fill volume", "balloon fill", "filled with"],
    ...["wasser rein", "wasser hinein", "eingefullt", "fullmenge", "fullvolumen", "blockvolumen", "wasser eingefullt"],
    ...["eau injectee", "volume injecte"],
    ...["agua introducida", "volumen introducido"],
    ...["water erin"],
    ...["acqua immessa", "acqua inserita"],
  ],
  due: [
    ...["change due", "due", "due date", "change due on", "change due date", "next change", "next change due"],
    ...["next tube change", "due for change", "date of next change", "next change date"],
    ...["nachster wechsel", "nachster sondenwechsel", "wechsel fallig", "fallig am"],
    ...["prochain changement", "date du prochain changement", "a changer le"],
    ...["proximo cambio", "fecha del proximo cambio", "fecha proximo cambio"],
    ...["volgende wissel", "volgende vervanging"],
    ...["prossimo cambio", "prossima sostituzione"],
  ],
  latest: [
    ...["at the latest", "latest", "latest change", "change no later than", "no later than", "change by"],
    ...["spatestens", "spatestens am", "au plus tard", "a mas tardar", "uiterlijk", "al piu tardi"],
  ],
};

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
  ...["date of birth", "dob", "hosp no", "hospital number", "nhs number", "mrn", "item", "lot", "shape", "access"],
  ...["length", "length cm", "stoma made", "weight", "weight kg", "status", "age", "ward", "area", "nurse", "phone"],
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
