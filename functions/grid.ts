/**
 * Registration in the embedded grid's engine, derived from the definitions.
 *
 * The engine has a short way to register a function; it was measured to hand a blank over as 0 and one cell as a block,
 * to turn returned text such as "1/2" into a date, and to leave every cell of the workbook without a value after one
 * exception. So each function is a subclass of the engine's own BaseFunction instead, and nothing is thrown out of it.
 */
import { NAMESPACE } from "../src/formula/ours";
import { monthsLater } from "../src/formula/reader/rules/dates";
import { toNumber } from "../src/formula/reader/values";
import {
  ArrayValueObject,
  BaseFunction,
  BooleanValueObject,
  ErrorValueObject,
  FunctionType,
  NumberValueObject,
  StringValueObject,
  type BaseValueObject,
  type IFunctionInfo,
} from "@univerjs/engine-formula";
import type { ErrorType } from "@univerjs/engine-formula";
import type { Cell } from "../src/worksheet/cell";
import { call } from "../src/worksheet/call";
import type { SheetFunction } from "../src/worksheet/define";
import { CellError, SheetError } from "../src/worksheet/error";

const gridName = (definition: SheetFunction): string => `${NAMESPACE}.${definition.name}`;

type Raw = Cell | CellError;

function toRaw(value: BaseValueObject | null | undefined | void): Raw {
  if (!value || value.isNull()) return null;
  if (value.isError()) return new CellError((value as ErrorValueObject).getErrorType());
  const plain = value.getValue();
  return typeof plain === "number" || typeof plain === "boolean" ? plain : String(plain);
}

function toArgument(value: BaseValueObject | null | undefined | void): Raw | Raw[][] {
  if (!value?.isArray()) return toRaw(value);
  const block = value as ArrayValueObject;
  const rows = block.getRowCount();
  const columns = block.getColumnCount();
  if (rows === 1 && columns === 1) return toRaw(block.get(0, 0));
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (_, column) => toRaw(block.get(row, column))),
  );
}

const errorValue = (code: string, sentence = ""): ErrorValueObject =>
  ErrorValueObject.create(code as ErrorType, sentence);

function toValue(result: Cell | SheetError): BaseValueObject {
  if (result instanceof SheetError) return errorValue(result.code, result.message);
  if (typeof result === "number") return NumberValueObject.create(result);
  if (typeof result === "boolean") return BooleanValueObject.create(result);
  return StringValueObject.create(result ?? "");
}

const toBlock = (rows: readonly (readonly (Cell | SheetError)[])[]): BaseValueObject =>
  blockOf(rows.map((row) => row.map(toValue)));

function blockOf(rows: BaseValueObject[][]): BaseValueObject {
  const columns = rows[0]?.length ?? 0;
  if (rows.length === 0 || columns === 0) return errorValue("#VALUE!", "gives no cells");
  if (rows.length === 1 && columns === 1) return rows[0]![0]!;
  return ArrayValueObject.create({
    calculateValueList: rows,
    rowCount: rows.length,
    columnCount: columns,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}

type EngineClass = new (name: string) => BaseFunction;

function engineClass(definition: SheetFunction): EngineClass {
  return class extends BaseFunction {
    /** Otherwise the literal "1/2" arrives as a day number. */
    override isArgumentsIgnoreNumberPattern(): boolean {
      return true;
    }

    override calculate(...values: BaseValueObject[]): BaseValueObject {
      try {
        const result = call(definition, values.map(toArgument));
        return result instanceof SheetError || !Array.isArray(result) ? toValue(result as Cell) : toBlock(result);
      } catch {
        return errorValue("#VALUE!", "this function failed; please report it");
      }
    }
  };
}

/**
 * What the name As_of stands for in the grid. TODAY() itself is volatile: in eight columns of 5,000 rows it made each edit
 * six times slower (measured). A plain number will not do either: the engine writes it into the formulas that use the
 * name and never finds them again (measured).
 */
export const GRID_TODAY = "GRID.TODAY";

let today = 0;

/** A day number; who sets it has the engine work everything out anew. */
export const setGridToday = (serial: number): void => void (today = serial);

class GridToday extends BaseFunction {
  override calculate(): BaseValueObject {
    return NumberValueObject.create(today);
  }
}

/**
 * EDATE as Excel has it: a day that the month does not have becomes its last day (Microsoft's page on EDATE; OpenFormula
 * 6.10.8). The engine's own (Univer 0.25.1) goes over into the next month: 31 August and 3 months gives 1 December.
 */
class MonthsLater extends BaseFunction {
  override calculate(start: BaseValueObject, months: BaseValueObject): BaseValueObject {
    const [days, count] = [toArgument(start), toArgument(months)];
    if (Array.isArray(count)) return refusedMonths;
    return Array.isArray(days) ? blockOf(days.map((row) => row.map((day) => later(day, count)))) : later(days, count);
  }
}

const refusedMonths = errorValue("#VALUE!");

function later(day: Raw, months: Raw): BaseValueObject {
  const [from, count] = [toNumber(day), toNumber(months)];
  const found = typeof from !== "number" ? from : typeof count !== "number" ? count : monthsLater(from, count);
  return found instanceof CellError ? errorValue(found.code) : toValue(found);
}

/** For the formula engine's configuration; there before the first calculation. */
export const gridFunctions = (definitions: readonly SheetFunction[]): [EngineClass, string][] => [
  ...definitions.map((definition): [EngineClass, string] => [engineClass(definition), gridName(definition)]),
  [GridToday, GRID_TODAY],
  [MonthsLater, "EDATE"],
];

/** Argument help, shown while a formula is typed. */
export const gridDescriptions = (definitions: readonly SheetFunction[]): IFunctionInfo[] =>
  definitions.map((definition) => ({
    functionName: gridName(definition),
    functionType: FunctionType.User,
    description: definition.documentation?.details ?? definition.summary,
    abstract: definition.summary,
    functionParameter: definition.order.map(({ name, param }) => ({
      name,
      detail: [param.help, param.unit, param.limits, param.words?.join(", ")].filter(Boolean).join("; "),
      example: param.mode === "choice" ? `"${param.words?.[0] ?? ""}"` : param.mode === "range" ? "A2:A20" : "A2",
      require: param.optional ? 0 : 1,
      repeat: 0,
    })),
  }));
