/** LET names that the rules of gaps stand on; a formula binds only those that it uses. */
import { formula, type FormulaTemplate } from "../../../columns/formula";
import type { Slots } from "../../column";
import { dayState, is, numbered, wordIn } from "../../reading";
import { ageClassIn } from "../kind";
import type { Gap } from "./gap";

const names = (cell: Slots): Readonly<Record<string, FormulaTemplate | string>> => ({
  status: wordIn(cell("Status")),
  access: wordIn(cell("Access")),
  held: wordIn(cell("Held by")),
  from: wordIn(cell("Known from")),
  shape: wordIn(cell("Shape")),
  ...numbered("stoma", cell("Stoma made")),
  stomais: dayState("stoma"),
  ...numbered("in", cell("Device in")),
  inis: dayState("in"),
  ...numbered("born", cell("Born")),
  bornis: dayState("born"),
  age: ageClassIn,
  ...numbered("size", cell("Size Fr")),
  ...numbered("length", cell("Length cm")),
  ...numbered("fill", cell("Fill mL")),
  ...numbered("most", cell("Most mL")),
  ...numbered("booked", cell("Booked for")),
  ...numbered("weight", cell("Weight kg")),
  ...numbered("weighed", cell("Weighed on")),
  weighedis: dayState("weighed"),
  ...numbered("then", cell("Weight then kg")),
  changer: wordIn(cell("Changed by")),
  ...numbered("own", cell("Own interval months")),
  ...numbered("team", cell("Date set by placing team")),
  ...numbered("place", cell("Newest")),
  ...numbered("due", cell("Change due")),
  limit: formula`IF(${is("access", "g")},Lim_Balloon_G,IF(${is("access", "gj")},Lim_GJ,Lim_Balloon_J))`,
  person: cell("Person"),
  key: cell("Key"),
  water: cell("Balloon"),
  ...(cell.has("Turning") && { turningcell: cell("Turning") }),
  ...(cell.has("Lying cm") && {
    ...numbered("lying", cell("Lying cm")),
    ...numbered("sitting", cell("Sitting cm")),
  }),
  ...(cell.has("Site") && { site: wordIn(cell("Site")), sitecell: cell("Site") }),
  ...(cell.has("Spare lot") && {
    spare: wordIn(cell("Spare at home")),
    sparelot: cell("Spare lot"),
    alike: is("spare", "same size"),
    ...numbered("sparefr", cell("Spare Fr")),
    ...numbered("sparecm", cell("Spare cm")),
    ...numbered("expires", cell("Spare expires")),
  }),
});

/** Of all LET names those that the gaps use, and those that these stand on. */
export function namesUsed(cell: Slots, gaps: readonly Gap[]): Readonly<Record<string, FormulaTemplate | string>> {
  const all = Object.entries(names(cell));
  const words = (template: FormulaTemplate | string): string =>
    typeof template === "string" ? template : template.map((part) => (typeof part === "string" ? part : " ")).join("");
  let asked = gaps.map(({ when }) => words(when)).join(" ");
  const used = new Set<string>();
  /* A name stands on those before it, so the last is asked first. */
  for (const [name, value] of [...all].reverse()) {
    if (!new RegExp(`(?<![\\w.])${name}(?![\\w.(])`).test(asked)) continue;
    used.add(name);
    asked += ` ${words(value)}`;
  }
  return Object.fromEntries(all.filter(([name]) => used.has(name)));
}
