/** Figures of a conversion in sentences, the same before and after. */
import { count, figure } from "../../texts/pieces";
import type { Reading } from "./interface";

/** "1,380 read, 22 not; 14 blank." and what needs a look. */
export function readingSentences({ read, notRead, blank, doubtful }: Reading): readonly string[] {
  const blanks = blank === 0 ? "" : `; ${figure(blank)} blank`;
  return [
    `${figure(read)} read, ${notRead === 0 ? "none" : figure(notRead)} not${blanks}.`,
    ...(doubtful === 0
      ? []
      : [`${count(doubtful, "size was", "sizes were")} read but ${doubtful === 1 ? "needs" : "need"} a look.`]),
  ];
}
