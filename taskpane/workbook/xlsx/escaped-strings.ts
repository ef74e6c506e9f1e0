/** ST_Xstring (ECMA-376 part 1, 22.9.2.19): characters that XML forbids stand as _xHHHH_, and so does a text that looks like it. */
import { isForbidden } from "./xml/encoding";

export function decodeEscapes(text: string): string {
  if (!text.includes("_x")) return text;
  let decoded = "";
  let from = 0;
  for (let at = text.indexOf("_x"); at >= 0; at = text.indexOf("_x", at)) {
    if (!isEscape(text, at)) {
      at++;
      continue;
    }
    decoded += text.slice(from, at) + String.fromCharCode(Number.parseInt(text.slice(at + 2, at + 6), 16));
    from = at += 7;
  }
  return decoded + text.slice(from);
}

/** A carriage return is written so too, or every reader would make a line feed of it; in attributes line feeds as well. */
export function encodeEscapes(text: string, where: "text" | "attribute" = "text"): string {
  if (!needsEscapes(text)) return text;
  let encoded = "";
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    const isBreak = code === 13 || (where === "attribute" && (code === 10 || code === 9));
    if (isForbidden(code) || isBreak || isLoneSurrogate(text, at)) encoded += escape(code);
    else if (code === 95 && isEscape(text, at)) encoded += escape(95);
    else encoded += text[at];
  }
  return encoded;
}

function needsEscapes(text: string): boolean {
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code < 32 || code === 95 || code >= 0xd800) return true;
  }
  return false;
}

function escape(code: number): string {
  return `_x${code.toString(16).padStart(4, "0")}_`;
}

function isEscape(text: string, at: number): boolean {
  if (text[at] !== "_" || text[at + 1] !== "x" || text[at + 6] !== "_") return false;
  for (let index = at + 2; index < at + 6; index++)
    if (!"0123456789abcdefABCDEF".includes(text[index] as string)) return false;
  return true;
}

/** Half of a character, which no encoding can write. */
function isLoneSurrogate(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  if (code >= 0xd800 && code <= 0xdbff) return !isBetween(text.charCodeAt(at + 1), 0xdc00, 0xdfff);
  return isBetween(code, 0xdc00, 0xdfff) && !isBetween(text.charCodeAt(at - 1), 0xd800, 0xdbff);
}

function isBetween(code: number, first: number, last: number): boolean {
  return code >= first && code <= last;
}
