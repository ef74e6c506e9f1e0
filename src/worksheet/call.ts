/**
 * The one boundary between hosts and functions. Every host calls this and only this.
 *
 * It never throws; nothing but finite numbers, texts, booleans and SheetErrors leaves it (a null or NaN inside an
 * array shows as 0 in Excel: office-js issue 1503); one cell in gives one value out, not a block of one.
 */
import type { Cell, Matrix } from "./cell";
import type { Param, PlainNumbers, Row, SheetFunction } from "./define";
import { argument, CellError, fault, notAvailable, SheetError } from "./error";
import { isPlain } from "./parameters";

/** What a call gives to a host; errors inside a block are `E`. */
export type Answer<E = SheetError> = Exclude<Cell, null> | SheetError | (Exclude<Cell, null> | E)[][];

type Single = Exclude<Cell, null> | SheetError;

/** An argument that has a cell of its own for every row. */
interface Varying {
  /** Its place among the arguments. */
  readonly place: number;
  readonly name: string;
  readonly param: Param<unknown>;
  readonly plain: PlainNumbers | undefined;
  readonly isSubject: boolean;
  readonly block: Matrix<unknown>;
}

/** The arguments of one call beside those that are the same for every row: these stand in the definition's own row. */
interface Reading {
  /** In the order of the arguments, up to one that stops every row. */
  readonly varying: readonly Varying[];
  /** The first argument that is longer than one cell: it gives the result its shape. */
  readonly shape: Varying | undefined;
  /** A blank or faulty argument that is the same for every row: it answers unless one before it does. */
  readonly stopped: Single | undefined;
}

/** Stands for "this row is blank": its subject is missing. */
const BLANK_ROW = Symbol("blank row");

/** Texts by which some hosts hand errors over; functions/excel.ts can write a sentence behind the code. */
const ERROR_TEXT =
  /^(#(?:N\/A|VALUE!|REF!|NAME\?|DIV\/0!|NUM!|NULL!|SPILL!|CALC!|FIELD!|BUSY!|GETTING_DATA|UNKNOWN!|CONNECT!|BLOCKED!))(?: .*)?$/;

/** The code of a plain cell that is an error. */
function errorCode(cell: unknown): string | undefined {
  if (typeof cell === "string") return cell.startsWith("#") ? ERROR_TEXT.exec(cell)?.[1] : undefined;
  return cell instanceof CellError ? cell.code : undefined;
}

/**
 * A cell without the object around it. Excel hands data types over as `{ type, basicValue }`: a formatted number or a text
 * is its plain value, a card, a picture or an array has an error there. Anything else that is an object is an error.
 */
function plainCell(cell: unknown): unknown {
  if (typeof cell !== "object" || cell === null || cell instanceof CellError) return cell;
  const { type, basicValue, code } = cell as { type?: unknown; basicValue?: unknown; code?: unknown };
  const isValue = typeof basicValue === "number" || typeof basicValue === "string" || typeof basicValue === "boolean";
  if (typeof type === "string" && type !== "Error" && isValue) return basicValue;
  return new CellError(typeof code === "string" ? code : typeof basicValue === "string" ? basicValue : "#VALUE!");
}

/**
 * Excel's own object about the call, which comes behind the arguments. Excel keeps functions.json for up to a day and
 * counts by it, so that the object lands in an optional argument that has come since (office-js issue 2777).
 */
const isInvocation = (raw: unknown): boolean =>
  typeof raw === "object" && raw !== null && !Array.isArray(raw) && ("functionName" in raw || "setResult" in raw);

const anError = new SheetError("is an error");
const passedOn = (name: string, code: string): SheetError =>
  (code === "#N/A" ? notAvailable("is #N/A") : anError).of(name);

/** Functions, symbols and big integers, which only another program can hand over; reading them would throw. */
function isForeign(cell: unknown): boolean {
  const type = typeof cell;
  return type !== "string" && type !== "number" && type !== "boolean" && type !== "undefined" && cell !== null;
}
const foreign = (name: string): SheetError => fault`${argument(name)} must be a number, a text, or yes or no`;

const isBlank = (cell: unknown): boolean =>
  cell === null || cell === undefined || cell === "" || (typeof cell === "string" && cell.trim() === "");

/** One cell of an "each" or "choice" argument: a value for `compute`, a SheetError, or BLANK_ROW. */
function readCell(name: string, param: Param<unknown>, isSubject: boolean, given: unknown): unknown {
  const cell = plainCell(given);
  let value: unknown = null;
  if (typeof cell === "number") {
    value = param.read(cell);
  } else if (!isBlank(cell)) {
    const code = errorCode(cell);
    if (code !== undefined) return passedOn(name, code);
    if (isForeign(cell)) return foreign(name);
    value = param.read(cell as Exclude<Cell, null>);
  }
  if (value === null) {
    if (param.ifBlank !== undefined) return param.ifBlank;
    if (isSubject) return BLANK_ROW;
    return param.optional ? param.fallback : fault`${argument(name)} is missing`;
  }
  return value instanceof SheetError ? value.of(name) : value;
}

/** A whole block; an error in it answers for the whole result. */
function readBlock(name: string, param: Param<unknown>, raw: unknown): unknown {
  const block: Matrix<unknown> = Array.isArray(raw) ? (raw as Matrix<unknown>) : [[raw]];
  let someFilled = false;
  let someTyped = false;
  for (const row of block) {
    for (const given of row) {
      if (typeof given === "number") {
        someFilled = true;
        continue;
      }
      const cell = plainCell(given);
      someTyped ||= cell !== given;
      const code = errorCode(cell);
      if (code !== undefined) return passedOn(name, code);
      if (isForeign(cell)) return foreign(name);
      someFilled ||= !isBlank(cell);
    }
  }
  if (!someFilled && param.optional) return param.fallback;
  const cells = someTyped ? block.map((row) => row.map(plainCell)) : block;
  const value = param.readAll!(cells as Matrix);
  return value instanceof SheetError ? value.of(name) : value;
}

const sizeOf = (block: Matrix<unknown>): string => `${block.length} x ${block[0]?.length ?? 0}`;

/** A one-cell block is one cell: some hosts hand `[[value]]` over for a single reference. */
const asBlock = (raw: unknown): Matrix<unknown> | undefined => {
  if (!Array.isArray(raw)) return undefined;
  const rows = raw as Matrix<unknown>;
  return rows.length === 1 && rows[0]?.length === 1 ? undefined : rows;
};
const asSingle = (raw: unknown): unknown => (Array.isArray(raw) ? (raw as Matrix<unknown>)[0]?.[0] : raw);

/** What a cell holds at most, in Excel and in files; a longer text shows as an error without a sentence. */
const LONGEST_TEXT = 32_767;

/** Lets only what every host can show out of a cell. */
function sound(value: unknown): Single {
  if (typeof value === "number")
    return Number.isFinite(value) ? value : new SheetError("the result is not a finite number");
  if (typeof value === "string" && value.length > LONGEST_TEXT) {
    return new SheetError(
      `the result is longer than a cell can hold (${LONGEST_TEXT} characters): shorten what goes in`,
    );
  }
  if (typeof value === "string" || typeof value === "boolean" || value instanceof SheetError) return value;
  return "";
}

/** How a host wants an error inside a block. */
type InBlock = (error: SheetError) => unknown;

const asItIs: InBlock = (error) => error;

/** One cell of a block. The type is the caller's: `call` promises what its host asked for. */
function soundIn(value: unknown, inBlock: InBlock): Single {
  const one = sound(value);
  return typeof one === "object" ? (inBlock(one) as Single) : one;
}

/** Can this row go out as it is? Nearly every one can. */
function isSound(row: Row, width: number): boolean {
  if (row.length !== width) return false;
  for (let i = 0; i < width; i++) {
    const cell = row[i];
    if (typeof cell === "number" ? !Number.isFinite(cell) : typeof cell !== "string" && typeof cell !== "boolean")
      return false;
  }
  return true;
}

const soundRow = (row: Row, width: number, inBlock: InBlock): Single[] =>
  isSound(row, width) ? (row as Single[]) : Array.from({ length: width }, (_, i) => soundIn(row[i], inBlock));

/** A rectangle: short rows are padded with "". */
function soundBlock(rows: readonly Row[], inBlock: InBlock): Single[][] {
  let width = 0;
  for (const row of rows) width = Math.max(width, row.length);
  return width === 0 ? [[""]] : rows.map((row) => soundRow(row, width, inBlock));
}

/** A row that is blank or at fault: the word or error first, "" beside it. */
const filledRow = (first: Single, width: number): Single[] => [first, ...new Array<Single>(width - 1).fill("")];

/**
 * @param inBlock how the host wants an error that stands inside a block, so that a long result is gone over once only;
 *   an error that is the whole answer stays a SheetError
 */
export function call<E = SheetError>(
  definition: SheetFunction,
  raw: readonly unknown[],
  inBlock: (error: SheetError) => E = asItIs as (error: SheetError) => E,
): Answer<E> {
  try {
    return answer(definition, raw, inBlock) as Answer<E>;
  } catch (fault) {
    return new SheetError(`could not be worked out (${fault instanceof Error ? fault.message : String(fault)})`);
  } finally {
    // A long column is not kept until the next call.
    definition.row.values.fill(undefined);
  }
}

function answer(definition: SheetFunction, raw: readonly unknown[], inBlock: InBlock): Answer {
  const reading = readArguments(definition, raw);
  if (reading instanceof SheetError) return reading;
  const { shape } = reading;

  const { shape: kind, oneCellWith } = definition.result;
  if (kind === "cell" || (oneCellWith !== undefined && definition.row.args[oneCellWith] !== undefined)) {
    return shape ? cellByCell(definition, reading, shape.block, inBlock) : sound(oneRow(definition, reading, 0, 0));
  }
  if (kind === "row") {
    if (shape && shape.block[0]!.length !== 1) return fault`${argument(shape.name)} must be one column`;
    return rowByRow(definition, reading, shape?.block.length ?? 1, inBlock);
  }
  if (shape) return fault`${argument(shape.name)} must be one cell`;
  const block = oneRow(definition, reading, 0, 0);
  return Array.isArray(block) ? soundBlock(block as Row[], inBlock) : sound(block);
}

/** Reads blocks, options and single cells once for the whole call; the cells that vary are read row by row. */
function readArguments(definition: SheetFunction, raw: readonly unknown[]): Reading | SheetError {
  const { values } = definition.row;
  const varying: Varying[] = [];
  let shape: Varying | undefined;
  let stopped: Single | undefined;

  for (const [i, { name, param, isSubject }] of definition.order.entries()) {
    const given = isInvocation(raw[i]) ? undefined : raw[i];
    if (param.mode === "range") {
      const value = readBlock(name, param, given);
      if (value instanceof SheetError) return value;
      values[i] = value;
      continue;
    }
    const block = asBlock(given);
    if (block) {
      if (param.mode === "choice" || !block[0]?.length) return fault`${argument(name)} must be one cell`;
      if (shape && (block.length !== shape.block.length || block[0].length !== shape.block[0]!.length)) {
        const [first, second] = [argument(shape.name), argument(name)];
        return fault`${first} has ${sizeOf(shape.block)} cells and ${second} ${sizeOf(block)}: make them alike`;
      }
      const incoming = { place: i, name, param, plain: param.plain, isSubject, block };
      shape ??= incoming;
      if (stopped === undefined) varying.push(incoming);
      continue;
    }
    const value = readCell(name, param, isSubject, asSingle(given));
    if (param.mode === "choice" && value instanceof SheetError) return value;
    if (value === BLANK_ROW) stopped ??= definition.result.blank;
    else if (value instanceof SheetError) stopped ??= value;
    else values[i] = value;
  }
  return { varying, shape, stopped };
}

/** Fills the arguments of one row and computes it; the first blank subject or faulty argument answers instead. */
function oneRow(
  definition: SheetFunction,
  { varying, stopped }: Reading,
  r: number,
  c: number,
  args: Record<string, unknown> = definition.row.args,
) {
  const { values } = definition.row;
  for (let i = 0; i < varying.length; i++) {
    const { place, plain, block } = varying[i]!;
    const cell = block[r]![c];
    // The way nearly every cell of a long column goes.
    if (typeof cell === "number" && plain !== undefined && isPlain(plain, cell)) {
      values[place] = cell;
      continue;
    }
    const { name, param, isSubject } = varying[i]!;
    const value = readCell(name, param, isSubject, cell);
    if (typeof value === "object" && value instanceof SheetError) return value;
    if (value === BLANK_ROW) return definition.result.blank;
    values[place] = value;
  }
  return stopped ?? definition.compute(args);
}

/** What `compute` gets for every row of a long column. */
const argsOfLong = (definition: SheetFunction, { varying }: Reading): Record<string, unknown> =>
  definition.row.argsWith((place) => varying.some((one) => one.place === place));

/** From so many rows on a result is made at places in the code that no short one passes (see `longColumn`). */
const LONG = 5000;

/**
 * A column of results, one cell a row. The engine learns for each place in the code at which an array is made what the
 * array will hold and how long it will live: numbers alone, made where only long columns are, are kept bare and are not
 * moved about (measured: without either, clearing up took four fifths of the time).
 */
function longColumn(definition: SheetFunction, reading: Reading, rows: number, inBlock: InBlock): Single[][] {
  const out = new Array<Single[]>(rows);
  const args = argsOfLong(definition, reading);
  for (let r = 0; r < rows; r++) {
    const value = oneRow(definition, reading, r, 0, args);
    if (typeof value === "number" && Number.isFinite(value)) out[r] = [value];
    else out[r] = [soundIn(value, inBlock)];
  }
  return out;
}

function cellByCell(definition: SheetFunction, reading: Reading, shape: Matrix<unknown>, inBlock: InBlock): Single[][] {
  const width = shape[0]!.length;
  if (shape.length >= LONG && width === 1) return longColumn(definition, reading, shape.length, inBlock);
  const out = new Array<Single[]>(shape.length);
  for (let r = 0; r < shape.length; r++) {
    const row = new Array<Single>(width);
    for (let c = 0; c < width; c++) row[c] = soundIn(oneRow(definition, reading, r, c), inBlock);
    out[r] = row;
  }
  return out;
}

/** Numbers alone? */
function areNumbers(row: Row): row is readonly number[] {
  for (let i = 0; i < row.length; i++) if (typeof row[i] !== "number" || !Number.isFinite(row[i])) return false;
  return true;
}

/** The same numbers in an array that is made here, for rows of a long result (see `longColumn`). */
function bareNumbers(row: readonly number[]): number[] {
  switch (row.length) {
    case 2:
      return [row[0]!, row[1]!];
    case 3:
      return [row[0]!, row[1]!, row[2]!];
    case 4:
      return [row[0]!, row[1]!, row[2]!, row[3]!];
    default:
      return row as number[];
  }
}

function rowByRow(definition: SheetFunction, reading: Reading, rows: number, inBlock: InBlock): Single[][] {
  const width = definition.result.columns?.length ?? 1;
  const out = new Array<Single[]>(rows);
  const args = rows >= LONG ? argsOfLong(definition, reading) : definition.row.args;
  for (let r = 0; r < rows; r++) {
    const row = oneRow(definition, reading, r, 0, args);
    if (!Array.isArray(row)) out[r] = filledRow(soundIn(row, inBlock), width);
    else if (rows >= LONG && row.length === width && areNumbers(row as Row)) out[r] = bareNumbers(row as number[]);
    else out[r] = soundRow(row as Row, width, inBlock);
  }
  return out;
}
