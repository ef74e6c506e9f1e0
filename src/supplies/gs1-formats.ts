/** What the value behind each of GS1's identifiers consists of, from the generated table. */
import { gs1Formats } from "./generated/gs1-formats";

export interface Part {
  /** N: digits; X: GS1's character set 82; Y: set 39; Z: base64url. */
  readonly type: "N" | "X" | "Y" | "Z";
  readonly least: number;
  readonly most: number;
  readonly optional: boolean;
  readonly check: "csum" | "yymmdd" | "yymmd0" | "hhmi" | undefined;
}

export interface Format {
  readonly parts: readonly Part[];
  /** How long all parts are together at most. */
  readonly most: number;
  /** One length is laid down for it: it needs no separator behind it. */
  readonly closed: boolean;
}

const PART = /^(\[?)([NXYZ])(\.\.)?(\d+)\]?(?:,(\w+))?$/;

function partOf(text: string): Part {
  const [, bracket, type, upTo, length, check] = PART.exec(text)!;
  const most = Number(length);
  return {
    type: type as Part["type"],
    least: upTo ? 1 : most,
    most,
    optional: bracket !== "",
    check: check as Part["check"],
  };
}

/** `3100-3105` stands for six. */
function identifiersIn(text: string): string[] {
  const [first, last = first] = text.split("-") as [string, string?];
  return Array.from({ length: Number(last) - Number(first) + 1 }, (_, i) =>
    String(Number(first) + i).padStart(first.length, "0"),
  );
}

export const formats: ReadonlyMap<string, Format> = new Map(
  gs1Formats.flatMap((line) => {
    const [format, ids] = line.split(" = ") as [string, string];
    const closed = format.startsWith("*");
    const parts = format.replace("*", "").split(" ").map(partOf);
    const most = parts.reduce((sum, part) => sum + part.most, 0);
    return ids
      .split(" ")
      .flatMap((id) => identifiersIn(id).map((one): [string, Format] => [one, { parts, most, closed }]));
  }),
);
