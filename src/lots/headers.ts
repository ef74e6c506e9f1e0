/** Columns that hold lots, by their headers: English, German, French, Spanish, Italian and Dutch. */
import { plainHeader } from "../columns/header-words";

const LOT = /\b(?:lot|lots|lotnr|lotnumber|batch|batchnr|charge|chargennummer|chargennr|chargen|lote|lotto)\b/u;
/** "Number of lots", "lot expires": no lots stand there. */
const NOT_A_LOT = /\b(?:expir\w*|verfall\w*|date|datum|number of|how many|checked|in charge|nurse|person)\b/u;

export function holdsLots(header: string): boolean {
  const plain = plainHeader(header);
  return LOT.test(plain) && !NOT_A_LOT.test(plain);
}
