/**
 * Columns that hand a row's cells and the clinic's numbers to one worksheet function, blanks answered before it; or say
 * in plain Excel what that function says.
 */
import { oursNamed } from "../../formula/ours";
import type { SettingName } from "../../settings/index";
import { call } from "../../worksheet/call";
import type { Cell } from "../../worksheet/cell";
import type { SheetFunction } from "../../worksheet/define";
import { CellError, SheetError } from "../../worksheet/error";
import { formula, quoted, type FormulaTemplate } from "../formula";
import type { Role } from "../role";
import { spelled } from "../spelling";
import { blankKept, isBlank, isBlankOrZero, isOnSheet, listed, whereSet } from "./guards";
import { isPlain, isTyped, numberIn, refusedText, settingIn, whereAll } from "./plain";
import type { Recipe, RowCells, RowProblem, Slots, Using } from "./recipe";

/** One cell that the function is given. */
export interface GivenCell {
  readonly role: Role;
  /** In reasons: "no water out", "water out must be one number of mL". */
  readonly called: string;
  /**
   * What an empty cell means.
   * - "blank": no answer.
   * - "blank or 0": no answer, and a 0 is an empty cell too.
   * - "left out": the function answers without it.
   */
  readonly missing: "blank" | "blank or 0" | "left out";
}

/** Rows that the function is not asked about. */
export interface Apart {
  /** What tells them from others. */
  readonly needs: Recipe["needs"];
  /** `answered` for rows that the function is asked about, something else for the others. */
  readonly template: (slots: Slots, using: Using, answered: FormulaTemplate) => FormulaTemplate;
  /** What stands there instead; null where the function is asked. */
  readonly answer: (row: RowCells, using: Using) => string | CellError | null;
  /** Why that stands there; null where nothing is missing. */
  readonly problem: (row: RowCells, answer: string | CellError) => RowProblem | null;
}

interface FunctionColumn {
  readonly of: SheetFunction;
  /** The same in plain Excel. */
  readonly plain: {
    /** What the function gives where its cells are numbers within its limits. */
    readonly answer: (slots: Slots, using: Using) => FormulaTemplate;
    /** What must be true of the cells; left out: each is a number within the limits of its argument. */
    readonly tests?: (slots: Slots) => readonly FormulaTemplate[];
    /** The first of the numbers must not be above the second. */
    readonly isAscending?: boolean;
  };
  /** The function's first arguments, in its order. */
  readonly cells: readonly GivenCell[];
  /** What follows them. */
  readonly numbers?: readonly SettingName[];
  /** Arguments between cells and numbers: as a formula writes them, and as they are. */
  readonly between?: (using: Using) => readonly { readonly written: string; readonly value: unknown }[];
  /** What stands there when a cell is missing. */
  readonly blank: string;
  /** The answer turned round: a loss instead of a difference. */
  readonly negated?: boolean;
  readonly apart?: Apart;
  /** Why somebody should look at a row that has an answer; null where nobody need. */
  readonly doubt?: (row: RowCells, answer: Cell, using: Using) => string | null;
}

type Worked = Pick<Recipe, "functions" | "needs" | "settings" | "template" | "answer" | "problem">;

const isMissing = ({ missing }: GivenCell, value: Cell | CellError): boolean => {
  if (missing === "left out" || value instanceof CellError) return false;
  const text = spelled(value);
  return text === "" || (missing === "blank or 0" && text === "0");
};

export function fromFunction(column: FunctionColumn): Worked {
  const { of, plain, cells, numbers = [], between = () => [], blank, negated = false, apart, doubt } = column;
  const guarded = cells.filter(({ missing }) => missing !== "left out");
  const names = of.order.map(({ name }) => name);

  function template(slots: Slots, using: Using): FormulaTemplate {
    const tests = guarded.map(({ role, missing }) => (missing === "blank" ? isBlank : isBlankOrZero)(slots[role]!));
    const isEmpty = tests.length === 1 && guarded[0]!.missing === "blank" ? tests[0]! : formula`OR(${listed(tests)})`;
    const said = isPlain(using) ? inPlain(slots, using) : called(slots, using);
    const answered = formula`IF(${isEmpty},${quoted(blank)},${said})`;
    return whereSet(numbers, using, apart ? apart.template(slots, using, answered) : answered);
  }

  function called(slots: Slots, using: Using): FormulaTemplate {
    const given = cells.map(({ role, missing }): FormulaTemplate =>
      missing === "left out" ? blankKept(slots[role]!) : [slots[role]!],
    );
    const others = [...between(using).map(({ written }) => written), ...numbers.map((name) => using.written(name))];
    const call = formula`${oursNamed(of.name)}(${listed([...given, ...others.map((text) => [text])])})`;
    return negated ? formula`0-${call}` : call;
  }

  function inPlain(slots: Slots, using: Using): FormulaTemplate {
    const limits = of.order.map(({ param }) => param.plain);
    const before = cells.length + between(using).length;
    const written = numbers.map((name) => using.written(name));
    const [low, high] = written;
    const isCrossable = plain.isAscending && high !== undefined && written.some(isOnSheet);
    return whereAll(
      [
        ...(plain.tests?.(slots) ?? cells.flatMap(({ role }, i) => numberIn(slots[role]!, limits[i]))),
        ...written.flatMap((number, i) => settingIn(number, limits[before + i])),
        ...(isCrossable ? [formula`${low!}<=${high}`] : []),
      ],
      plain.answer(slots, using),
    );
  }

  function answer(row: RowCells, using: Using): Cell | SheetError | CellError {
    const instead = apart?.answer(row, using) ?? null;
    if (instead !== null) return instead;
    const values = cells.map(({ role }) => row[role] ?? null);
    const error = values.find((value, i) => value instanceof CellError && cells[i]!.missing !== "left out");
    if (error !== undefined) return error;
    if (cells.some((cell, i) => isMissing(cell, values[i]!))) return blank;
    if (isPlain(using)) {
      const faulty = values.find((value) => value instanceof CellError);
      if (faulty) return faulty;
      const text = values.findIndex(isTyped);
      if (text >= 0) return refusedText(names[text]!);
    }
    const others = [...between(using).map(({ value }) => value), ...numbers.map((name) => using.value(name))];
    const found = call(of, [...values, ...others]) as Cell | SheetError;
    return negated && typeof found === "number" ? 0 - found : found;
  }

  /** A function's sentence, with the columns called as people call them; the only column's name may be left out. */
  const inTheirWords = (error: SheetError): string =>
    (cells.length === 1 && error.isWhole ? error.bare() : error).said({
      argument: (name) => cells[names.indexOf(name)]?.called ?? name,
    });

  function problem(row: RowCells, using: Using): RowProblem | null {
    const instead = apart?.answer(row, using) ?? null;
    if (instead !== null) return apart!.problem(row, instead);
    const found = answer(row, using);
    const severity = "no answer";
    if (found instanceof CellError) {
      const faulty = cells.find(({ role }) => row[role] instanceof CellError);
      return { severity, shows: found.code, reason: `${faulty!.called} is an error` };
    }
    if (found instanceof SheetError) return { severity, shows: found.code, reason: inTheirWords(found), error: found };
    if (found === blank || found === "" || found === null) {
      const empty = cells.find((cell) => isMissing(cell, row[cell.role] ?? null)) ?? guarded[0]!;
      return { severity, shows: String(found ?? ""), reason: `no ${empty.called}` };
    }
    const why = doubt?.(row, found, using) ?? null;
    const shows = typeof found === "number" ? "a figure" : String(found);
    return why === null ? null : { severity: "doubt", shows, reason: why };
  }

  return {
    functions: [of.name],
    needs: [...cells.map(({ role }) => ({ role, optional: false })), ...(apart?.needs ?? [])],
    settings: () => numbers,
    template,
    answer,
    problem,
  };
}
