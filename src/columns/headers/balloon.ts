/** Headers of balloon checks. */
import type { HeaderWords } from "./headers";

export const balloonHeaders = {
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
    ...[
      "balloon water put in",
      "balloon water put in ml",
      "balloon water in",
      "balloon water in ml",
      "water in balloon",
    ],
    ...["balloon vol", "balloon vol ml", "balloon volume", "balloon volume ml", "water in balloon ml"],
    ...["agreed fill", "fill", "fill ml", "fill volume", "balloon fill", "filled with"],
    ...["wasser rein", "wasser hinein", "eingefullt", "fullmenge", "fullvolumen", "blockvolumen", "wasser eingefullt"],
    ...["ballonvolumen", "ballonvolumen ml", "ballonfullung", "ballonfullung ml", "ballonfullvolumen"],
    ...["eau injectee", "volume injecte", "volume du ballonnet", "volume ballonnet", "eau du ballonnet"],
    ...["agua introducida", "volumen introducido", "volumen del balon", "volumen balon", "agua del balon"],
    ...["water erin", "ballonvolume", "ballon volume", "ballonvulling", "water in ballon"],
    ...["acqua immessa", "acqua inserita"],
  ],
  lastCheck: [
    ...["last check", "last balloon check", "balloon last checked", "balloon last checked on", "date of last check"],
    ...["last check date", "date of last balloon check", "balloon checked", "balloon checked on", "checked on"],
    ...["letzte ballonkontrolle", "ballon kontrolliert am", "ballonkontrolle am", "ballon gepruft am"],
    ...["dernier controle du ballonnet", "ballonnet controle le"],
    ...["ultimo control del balon", "ultima revision del balon", "balon revisado el"],
    ...["laatste balloncontrole", "ballon gecontroleerd op", "laatste controle ballon"],
    ...["ultimo controllo palloncino", "ultimo controllo del palloncino", "palloncino controllato il"],
  ],
} as const satisfies HeaderWords;
