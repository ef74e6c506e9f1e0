/** One function of Excel: how many arguments it takes, and how it is made ready for a column of rows. */
import type { Node } from "../../tree";
import { Block, type Any } from "../cells";
import type { Piece, Work } from "../piece";
import { isError, toNumber, toText, type Value } from "../values";
import type { CellError } from "../../../worksheet/error";

/** Makes arguments ready for a column of rows (compile.ts); what is not known is thrown as NotKnown. */
export interface Compiler {
  /** What is to be one value. */
  readonly value: (node: Node) => Work<Value>;
  /** What may be many. */
  readonly piece: (node: Node) => Piece;
  /** The block that an argument always stands for. */
  readonly range: (node: Node) => Block;
  readonly around: {
    /** The day that counts as today; undefined where nobody has said which. */
    readonly today: number | undefined;
  };
  /** What a rule's result hangs on beside the cells that it reads: its own row's number, how far a range goes. */
  readonly hangsOn: { place: boolean; extent: boolean };
}

export interface Rule {
  readonly least: number;
  readonly most: number;
  readonly bind: (args: readonly Node[], compiler: Compiler) => Work;
}

export const ANY_NUMBER = 255;

/** From single values, errors and all. */
export const fromValues = (least: number, most: number, work: (...values: Value[]) => Value): Rule => ({
  least,
  most,
  bind: (args, compiler) => {
    const pieces = args.map((arg) => compiler.value(arg));
    if (pieces.length === 1) {
      const only = pieces[0]!;
      return (here) => work(only(here));
    }
    return (here) => work(...pieces.map((piece) => piece(here)));
  },
});

/** The first error among the arguments is the answer. */
export const passing =
  (work: (...values: Exclude<Value, CellError>[]) => Value) =>
  (...values: Value[]): Value =>
    values.find(isError) ?? work(...(values as Exclude<Value, CellError>[]));

export const fromNumbers = (least: number, most: number, work: (...numbers: number[]) => Value): Rule =>
  fromValues(least, most, (...values) => {
    const numbers = values.map(toNumber);
    return numbers.find(isError) ?? work(...(numbers as number[]));
  });

export const fromTexts = (least: number, most: number, work: (...texts: string[]) => Value): Rule =>
  fromValues(least, most, (...values) => {
    const texts = values.map(toText);
    return texts.find(isError) ?? work(...(texts as string[]));
  });

/** A value of an argument; in cells, texts and TRUE are no numbers, and blanks are passed over. */
export interface Given {
  readonly value: Value;
  readonly isInCell: boolean;
}

/** All values of all arguments, in order. */
export function* givenIn(found: Any): Generator<Given> {
  if (found instanceof Block) for (const value of found.values()) yield { value, isInCell: true };
  else if (Array.isArray(found))
    for (const row of found as readonly (readonly Value[])[]) for (const value of row) yield { value, isInCell: true };
  else yield { value: found as Value, isInCell: false };
}

/** From all values of cells and arguments alike. */
export const fromGiven = (least: number, work: (given: readonly Given[]) => Value): Rule => ({
  least,
  most: ANY_NUMBER,
  bind: (args, compiler) => {
    const pieces = args.map((arg) => compiler.piece(arg).any);
    return (here) => work(pieces.flatMap((piece) => [...givenIn(piece(here))]));
  },
});
