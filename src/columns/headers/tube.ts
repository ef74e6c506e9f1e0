/** Headers of what is in, and whose: the tube itself, how it is held, and who looks after it. */
import type { HeaderWords } from "./headers";

export const tubeHeaders = {
  kind: [
    ...["kind", "kind of tube", "kind of device", "tube kind", "tube type", "type of tube", "type of device", "type"],
    ...["device type", "device", "held by", "retention", "tube", "tube held by"],
    ...["sondenart", "sondentyp", "art der sonde", "art", "typ", "typ der sonde", "gehalten durch"],
    ...["type de sonde", "sonde", "type de gastrostomie", "type de dispositif"],
    ...["tipo de sonda", "tipo", "sonda", "tipo de gastrostomia", "tipo de dispositivo"],
    ...["soort sonde", "type sonde", "soort", "soort katheter", "type katheter"],
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
  diameter: [
    ...["diameter", "diameter mm", "outer diameter", "outside diameter", "external diameter", "od mm", "size mm"],
    ...["durchmesser", "durchmesser mm", "aussendurchmesser"],
    ...["diametre", "diametre mm", "diametre externe"],
    ...["diametro", "diametro mm", "diametro externo"],
    ...["buitendiameter"],
    ...["diametro esterno"],
  ],
  shape: [
    ...["shape", "tube shape", "shape of tube", "device shape", "long or low profile"],
    ...["form", "sondenform", "bauform", "forme", "forma", "vorm"],
  ],
  access: [
    ...["access", "type of access", "feeding access", "feeding route", "g gj or j"],
    ...["zugangsweg", "voie d abord", "via de acceso", "toegangsweg", "via di accesso"],
  ],
  changedBy: [
    ...["changed by", "change done by", "tube changed by", "who changes", "who changes it", "who changes the tube"],
    ...["gewechselt durch", "gewechselt von", "wechsel durch"],
    ...["change par", "cambiada por", "gewisseld door", "cambiata da", "sostituita da"],
  ],
  status: [
    ...["status", "patient status", "person status", "status of person", "active or left"],
    ...["statut", "estado", "stato"],
  ],
} as const satisfies HeaderWords;
