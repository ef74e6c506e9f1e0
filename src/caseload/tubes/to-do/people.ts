/** Who can do what when the tube comes out or is changed. */
import type { Header } from "../../headers";
import { formula, type FormulaTemplate } from "../../../columns/formula";
import { is, isOneOf, wordIn } from "../../reading";
import type { trained } from "../../words";
import type { Slots } from "../../column";
import { keyColumn, type Step } from "./step";

/** Trained for something; `no`, `not known` and a blank are nobody. */
const someTraining: readonly (typeof trained)[number][] = ["put in spare", "hold opening only"];
/** What harms soon when the feed stops: hypoglycaemia, seizures, dehydration. Parts of the list's words, which people shorten. */
const urgentNeeds = ["insulin", "seizure", "fluid", "glucose"] as const;

/** SEARCH, because several stand in one cell. */
const needsIn = (cell: Slots): FormulaTemplate =>
  urgentNeeds
    .map((need) => formula`ISNUMBER(SEARCH("${need}",${cell("Cannot wait")}))`)
    .reduce((all, one) => formula`${all},${one}`);

/** What a carer never changes, by name. */
const notByCarer = (name: "GJ" | "J" | "bumper", header: Header): Step => ({
  word: `${name}: not by a carer`,
  when: (cell) =>
    formula`AND(${is(wordIn(cell("Changed by")), "carer")},${is(wordIn(cell(header)), name.toLowerCase())})`,
});

export const peopleKey = keyColumn("People", [
  {
    word: "nobody trained, cannot wait",
    when: (cell) =>
      formula`AND(NOT(${isOneOf(wordIn(cell("Trained for tube out")), someTraining)}),NOT(${is(wordIn(cell("Own tube-out plan")), "yes")}),OR(${needsIn(cell)}))`,
  },
  notByCarer("GJ", "Access"),
  notByCarer("J", "Access"),
  notByCarer("bumper", "Held by"),
]);
