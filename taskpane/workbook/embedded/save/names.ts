/** Names that were made here, and names of the file that stand for other cells now. */
import type { DefinedNameEdit, OpenedWorkbook } from "../../package";
import type { Engine } from "../engine";
import { toFile } from "../formulas/dialect";
import { readNames, type Readers } from "../formulas/readable";
import { engineNames, refersTo, TODAY_IN_GRID } from "../book/names";
import type { GridWorkbookPort } from "../book/workbook";

/** @param now the same readers with the tables as they stand now */
export function nameEdits(
  engine: Engine,
  workbook: GridWorkbookPort,
  opened: OpenedWorkbook,
  atOpening: Readers,
  now: Readers,
): DefinedNameEdit[] {
  const known = new Set(opened.definedNames.map((name) => name.name.toLowerCase()));
  const all = engineNames(engine, workbook.unit);
  const held = new Map(all.map((name) => [name.name.toLowerCase(), refersTo(name)]));
  const added = all
    .filter((name) => !known.has(name.name.toLowerCase()))
    .map((name) => ({
      name: name.name,
      text: workbook.namesForToday.has(name.name.toLowerCase()) ? "TODAY()" : toFile(refersTo(name).slice(1)),
    }));
  return [...added, ...changedNames(opened, held, atOpening, now)];
}

/** `Tubes[Id]` in the file follows its table by itself; `$A$2:$A$9` has to be written anew. */
function changedNames(
  opened: OpenedWorkbook,
  held: ReadonlyMap<string, string>,
  atOpening: Readers,
  now: Readers,
): DefinedNameEdit[] {
  const read = (readers: Readers) => readNames(opened.definedNames, readers).named;
  const [before, after] = [read(atOpening), read(now)];
  const spellings = new Map<string, number>();
  for (const { name } of opened.definedNames) {
    spellings.set(name.toLowerCase(), (spellings.get(name.toLowerCase()) ?? 0) + 1);
  }
  return before.flatMap(({ name, text }, index) => {
    const isTwice = spellings.get(name.name.toLowerCase())! > 1;
    const is = held.get(name.name.toLowerCase())?.slice(1);
    // spelled as at opening, as the grid spells today, or as the file's own words mean it now
    const isKept = is === text || `=${is}` === TODAY_IN_GRID || is === after[index]!.text;
    if (text === null || is === undefined || isTwice || isKept) return [];
    return [{ name: name.name, ...(name.sheetName !== undefined && { sheetName: name.sheetName }), text: toFile(is) }];
  });
}
