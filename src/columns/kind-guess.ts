/**
 * What kind of tube a word means, guessed only where the word says how the tube is held. PEG, RIG, button and G-tube
 * say how it was placed or its shape, never how it is held; BGT and other abbreviations are known to their clinic only.
 */
import { kinds, type KindKey } from "../settings/kinds";
import { wordKey } from "./spelling";

/** Words that add nothing to "balloon". "Balloon J" may mean either of two kinds, so J is not among them. */
const BESIDE_BALLOON = new Set([
  "balloon",
  "ballon",
  "balloons",
  "g",
  "gastrostomy",
  "button",
  "tube",
  "device",
  "retained",
  "low",
  "profile",
  "lowprofile",
]);
const JEJUNOSTOMY = new Set(["jejunostomy", "tube", "button", "balloon", "ballon", "retained", "device"]);
const GASTROJEJUNAL = new Set(["gj", "pegj", "gastrojejunal", "gastrojejunostomy"]);
const BESIDE_GASTROJEJUNAL = new Set([
  ...GASTROJEJUNAL,
  "tube",
  "button",
  "device",
  "balloon",
  "ballon",
  "low",
  "profile",
]);
/** How it was placed, and what it is, beside how it is held and for whom: "Bumper PEG, adult". */
const BESIDE_BUMPER = new Set(["bumper", "internal", "adult", "child", "peg", "g", "gastrostomy", "tube"]);
const TEAM = new Set(["loop", "pigtail", "winged", "stitched", "sutured", "catheter"]);
const BESIDE_TEAM = new Set([...TEAM, "tube", "urinary", "stop", "gap", "stopgap"]);

/**
 * Words of other languages that say the same, without accents: German, French, Spanish, Dutch. "" adds nothing ("mit",
 * "à"). Left out is what may mean two things: "Katheter" beside a balloon, "Platte", "disque", "Austauschsonde".
 */
const SAME_IN_ENGLISH: Readonly<Record<string, string>> = {
  ...{ ballonnet: "balloon", balon: "balloon", ballonsonde: "balloon tube", ballonbutton: "balloon button" },
  ...{ ballongastrostomie: "balloon gastrostomy", ballonknopf: "balloon button", ballonknop: "balloon button" },
  ...{ sonde: "tube", sonda: "tube", bouton: "button", boton: "button", knopf: "button", knop: "button" },
  ...{ gastrostomie: "gastrostomy", gastrostomia: "gastrostomy", gastrostomiesonde: "gastrostomy tube" },
  ...{ jejunostomie: "jejunostomy", yeyunostomia: "jejunostomy", jejunostomia: "jejunostomy" },
  ...{ gastrojejunale: "gastrojejunal", gastroyeyunal: "gastrojejunal", gastrojejunaal: "gastrojejunal" },
  ...{ gastrojejunalsonde: "gastrojejunal tube", gastrojejunostomie: "gastrojejunostomy" },
  ...{ halteplatte: "bumper", collerette: "bumper", innere: "internal", interne: "internal", interno: "internal" },
  ...{ erwachsene: "adult", erwachsener: "adult", adulte: "adult", adulto: "adult", volwassene: "adult" },
  ...{ kind: "child", enfant: "child", nino: "child", nina: "child" },
  ...{ mit: "", a: "", avec: "", con: "", de: "", met: "", van: "" },
};

/** Doubts and denials, also in those languages: "ohne Ballon", "sans ballonnet", "sin balón", "geen ballon". */
const NOT_SO =
  /\?|\b(?:no|not|non|without|was|old|ohne|kein|keine|nicht|war|alt|alte|sans|pas|ancien|ancienne|sin|viejo|vieja|zonder|geen|niet|oud|oude)\b/;

/** The single words in a word of the list, in English; none where it is a doubt or a denial: "balloon?", "no balloon". */
function partsOf(word: string): readonly string[] {
  const text = wordKey(word)
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/\bg[\s/-]?j\b/g, "gj")
    .replace(/\bpeg[\s/-]?j\b/g, "pegj")
    .replace(/\bgastro[\s-](jejun|yeyun)/g, "gastro$1")
    .replace(/\blow[\s-]profile\b/g, "lowprofile");
  if (NOT_SO.test(text)) return [];
  return text
    .split(/[^\p{L}]+/u)
    .flatMap((part) => (Object.hasOwn(SAME_IN_ENGLISH, part) ? SAME_IN_ENGLISH[part]! : part).split(" "))
    .filter((part) => part !== "");
}

/** How a word was read where it was not English: "button balloon" of "bouton à ballonnet"; null where it stands as it is. */
export function readAs(word: string): string | null {
  const own = wordKey(word).split(/[^\p{L}]+/u);
  const isTranslated = own.some((part) => SAME_IN_ENGLISH[part.normalize("NFD").replace(/\p{M}/gu, "")]);
  return isTranslated ? partsOf(word).join(" ") : null;
}

/** Whether a word for a gastrojejunal tube also says that a balloon holds it, and nothing else. */
export function saysBalloonGJ(word: string): boolean {
  const words = partsOf(word);
  const has = (part: string) => words.includes(part);
  return (has("balloon") || has("ballon")) && words.every((part) => BESIDE_GASTROJEJUNAL.has(part));
}

/** The words that we put into lists ourselves (mending/kinds.ts). */
const OURS: ReadonlySet<string> = new Set(kinds.filter(({ key }) => key !== "not known").map(({ key }) => key));

export function guessKind(word: string): KindKey | null {
  if (OURS.has(wordKey(word))) return wordKey(word) as KindKey;
  const words = partsOf(word);
  const has = (part: string) => words.includes(part);
  const only = (allowed: ReadonlySet<string>) => words.length > 0 && words.every((part) => allowed.has(part));

  if (words.some((part) => GASTROJEJUNAL.has(part)) && only(BESIDE_GASTROJEJUNAL)) return "gastrojejunal";
  if (has("transgastric") && (has("jejunal") || has("jejunostomy"))) return "gastrojejunal";
  const isBalloon = has("balloon") || has("ballon");
  if (isBalloon && has("jejunostomy") && only(JEJUNOSTOMY)) return "balloon jejunostomy";
  if (isBalloon && only(BESIDE_BALLOON)) return "balloon gastrostomy";
  if (has("bumper") && has("adult") !== has("child") && only(BESIDE_BUMPER))
    return has("adult") ? "bumper adult" : "bumper child";
  if (words.some((part) => TEAM.has(part)) && only(BESIDE_TEAM)) return "placing team";
  return null;
}
