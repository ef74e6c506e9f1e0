/**
 * Where the engine (0.25.1) does the same work over and over. A text inside a formula ("balloon") is tried as a number,
 * a date and an amount of money each time that the formula is worked out; a text that was none of these stays none. Of
 * a caseload's recalculation this was a quarter (measured).
 */
import { ValueObjectFactory } from "@univerjs/engine-formula";

/** Texts of formulas are few and come again; more are texts of cells that pass by. */
const KEPT = 20_000;

let isHastened = false;

export function hastenTexts(): void {
  if (isHastened) return;
  isHastened = true;
  const factory = ValueObjectFactory as unknown as {
    create(raw: unknown, ignoresNumbers?: boolean): { isString?(): boolean };
  };
  const { create } = factory;
  const plain = new Set<string>();
  factory.create = function (raw, ignoresNumbers = false) {
    if (typeof raw !== "string" || ignoresNumbers) return create.call(factory, raw, ignoresNumbers);
    if (plain.has(raw)) return create.call(factory, raw, true);
    const value = create.call(factory, raw, false);
    if (value.isString?.()) {
      if (plain.size >= KEPT) plain.clear();
      plain.add(raw);
    }
    return value;
  };
}
