/** IF, AND, ISNUMBER and their like. */
import { Block } from "../cells";
import { single } from "../piece";
import { isError, NA, toTruth, VALUE, type Value } from "../values";
import { ANY_NUMBER, fromGiven, fromValues, passing, type Given, type Rule } from "./rule";

const IF: Rule = {
  least: 2,
  most: 3,
  bind: ([test, then, otherwise], compiler) => {
    const asked = compiler.value(test!);
    const yes = compiler.value(then!);
    const no = otherwise ? compiler.value(otherwise) : () => false;
    return (here) => {
      const truth = toTruth(asked(here));
      return isError(truth) ? truth : truth ? yes(here) : no(here);
    };
  },
};

const IFERROR: Rule = {
  least: 2,
  most: 2,
  bind: ([tried, otherwise], compiler) => {
    const [first, second] = [compiler.value(tried!), compiler.value(otherwise!)];
    return (here) => {
      const found = first(here);
      return isError(found) ? second(here) : found;
    };
  },
};

const CHOOSE: Rule = {
  least: 2,
  most: ANY_NUMBER,
  bind: ([which, ...choices], compiler) => {
    const index = compiler.value(which!);
    const pieces = choices.map((one) => compiler.value(one));
    return (here) => {
      const at = index(here);
      const place = typeof at === "number" ? Math.trunc(at) : at;
      if (isError(place)) return place;
      const piece = typeof place === "number" ? pieces[place - 1] : undefined;
      return piece ? piece(here) : VALUE;
    };
  },
};

/** Texts in cells do not count; written out they must be TRUE or FALSE. Without any truth it is #VALUE!. */
const truths =
  (combine: (all: readonly boolean[]) => boolean) =>
  (given: readonly Given[]): Value => {
    const known: boolean[] = [];
    for (const { value, isInCell } of given) {
      if (isError(value)) return value;
      if (isInCell && (value === null || typeof value === "string")) continue;
      const truth = toTruth(value);
      if (isError(truth)) return truth;
      known.push(truth);
    }
    return known.length === 0 ? VALUE : combine(known);
  };

const asks = (is: (value: Value) => boolean): Rule => fromValues(1, 1, is);

/** N and T of a block are those of its first cell. */
const ofFirst = (work: (value: Value) => Value): Rule => ({
  least: 1,
  most: 1,
  bind: ([arg], compiler) => {
    const { any } = compiler.piece(arg!);
    return (here) => {
      const found = any(here);
      return work(found instanceof Block ? found.at(0, 0) : single(found));
    };
  },
});

export const logic = {
  IF,
  IFERROR,
  CHOOSE,
  AND: fromGiven(
    1,
    truths((all) => all.every(Boolean)),
  ),
  OR: fromGiven(
    1,
    truths((all) => all.some(Boolean)),
  ),
  NOT: fromValues(1, 1, (value) => {
    const truth = toTruth(value);
    return isError(truth) ? truth : !truth;
  }),
  ISNUMBER: asks((value) => typeof value === "number"),
  ISTEXT: asks((value) => typeof value === "string"),
  ISBLANK: asks((value) => value === null),
  ISERROR: asks(isError),
  NA: { least: 0, most: 0, bind: () => () => NA } as Rule,
  TRUE: { least: 0, most: 0, bind: () => () => true } as Rule,
  FALSE: { least: 0, most: 0, bind: () => () => false } as Rule,
  N: ofFirst(passing((value) => (typeof value === "number" ? value : value === true ? 1 : 0))),
  T: ofFirst(passing((value) => (typeof value === "string" ? value : ""))),
};
