/** Lengths of openings and of low-profile tubes as arguments, the same in every function. */
import { number } from "../worksheet/parameters";

/** Longest length read, cm. From memory: none for this use is longer; a larger number is rather in mm. */
export const LONGEST = 10;

const unitTexts = ["centimetres", "centimeters"];

const rule = { unit: "cm", unitTexts, above: 0, max: LONGEST, zeroIsBlank: true } as const;

export const lengthCm = (help: string) => number(help, rule);

export const optionalLengthCm = (help: string, fallbackHelp: string) =>
  number(help, { ...rule, optional: true, fallbackHelp });

/** Slack above the mean of both readings, cm: clinic settings, from memory (0.2 to 0.5). */
export const SLACK_LEAST = 0.2;
export const SLACK_MOST = 0.5;
