/** Shared formulas: a group's text stands with its first cell, the others move it to where they are. */
import { MovableFormula } from "../../../../src/formula/moving";

export interface SharedFormula {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

interface AnyFormula {
  readonly text: string;
  readonly group?: number;
  readonly ref?: string;
}

/** Shared formulas met so far, each taken apart when it is first needed. To be asked of every shared formula, in order. */
export class GroupTexts {
  private readonly met = new Map<number, SharedFormula>();
  private readonly movable = new Map<SharedFormula, MovableFormula>();

  constructor(private readonly ahead: ReadonlyMap<number, SharedFormula>) {}

  /** What a formula without a text of its own follows: two that follow the same mean the same, each where it stands. */
  followed({ group, text }: AnyFormula): SharedFormula | undefined {
    return text === "" ? this.named(group) : undefined;
  }

  /** What formulas of this group follow from here on. */
  named(group: number | undefined): SharedFormula | undefined {
    return group === undefined ? undefined : (this.met.get(group) ?? this.ahead.get(group));
  }

  /** The text of a formula for its own cell; remembers it where it is the first of a group. */
  textFor(row: number, column: number, formula: AnyFormula & ({ readonly type: string } | { readonly kind: string })) {
    const type = "type" in formula ? formula.type : formula.kind;
    if (type !== "shared" || formula.group === undefined) return formula.text;
    const known = this.met.get(formula.group);
    if (formula.text !== "" && (formula.ref !== undefined || !known)) {
      this.met.set(formula.group, { row, column, text: formula.text });
      return formula.text;
    }
    const shared = known ?? this.ahead.get(formula.group);
    if (!shared) return formula.text;
    let movable = this.movable.get(shared);
    if (!movable) this.movable.set(shared, (movable = new MovableFormula(shared.text)));
    return movable.moved(row - shared.row, column - shared.column);
  }
}
