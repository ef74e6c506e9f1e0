/** Headers of the days and words of changes, and of the opening itself. */
import type { HeaderWords } from "./headers";

export const changeHeaders = {
  last: [
    ...["last change", "last changed", "last tube change", "date of last change", "last change date", "changed on"],
    ...["date changed", "tube changed", "tube last changed", "date last changed", "device in", "last changed on"],
    ...["tube fitted on", "current tube fitted", "current device fitted", "date last tube change"],
    ...["letzter wechsel am", "datum letzter wechsel", "datum des letzten wechsels", "letzter buttonwechsel"],
    ...["letzter wechsel", "letzter sondenwechsel", "wechsel am", "gewechselt am", "zuletzt gewechselt"],
    ...["dernier changement le", "date dernier changement", "dernier changement de sonde", "derniere pose le"],
    ...["dernier changement", "date du dernier changement", "derniere pose", "change le", "changee le"],
    ...["ultimo recambio", "fecha de ultimo cambio", "fecha del ultimo recambio", "ultimo cambio de sonda"],
    ...["ultimo cambio", "fecha del ultimo cambio", "fecha ultimo cambio", "cambiada el"],
    ...["datum laatste wissel", "datum laatste vervanging", "laatste wisseling", "laatste wissel op"],
    ...["laatste wissel", "laatste vervanging", "laatst gewisseld", "gewisseld op", "laatste sondewissel"],
    ...["ultima sostituzione", "data ultima sostituzione", "data ultimo cambio"],
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
  state: [
    ...["change", "change state", "state of change", "change status", "state of the change"],
    ...["stand des wechsels", "etat du changement", "estado del cambio", "stato del cambio"],
  ],
  stomaMade: [
    ...["stoma made", "stoma made on", "date stoma made", "stoma created", "stoma created on", "stoma formed"],
    ...["stoma formed on", "date of stoma", "stoma date", "opening made", "opening made on", "gastrostomy made"],
    ...["gastrostomy made on", "first placement", "date of first placement", "initial placement", "first placed"],
    ...["first placed on", "tract made", "tract made on"],
    ...["stoma angelegt", "stoma angelegt am", "stomaanlage", "erstanlage", "erstanlage am", "datum der erstanlage"],
    ...["premiere pose", "date de la premiere pose", "creation de la stomie", "date de creation de la stomie"],
    ...["creacion del estoma", "fecha de creacion del estoma", "primera colocacion", "fecha de la primera colocacion"],
    ...["stoma aangelegd", "stoma aangelegd op", "aanleg stoma", "datum aanleg stoma", "eerste plaatsing"],
    ...["confezionamento stomia", "data confezionamento stomia", "primo posizionamento"],
  ],
  slowHealing: [
    ...["slow healing", "heals slowly", "slow to heal", "healing slow", "poor healing"],
    ...["langsame heilung", "heilt langsam", "wundheilungsstorung"],
    ...["cicatrisation lente", "cicatrizacion lenta", "trage genezing", "guarigione lenta"],
  ],
} as const satisfies HeaderWords;
