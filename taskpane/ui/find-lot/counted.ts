/** What was found, in one sentence each: the same on screen and on paper. */
import { lotKey } from "../../../src/lots/lot-text";
import { groups, type FoundLots } from "../../actions/find-lot";
import { findLot as words } from "../../texts/find-lot";

export function countedText({ found, looked }: FoundLots): string {
  const parts = groups.flatMap((group) => {
    const n = found.filter((row) => row.group === group).length;
    return n === 0 ? [] : [words.counted[group](n)];
  });
  return parts.length === 0 ? words.none(looked) : words.found(parts);
}

export function openText({ open }: FoundLots): string {
  const isBlank = open.every(({ why }) => why === "no lot");
  return isBlank ? words.noLot(open.length) : words.open(open.length);
}

/** Each lot as the lists write it, where one does; else as it was typed. */
export const writtenLots = ({ lots, found }: FoundLots): readonly string[] =>
  lots.map((lot) => found.find((row) => lotKey(row.lot) === lotKey(lot))?.lot ?? lot);
