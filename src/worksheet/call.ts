/**
 * The one boundary between hosts and functions. Every host calls this and only this.
 *
 * It never throws; nothing but finite numbers, texts, booleans and SheetErrors leaves it (a null or NaN inside an
 * array shows as 0 in Excel: office-js issue 1503); one cell in gives one value out, not a block of one.
 */
import type { Cell, Matrix } from "./cell";
import type { Param, Row, SheetFunction } from "./define";
import { CellError, SheetError } from "./error";

/** What a call gives to a host. */
export type Answer = Exclude<Cell, null> | SheetError | (Exclude<Cell, null> | SheetError)[][];

type Single = Exclude<Cell, null> | SheetError;

/** An argument that has a cell of its own for every row. */
interface Varying {
  readonly name: string;
  readonly param: Param<unknown>;
  readonly isSubject: boolean;
  readonly block: Matrix<unknown>;
}

/** The arguments of one call, read as far as they are the same for every row. */
interface Reading {
  /** What `compute` gets. One object for all rows: values that vary are written into it row by row. */
  readonly args: Record<string, unknown>;
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

const passedOn = (name: string, code: string): SheetError =>
  code === "#N/A" ? new SheetError(`${name} is #N/A`, "#N/A") : new SheetError(`${name} is an error`);

/** Functions, symbols and big integers, which only another program can hand over; reading them would throw. */
const isForeign = (cell: unknown): boolean =>
  !["number", "string", "boolean", "undefined"].includes(typeof cell) && cell !== null;
const foreign = (name: string): SheetError => new SheetError(`${name} must be a number, a text, or yes or no`);

const isBlank = (cell: unknown): boolean =>
  cell === null || cell === undefined || cell === "" || (typeof cell === "string" && cell.trim() === "");

/** One cell of an "each" or "choice" argument: a value for `compute`, a SheetError, or BLANK_ROW. */
function readCell(name: string, param: Param<unknown>, isSubject: boolean, given: unknown): unknown {
  const cell = plainCell(given);
  let value: unknown = null;
  if (typeof cell === "number") {
    value = param.read(cell);
    // The way nearly every cell of a long column goes.
    if (typeof value === "number") return value;
  } else if (!isBlank(cell)) {
    const code = errorCode(cell);
    if (code !== undefined) return passedOn(name, code);
    if (isForeign(cell)) return foreign(name);
    value = param.read(cell as Exclude<Cell, null>);
  }
  if (value === null) {
    if (param.ifBlank !== undefined) return param.ifBlank;
    if (isSubject) return BLANK_ROW;
    return param.optional ? param.fallback : new SheetError(`${name} is missing`);
  }
  return value instanceof SheetError ? new SheetError(`${name} ${value.message}`, value.code) : value;
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
  return value instanceof SheetError ? new SheetError(`${name} ${value.message}`, value.code) : value;
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

/** A rectangle: short rows are padded with "". */
function soundBlock(rows: readonly Row[]): Single[][] {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  if (width === 0) return [[""]];
  return rows.map((row) =>
    // Nearly every row is sound already: it goes out as it is.
    row.length === width && row.every((cell) => sound(cell) === cell)
      ? (row as Single[])
      : Array.from({ length: width }, (_, i) => sound(row[i])),
  );
}

/** A row that is blank or at fault: the word or error first, "" beside it. */
const filledRow = (first: Single, width: number): Single[] => [first, ...new Array<Single>(width - 1).fill("")];

export function call(definition: SheetFunction, raw: readonly unknown[]): Answer {
  try {
    return answer(definition, raw);
  } catch (fault) {
    return new SheetError(`could not be worked out (${fault instanceof Error ? fault.message : String(fault)})`);
  }
}

function answer(definition: SheetFunction, raw: readonly unknown[]): Answer {
  const reading = readArguments(definition, raw);
  if (reading instanceof SheetError) return reading;
  const { shape } = reading;

  const { shape: kind, oneCellWith } = definition.result;
  if (kind === "cell" || (oneCellWith !== undefined && reading.args[oneCellWith] !== undefined)) {
    return shape ? cellByCell(definition, reading, shape.block) : sound(oneRow(definition, reading, 0, 0));
  }
  if (kind === "row") {
    if (shape && shape.block[0]!.length !== 1) return new SheetError(`${shape.name} must be one column`);
    return rowByRow(definition, reading, shape?.block.length ?? 1);
  }
  if (shape) return new SheetError(`${shape.name} must be one cell`);
  const block = oneRow(definition, reading, 0, 0);
  return Array.isArray(block) ? soundBlock(block as Row[]) : sound(block);
}

/** Reads blocks, options and single cells once for the whole call; the cells that vary are read row by row. */
function readArguments(definition: SheetFunction, raw: readonly unknown[]): Reading | SheetError {
  const args: Record<string, unknown> = {};
  const varying: Varying[] = [];
  let shape: Varying | undefined;
  let stopped: Single | undefined;

  for (const [i, { name, param, isSubject }] of definition.order.entries()) {
    // A fixed set of keys from the start keeps the object in one shape for the rows.
    args[name] = undefined;
    const given = isInvocation(raw[i]) ? undefined : raw[i];
    if (param.mode === "range") {
      const value = readBlock(name, param, given);
      if (value instanceof SheetError) return value;
      args[name] = value;
      continue;
    }
    const block = asBlock(given);
    if (block) {
      if (param.mode === "choice" || !block[0]?.length) return new SheetError(`${name} must be one cell`);
      if (shape && (block.length !== shape.block.length || block[0].length !== shape.block[0]!.length)) {
        return new SheetError(
          `${shape.name} has ${sizeOf(shape.block)} cells and ${name} ${sizeOf(block)}: make them alike`,
        );
      }
      const incoming = { name, param, isSubject, block };
      shape ??= incoming;
      if (stopped === undefined) varying.push(incoming);
      continue;
    }
    const value = readCell(name, param, isSubject, asSingle(given));
    if (param.mode === "choice" && value instanceof SheetError) return value;
    if (value === BLANK_ROW) stopped ??= definition.result.blank;
    else if (value instanceof SheetError) stopped ??= value;
    else args[name] = value;
  }
  return { args, varying, shape, stopped };
}

/** Fills the arguments of one row and computes it; the first blank subject or faulty argument answers instead. */
function oneRow(definition: SheetFunction, { args, varying, stopped }: Reading, r: number, c: number) {
  for (let i = 0; i < varying.length; i++) {
    const { name, param, isSubject, block } = varying[i]!;
    const value = readCell(name, param, isSubject, block[r]![c]);
    if (typeof value === "object" && value instanceof SheetError) return value;
    if (value === BLANK_ROW) return definition.result.blank;
    args[name] = value;
  }
  return stopped ?? definition.compute(args);
}

function cellByCell(definition: SheetFunction, reading: Reading, shape: Matrix<unknown>): Single[][] {
  const width = shape[0]!.length;
  const out = new Array<Single[]>(shape.length);
  for (let r = 0; r < shape.length; r++) {
    if (width === 1) {
      out[r] = [sound(oneRow(definition, reading, r, 0))];
      continue;
    }
    const row = new Array<Single>(width);
    for (let c = 0; c < width; c++) row[c] = sound(oneRow(definition, reading, r, c));
    out[r] = row;
  }
  return out;
}

function rowByRow(definition: SheetFunction, reading: Reading, rows: number): Single[][] {
  const width = definition.result.columns?.length ?? 1;
  return Array.from({ length: rows }, (_, r) => {
    const row = oneRow(definition, reading, r, 0);
    if (!Array.isArray(row)) return filledRow(sound(row), width);
    return Array.from({ length: width }, (_, i) => sound((row as Row)[i]));
  });
}
