import { BALLOONSTATE } from "../../balloon/balloonstate";
import { oursNamed } from "../../formula/ours";
import type { SettingName } from "../../settings/index";
import { settingNamed } from "../../settings/index";
import { call } from "../../worksheet/call";
import type { Cell } from "../../worksheet/cell";
import { CellError, SheetError } from "../../worksheet/error";
import { formula, quoted, type ColumnSlot, type FormulaTemplate } from "../formula";
import { spelled } from "../spelling";
import { NO_BALLOON } from "../state-words";
import { blankKept, isBlank, isBlankOrZero, whereSet } from "./guards";
import { hasNoBalloon, noBalloonProblem, unlessNoBalloon } from "./not-a-balloon";
import { isPlain, isTyped, numberIn, refusedText, settingIn, whereAll } from "./plain";
import type { Recipe, RowCells, Slots, Using } from "./recipe";

/** BALLOONSTATE's arguments, as people call their columns. */
const CALLED: Readonly<Record<string, string>> = { out: "water out", expected: "water put in" };

const NOT_MEASURED = "not measured";

/** What the function is given; the other two of its numbers are its own. */
const GIVEN: readonly SettingName[] = ["Fill_Small", "Loss_Small", "Loss_Large"];
export const heldByBalloonState: readonly SettingName[] = ["Loss_Half", "Over_Read"];

/** With the defaults alone the function decides, which also reads fills such as "5 mL". */
const isByDefault = (using: Using): boolean =>
  GIVEN.every((name) => using.written(name) === String(settingNamed(name).default));

const isMissing = (cell: Cell | CellError | undefined): boolean =>
  cell === undefined || (!(cell instanceof CellError) && spelled(cell) === "");
const isZero = (cell: Cell | CellError): boolean => !(cell instanceof CellError) && spelled(cell) === "0";

/** The loss to act on. A fill that is no plain number may be small or large: the smaller loss counts. */
const actionIn = (putIn: ColumnSlot, { written }: Using) =>
  formula`IF(ISNUMBER(${putIn}),IF(${putIn}<=${written("Fill_Small")},${written("Loss_Small")},${written("Loss_Large")}),MIN(${written("Loss_Small")},${written("Loss_Large")}))`;

function actionOf(putIn: Cell | CellError, { value }: Using): number {
  const [small, large] = [value("Loss_Small"), value("Loss_Large")];
  if (typeof putIn !== "number") return Math.min(small, large);
  return putIn <= value("Fill_Small") ? small : large;
}

/** BALLOONSTATE's rule in its order, by the clinic's numbers. */
function stateInPlain({ out, putIn }: Slots, using: Using): FormulaTemplate {
  const { written } = using;
  const [outLimits, putInLimits, actionLimits] = BALLOONSTATE.order.map(({ param }) => param.plain);
  const action = formula`IF(${putIn!}<=${written("Fill_Small")},${written("Loss_Small")},${written("Loss_Large")})`;
  const lost = formula`IF(ROUND(${putIn!}-${out!},9)>${action},"low","as filled")`;
  const half = formula`IF(${out!}<=ROUND(${putIn!}*${using.value("Loss_Half")},9),"half or less",${lost})`;
  const over = formula`IF(ROUND(${out!}-${putIn!},9)>${using.value("Over_Read")},"more than put in",${half})`;
  const state = whereAll(
    [
      ...numberIn(putIn!, putInLimits),
      ...(["Loss_Small", "Loss_Large"] as const).flatMap((name) => settingIn(written(name), actionLimits)),
    ],
    formula`IF(${out!}=0,"empty",${over})`,
  );
  const none = quoted(NOT_MEASURED);
  const found = whereAll(numberIn(out!, outLimits), formula`IF(OR(${isBlankOrZero(putIn!)}),${none},${state})`);
  return whereSet(GIVEN, using, formula`IF(${isBlank(out!)},${none},${found})`);
}

function stateOf(row: RowCells, using: Using): Cell | SheetError | CellError {
  const { out = null, putIn = null } = row;
  const found = stateByFunction(row, using);
  if (!isPlain(using)) return found;
  if (out instanceof CellError) return out;
  if (isMissing(out)) return NOT_MEASURED;
  if (isTyped(out)) return refusedText("out");
  if (found instanceof SheetError && found.about === "out") return found;
  if (putIn instanceof CellError) return putIn;
  if (isMissing(putIn) || isZero(putIn)) return NOT_MEASURED;
  return isTyped(putIn) ? refusedText("expected") : found;
}

function stateByFunction({ out = null, putIn = null }: RowCells, using: Using) {
  const action = isByDefault(using) ? [] : [actionOf(putIn, using)];
  return call(BALLOONSTATE, [out, putIn, ...action]) as Cell | SheetError;
}

function stateIn(slots: Slots, using: Using): FormulaTemplate {
  if (isPlain(using)) return stateInPlain(slots, using);
  const { out, putIn } = slots;
  const cells = formula`${blankKept(out!)},${blankKept(putIn!)}`;
  if (isByDefault(using)) return formula`${oursNamed(BALLOONSTATE.name)}(${cells})`;
  return whereSet(GIVEN, using, formula`${oursNamed(BALLOONSTATE.name)}(${cells},${actionIn(putIn!, using)})`);
}

export const balloon: Recipe = {
  key: "balloon",
  group: "Balloon",
  header: "Balloon",
  label: "Balloon",
  help: "What the last balloon check found, in a word: empty, half or less, low, more than put in, as filled.",
  caution:
    "The word is as old as the check: look at its day. Balloons burst without warning: figures that agree do not show that a balloon will hold.",
  needs: [
    { role: "out", optional: false },
    { role: "putIn", optional: false },
    { role: "kind", optional: true },
  ],
  needsKinds: false,
  functions: ["BALLOONSTATE"],
  settings: () => [...GIVEN, ...heldByBalloonState],
  usesAsOf: false,
  usesDates: false,
  format: "General",
  words: ["empty", "half or less", "low", "more than put in", NO_BALLOON, NOT_MEASURED, "as filled"],
  template: (slots, using) => unlessNoBalloon(stateIn(slots, using), slots, using),
  earlier: stateIn,
  answer: (row, using) => (hasNoBalloon(row, using) ? NO_BALLOON : stateOf(row, using)),
  problem: (row, using) => {
    if (hasNoBalloon(row, using)) return noBalloonProblem(row);
    const answer = stateOf(row, using);
    if (answer instanceof SheetError) {
      const reason = answer.said({ argument: (name) => CALLED[name] ?? name });
      return { severity: "no answer", shows: answer.code, reason };
    }
    if (answer instanceof CellError) {
      const reason = `${row.out instanceof CellError ? CALLED.out : CALLED.expected} is an error`;
      return { severity: "no answer", shows: answer.code, reason };
    }
    if (answer !== NOT_MEASURED) return null;
    const reason = isMissing(row.out) ? "no water out" : "no water put in";
    return { severity: "no answer", shows: NOT_MEASURED, reason };
  },
};
