/** How tall a wrapped text is: programs that only read a file do not work it out. */

/** Points for one line of the default font, as Excel has them. */
export const LINE_HEIGHT = 15;
/** Bold letters are wider than the digits that column widths are counted in. */
export const BOLD = 1.1;

/** How many lines a text takes when it is broken between words. */
export function linesOf(text: string, characters: number): number {
  const width = Math.max(1, characters);
  return text.split("\n").reduce((lines, paragraph) => {
    let [own, used] = [1, 0];
    for (const word of paragraph.split(" ")) {
      const needed = used === 0 ? word.length : used + 1 + word.length;
      if (needed <= width) used = needed;
      else {
        own += (used === 0 ? 0 : 1) + Math.ceil(word.length / width) - 1;
        used = word.length % width || width;
      }
    }
    return lines + own;
  }, 0);
}
