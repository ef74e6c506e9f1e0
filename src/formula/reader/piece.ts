/** A piece of a formula, ready to be worked out. */
import type { Node } from "../tree";
import { Block, type Any } from "./cells";
import { VALUE, type Value } from "./values";
import type { Watcher } from "./watch";

/** Where a formula is worked out, and what LET has named there so far. */
export interface Here {
  readonly row: number;
  readonly named: Any[];
  /** Told what the formula looks up. */
  readonly watcher: Watcher;
}

/** Undefined in `Here.named`: not worked out yet. */
export type Work<T extends Any = Any> = (here: Here) => T;

export interface Piece {
  readonly node: Node;
  /** As one value. Ask `Compiler.value` for it: what may be many cells has none. */
  readonly value: Work<Value>;
  /** It may stand for more than one value: in a cell of its own it would fill others too. */
  readonly isMany?: boolean;
  /** As it is: cells stay cells. */
  readonly any: Work;
}

/** Another engine has to work this formula out. */
export class NotKnown extends Error {}

/** One value of what was worked out. */
export function single(found: Any): Value {
  if (found instanceof Block) return found.isOneCell ? found.at(0, 0) : VALUE;
  return Array.isArray(found) ? (found as readonly (readonly Value[])[])[0]![0]! : (found as Value);
}
