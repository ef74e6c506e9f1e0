/** Which characters a name may hold (XML 1.0, productions 3 to 5; everything beyond ASCII is let through). */
const START = 1;
const INSIDE = 2;
const kinds = new Uint8Array(128);
for (let code = 0; code < 128; code++) {
  const isLetter = (code >= 65 && code <= 90) || (code >= 97 && code <= 122) || code === 95 || code === 58;
  const isDigit = code >= 48 && code <= 57;
  if (isLetter) kinds[code] = START | INSIDE;
  else if (isDigit || code === 45 || code === 46) kinds[code] = INSIDE;
}

/** NaN, the code beyond the end of a string, is no name character. */
export function isNameStart(code: number): boolean {
  return code >= 128 || ((kinds[code] ?? 0) & START) !== 0;
}

export function isNameCharacter(code: number): boolean {
  return code >= 128 || ((kinds[code] ?? 0) & INSIDE) !== 0;
}

function isSpace(code: number): boolean {
  return code === 32 || code === 10 || code === 13 || code === 9;
}

export function skipSpace(text: string, from: number): number {
  let index = from;
  while (isSpace(text.charCodeAt(index))) index++;
  return index;
}
