/** Faults of the engine's formula reader: still there without us, gone with us. */
import { LexerNode, LexerTreeBuilder } from "@univerjs/engine-formula";
import { expect, it } from "vitest";
import { mendReader } from "../../../taskpane/workbook/embedded/mends/spoilt-formulas";

const HALF_TYPED = ["=Caseload[[#This Row],[Tube '#]]*2", "=Caseload[[#This Row],[Tube", "=SUM(Caseload["];

const tree = (reader: LexerTreeBuilder, text: string): string => {
  const read = reader.treeBuilder(text);
  return read instanceof LexerNode ? JSON.stringify(read.serialize()) : String(read);
};

/** What a reader that met those makes of a plain formula, beside what a fresh one makes of it. The reader keeps what it has read by its text: so another column each time. */
function afterwards(column: string, other: string): { told: string; expected: string } {
  const reader = new LexerTreeBuilder();
  for (const text of HALF_TYPED) {
    reader.treeBuilder(text);
    reader.sequenceNodesBuilder(text);
  }
  const formula = (letter: string) => `=${letter}7*3+SUM(B2:B4)`;
  return {
    told: tree(reader, formula(column)),
    expected: tree(new LexerTreeBuilder(), formula(other)).replaceAll(`${other}7`, `${column}7`),
  };
}
const moved = () => new LexerTreeBuilder().moveFormulaRefOffset('="a""b"&A1', 0, 1);

/** What a formula with a name reads before and after the name comes to stand for more cells, and whether it knows of the name. */
function named(name: string): { readonly first: string; readonly later: string; readonly names: readonly string[] } {
  const reader = new LexerTreeBuilder();
  let stands = "S!$A$2:$A$4";
  const names = {
    unitId: "book",
    getValueByName: (_unit: string, word: string) => (word === name ? { name, formulaOrRefString: stands } : null),
    getDirtyDefinedNameMap: () => ({}),
    getSheetName: () => "S",
  };
  const read = () => reader.treeBuilder(`=COUNTIF(${name},B1)`, true, names as never) as LexerNode;
  const first = JSON.stringify(read().serialize());
  stands = "S!$A$2:$A$9";
  const later = read();
  return { first, later: JSON.stringify(later.serialize()), names: later.getDefinedNames() };
}

it("are faults of this version", () => {
  const { told, expected } = afterwards("C", "D");
  expect(told).not.toBe(expected);
  expect(moved()).toBe('="a"b"&A2');
  const { first, later, names } = named("Ids_of_old");
  expect(first).toContain("$A$4");
  expect(later).toBe(first);
  expect(names).toEqual([]);
});

it("are mended", () => {
  mendReader();
  const { told, expected } = afterwards("E", "F");
  expect(told).toBe(expected);
  expect(moved()).toBe('="a""b"&A2');
  const { first, later, names } = named("Ids");
  expect(first).toContain("$A$4");
  expect(later).toContain("$A$9");
  expect(names).toEqual(["Ids"]);
});
