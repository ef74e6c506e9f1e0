/** Headers of what is measured at the opening and along the tube. */
import type { HeaderWords } from "./headers";

export const fitHeaders = {
  length: [
    ...["length", "length cm", "tube length", "tube length cm", "shaft length", "shaft length cm", "device length"],
    ...["length of tube", "length of device"],
    ...["lange", "laenge", "lange cm", "schaftlange", "sondenlange"],
    ...["longueur", "longueur cm", "longueur de la sonde"],
    ...["longitud", "longitud cm", "longitud de la sonda"],
    ...["schachtlengte", "lengte van de sonde", "lengte sonde"],
    ...["lunghezza", "lunghezza cm", "lunghezza della sonda"],
  ],
  lying: [
    ...["lying", "lying cm", "measured lying", "opening lying", "stoma lying", "length lying", "stoma length lying"],
    ...["tract length lying", "lying down"],
    ...["liegend", "liegend cm", "im liegen", "gemessen im liegen"],
    ...["position couchee", "mesure couche", "acostado", "medido acostado", "liggend", "liggend cm", "da sdraiato"],
  ],
  sitting: [
    ...["sitting", "sitting cm", "measured sitting", "opening sitting", "stoma sitting", "length sitting"],
    ...["stoma length sitting", "tract length sitting", "sitting up"],
    ...["sitzend", "sitzend cm", "im sitzen", "gemessen im sitzen"],
    ...["position assise", "mesure assis", "sentado", "medido sentado", "zittend", "zittend cm", "da seduto"],
  ],
  gap: [
    ...["play mm", "free play", "free play mm", "gap", "gap mm", "gap to skin", "bolster gap", "bolster to skin"],
    ...["bolster to skin mm", "skin to bolster", "distance to skin", "distance to skin mm", "disc to skin"],
    ...["abstand zur haut", "abstand haut", "abstand platte haut", "abstand zur haut mm"],
    ...["distance a la peau", "distancia a la piel", "afstand tot de huid", "distanza dalla cute"],
  ],
  markThen: [
    ...["mark then", "mark then cm", "mark at insertion", "mark when put in", "mark at fitting", "mark at placement"],
    ...["mark at last change", "cm mark at insertion", "markierung bei anlage", "markierung beim einlegen"],
    ...["repere a la pose", "marca inicial", "markering bij plaatsing", "tacca al posizionamento"],
  ],
  markNow: [
    ...["mark now", "mark now cm", "mark today", "cm mark now", "current mark", "mark seen now"],
    ...["markierung jetzt", "markierung heute", "markierung aktuell"],
    ...["repere actuel", "marca actual", "markering nu", "tacca attuale"],
  ],
} as const satisfies HeaderWords;
