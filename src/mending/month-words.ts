/**
 * Months and days of the week as people write them, in the languages whose headers are known (columns/header-words.ts).
 * No word means two months. Without accents and letter case: "März" is "marz".
 */

const MONTHS: readonly (readonly string[])[] = [
  ["january", "jan", "januar", "janner", "jaenner", "janvier", "janv", "enero", "ene", "januari", "gennaio", "gen"],
  ["february", "feb", "februar", "fevrier", "fevr", "fev", "febrero", "februari", "febbraio"],
  ["march", "mar", "marz", "maerz", "mrz", "mars", "marzo", "maart", "mrt"],
  ["april", "apr", "avril", "avr", "abril", "abr", "aprile"],
  ["may", "mai", "mayo", "mei", "maggio", "mag"],
  ["june", "jun", "juni", "juin", "junio", "giugno", "giu"],
  ["july", "jul", "juli", "juillet", "juil", "julio", "luglio", "lug"],
  ["august", "aug", "aout", "agosto", "ago", "augustus"],
  ["september", "sep", "sept", "septembre", "septiembre", "setiembre", "settembre", "set"],
  ["october", "oct", "oktober", "okt", "octobre", "octubre", "ottobre", "ott"],
  ["november", "nov", "novembre", "noviembre"],
  ["december", "dec", "dezember", "dez", "decembre", "diciembre", "dic", "dicembre"],
];

/** From Sunday on, as `weekday` counts. Short ones that are months elsewhere ("mar", "mer") are left out. */
const WEEKDAYS: readonly (readonly string[])[] = [
  ["sunday", "sun", "sonntag", "so", "dimanche", "domingo", "zondag", "domenica"],
  ["monday", "mon", "montag", "mo", "lundi", "lunes", "maandag", "lunedi"],
  ["tuesday", "tue", "tues", "dienstag", "di", "mardi", "martes", "dinsdag", "martedi"],
  ["wednesday", "wed", "mittwoch", "mi", "mercredi", "miercoles", "woensdag", "mercoledi"],
  ["thursday", "thu", "thur", "thurs", "donnerstag", "do", "jeudi", "jueves", "donderdag", "giovedi"],
  ["friday", "fri", "freitag", "fr", "vendredi", "viernes", "vrijdag", "venerdi"],
  ["saturday", "sat", "samstag", "sonnabend", "sa", "samedi", "sabado", "zaterdag", "sabato"],
];

const placed = (lists: readonly (readonly string[])[], first: number): ReadonlyMap<string, number> =>
  new Map(lists.flatMap((words, i) => words.map((word) => [word, first + i] as const)));

const months = placed(MONTHS, 1);
const weekdays = placed(WEEKDAYS, 0);

/** 1 to 12. @param word in small letters, without accents */
export const monthNamed = (word: string): number | undefined => months.get(word);

/** 0 is Sunday. @param word in small letters, without accents */
export const weekdayNamed = (word: string): number | undefined => weekdays.get(word);
