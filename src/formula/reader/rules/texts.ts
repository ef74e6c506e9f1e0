/** Functions of texts. */
import { patternOf } from "../criteria";
import { isError, toNumber, toText, toTruth, VALUE, type Value } from "../values";
import { fromTexts, fromValues, givenIn, passing, ANY_NUMBER, type Rule } from "./rule";

/** Spaces at the ends go, and all but one between words; other white space stays. */
const trimmed = (text: string): string => text.replace(/ +/g, " ").replace(/^ | $/g, "");

const substituted = (text: string, before: string, after: string, which?: number): string => {
  if (before === "") return text;
  if (which === undefined) return text.replaceAll(before, () => after);
  const parts = text.split(before);
  if (which >= parts.length) return text;
  return `${parts.slice(0, which).join(before)}${after}${parts.slice(which).join(before)}`;
};

/** A text and whole numbers of at least `least`. */
const cut = (least: number, count: number, work: (text: string, ...numbers: number[]) => string): Rule =>
  fromValues(1, 1 + count, (...values) => {
    const text = toText(values[0]!);
    const numbers = values.slice(1).map(toNumber);
    const error = [text, ...numbers].find(isError);
    if (error) return error;
    const whole = (numbers as number[]).map(Math.trunc);
    return whole.some((one, i) => one < (i === 0 ? least : 0)) ? VALUE : work(text as string, ...whole);
  });

/** Where a text stands in another, counted from 1. */
const placed = (find: (text: string, sought: string, from: number) => number): Rule =>
  fromValues(
    2,
    3,
    passing((sought, within, from = 1) => {
      const start = toNumber(from);
      const text = toText(within!) as string;
      if (isError(start) || start < 1 || start > text.length + 1) return VALUE;
      const place = find(text, toText(sought!) as string, Math.trunc(start) - 1);
      return place < 0 ? VALUE : place + 1;
    }),
  );

const TEXTJOIN: Rule = {
  least: 3,
  most: ANY_NUMBER,
  bind: ([between, isSparing, ...args], compiler) => {
    const [separator, sparing] = [compiler.value(between!), compiler.value(isSparing!)];
    const pieces = args.map((arg) => compiler.piece(arg).any);
    return (here) => {
      const [joint, leavesOut] = [toText(separator(here)), toTruth(sparing(here))];
      if (isError(joint)) return joint;
      if (isError(leavesOut)) return leavesOut;
      const texts: string[] = [];
      for (const piece of pieces)
        for (const { value } of givenIn(piece(here))) {
          const text = toText(value);
          if (isError(text)) return text;
          if (text !== "" || !leavesOut) texts.push(text);
        }
      return texts.join(joint);
    };
  },
};

export const texts = {
  LEN: fromTexts(1, 1, (text) => text.length),
  TRIM: fromTexts(1, 1, trimmed),
  LOWER: fromTexts(1, 1, (text) => text.toLowerCase()),
  UPPER: fromTexts(1, 1, (text) => text.toUpperCase()),
  EXACT: fromTexts(2, 2, (one, other) => one === other),
  LEFT: cut(0, 1, (text, count = 1) => text.slice(0, count)),
  MID: cut(1, 2, (text, start = 1, count = 0) => text.slice(start - 1, start - 1 + count)),
  FIND: placed((text, sought, from) => text.indexOf(sought, from)),
  /** Without regard to case, and with ? and * for other characters. */
  SEARCH: placed((text, sought, from) => {
    const place = text.slice(from).search(new RegExp(patternOf(sought), "iu"));
    return place < 0 ? place : from + place;
  }),
  SUBSTITUTE: fromValues(
    3,
    4,
    passing((text, before, after, which) => {
      const number = which === undefined ? undefined : toNumber(which);
      if (isError(number) || (number !== undefined && number < 1)) return VALUE;
      const [within, old, fresh] = [text!, before!, after!].map((one) => toText(one) as string) as [
        string,
        string,
        string,
      ];
      return substituted(within, old, fresh, number === undefined ? undefined : Math.trunc(number)) as Value;
    }),
  ),
  TEXTJOIN,
};
