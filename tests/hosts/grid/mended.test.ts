/** Faults of the engine's formula reader: still there without us, gone with us. */
import { LexerNode, LexerTreeBuilder } from "@univerjs/engine-formula";
import { expect, it } from "vitest";
import { mendReader } from "../../../taskpane/workbook/embedded/mended";

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

it("are faults of this version", () => {
  const { told, expected } = afterwards("C", "D");
  expect(told).not.toBe(expected);
  expect(moved()).toBe('="a"b"&A2');
});

it("are mended", () => {
  mendReader();
  const { told, expected } = afterwards("E", "F");
  expect(told).toBe(expected);
  expect(moved()).toBe('="a""b"&A2');
});
