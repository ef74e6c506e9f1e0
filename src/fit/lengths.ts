/** Lengths of openings and of low-profile tubes as arguments, the same in every function. */
import type { SheetError } from "../worksheet/error";
import { argument, fault } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
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

export const mostSlack = () =>
  number("Most slack above the larger reading", { unit: "cm", min: 0, max: 5, fallback: SLACK_MOST });

export const slacksCross = (least: string): SheetError =>
  fault`${argument(least)} is above ${argument("most")}: check both settings`;

/** Whether a low-profile tube goes with an opening; the limits themselves are in range. */
export function fitOf(
  length: number,
  lying: number,
  sitting: number,
  least: number,
  most: number,
): "too short" | "too long" | "in range" {
  const larger = Math.max(lying, sitting);
  if (length < larger || length < rounded((lying + sitting) / 2 + least)) return "too short";
  return length > rounded(larger + most) ? "too long" : "in range";
}
