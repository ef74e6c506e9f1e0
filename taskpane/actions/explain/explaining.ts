/** One cell with a formula or a value, and all that is said about it. */
import { cellAddress } from "../../../src/columns/formula";
import { AS_OF } from "../../../src/columns/as-of";
import { textOf } from "../../../src/columns/sheet-block";
import { rowsTables, tableNames } from "../../../src/caseload/names";
import type { SheetFunction } from "../../../src/worksheet/define";
import { CellError, SheetError } from "../../../src/worksheet/error";
import type { Overview, Value, Workbook } from "../../workbook/port";
import { capital, count, inQuotes, together } from "../../texts/pieces";
import { explainedCall, foundText, fromText, unitOfName } from "./calls";
import type { CellRead } from "./cell";
import { listAt, ourColumn, type InList } from "./column";
import type { Explanation, Given } from "./interface";
import { parse } from "../../../src/formula/parse";
import { pieces, type Node } from "../../../src/formula/tree";
import type { Standing } from "./references";
import { restsOn } from "./rests-on";
import { filledBy, hostError, misspelt, plainFormula, NOT_WORKED_OUT, typedSentences } from "./sentences";
import { readInColumn } from "./typed";
import { isSameValue, unitShown, valueText, type Unit } from "./values";
import { callsIn, ourFunction, unitOfAnswer, Working, type Call, type Offset, type WorkedOut } from "./work-out";

interface Where {
  readonly at: Offset;
  /** Where the formula stands. */
  readonly from: Standing;
  /** Null where the column is none of ours. */
  readonly list: InList | null;
}

export class Explaining {
  constructor(
    private readonly workbook: Workbook,
    private readonly overview: Overview,
    private readonly functions: readonly SheetFunction[],
    /** The cell that is explained. */
    private readonly standing: Standing,
    private readonly cell: CellRead,
  ) {}

  private get address(): string {
    return cellAddress(this.standing.row, this.standing.column);
  }

  private base(): Pick<Explanation, "place" | "where"> {
    const { sheet, row, column } = this.standing;
    const name = this.overview.sheets.find(({ id }) => id === sheet)?.name ?? "";
    return {
      place: { sheet, area: { top: row, left: column, rows: 1, columns: 1 } },
      where: `${this.address} on ${inQuotes(name)}`,
    };
  }

  async typed(): Promise<Explanation> {
    const { value, isDate } = this.cell;
    const read = value === null ? null : await readInColumn(this.workbook, this.overview, this.standing, value);
    const said = typedSentences(this.address, value, isDate, read);
    const list = await listAt(this.workbook, this.overview, this.standing);
    const column = list && ourColumn(list, false);
    return { ...this.base(), ...said, formula: null, column, calls: [], reads: [] };
  }

  /** @param from where the formula stands: the cell itself, or the one that fills it */
  async formula(text: string, from: Standing): Promise<Explanation> {
    const node = parse(text);
    const { row, column } = this.standing;
    const at = { row: row - from.row, column: column - from.column };
    const working = new Working(this.workbook, this.overview, this.functions, from, at);
    const worked = await working.out(node);
    const list = await listAt(this.workbook, this.overview, this.standing);
    const ours = list && ourColumn(list, true);
    const inFormula = callsIn(node, this.functions).length;
    const idle = inFormula - worked.calls.length;
    return {
      ...this.base(),
      headline: await this.headline(text, worked, { at, from, list: ours && list }),
      isError: this.cell.value instanceof CellError,
      notes: [
        ...(from === this.standing ? [] : [filledBy(this.address, cellAddress(from.row, from.column))]),
        ...(inFormula > 0 || node.is === "unknown"
          ? worked.gaps.map((gap) => `${capital(NOT_WORKED_OUT)}: ${gap}.`)
          : [plainFormula(worked.found.known)]),
        ...this.differences(worked, at),
        ...(idle > 0
          ? [
              `${count(idle, "other function")} of this add-in in the formula ${idle === 1 ? "does" : "do"} not count for this cell.`,
            ]
          : []),
      ],
      formula: text,
      column: ours,
      calls: worked.calls.map((call) => explainedCall(call, from, this.overview)),
      reads: await this.reads(node, working, from),
    };
  }

  /** The headline alone, for whoever passes by: a formula of the caseload is not worked out again for it. */
  async sentence(text: string, list: InList | null): Promise<string> {
    const from = this.standing;
    const ours = list && ourColumn(list, true) ? list : null;
    const isReadyMade = ours !== null && rowsTables.some((key) => tableNames[key] === ours.table);
    const isQuick = isReadyMade && !(this.cell.value instanceof CellError);
    const { calls } = isQuick
      ? { calls: [] }
      : await new Working(this.workbook, this.overview, this.functions, from).out(parse(text));
    return this.headline(text, { calls }, { at: { row: 0, column: 0 }, from, list: ours });
  }

  /** What stands there and why, or why it is an error and what to do. */
  private async headline(
    formula: string,
    { calls }: Pick<WorkedOut, "calls">,
    { at, from, list }: Where,
  ): Promise<string> {
    const { value } = this.cell;
    if (value instanceof CellError)
      return `${this.address} is an error, ${value.code}: ${this.why(formula, calls, from)}`;
    const unit = this.unitFrom(calls, at, value);
    const shows = textOf(value) === "" ? "nothing" : valueText(value, unit);
    const because = list && from === this.standing ? await this.because(list, formula, unit) : "";
    return `${this.address} shows ${shows}${because}.`;
  }

  private why(formula: string, calls: readonly Call[], from: Standing): string {
    const { code } = this.cell.value as CellError;
    if (code === "#NAME?") return misspelt(parse(formula), this.functions) ?? hostError(code);
    const failed = [...calls].reverse().find(({ answer }) => answer instanceof SheetError);
    if (!failed || !isOurs(code)) return hostError(code);
    const fault = explainedCall(failed, from, this.overview).given.find(({ isAtFault }) => isAtFault);
    const look = fault && /^cells? /.test(fault.from) ? ` Look at ${fault.from}.` : "";
    return `${(failed.answer as SheetError).message}.${look}`;
  }

  /** What the cells hold that a column of ours rests on. */
  private async because(list: InList, formula: string, unit: Unit): Promise<string> {
    const cell = { value: this.cell.value, formula };
    const { facts, hasDays } = await restsOn(this.workbook, this.overview, this.standing, list, cell);
    if (facts.length === 0) return "";
    const today = this.overview.names.find(({ name }) => isDay(name))?.value;
    const isCounted = hasDays && unit !== "date" && typeof today === "number";
    return `: ${together(facts)}${isCounted ? `; today is ${valueText(today, "date")}` : ""}`;
  }

  /** By the function that gives this very number, else by the cell's format. */
  private unitFrom(calls: readonly Call[], { row, column }: Offset, value: Value): Unit {
    const isGiven = ({ answer }: Call): boolean =>
      Array.isArray(answer) ? answer[row]?.[column] === value : answer === value;
    const giver = calls.find(isGiven);
    const unit = giver && unitOfAnswer(giver, Array.isArray(giver.answer) ? column : 0);
    return unit ?? (this.cell.isDate ? unitShown(value, true) : undefined);
  }

  /** The sheet may not have been worked out since its cells changed: then it shows what is no longer so. */
  private differences({ found, calls }: WorkedOut, at: Offset): readonly string[] {
    if (!found.known) return [];
    const { row, column } = at;
    const own = (Array.isArray(found.value) ? found.value[row]?.[column] : found.value) as Value | undefined;
    if (own === undefined || isSameValue(own, this.cell.value)) return [];
    const unit = this.unitFrom(calls, at, own);
    return [
      `Worked out again now from the same cells, it gives ${valueText(own, unit)}. Have the sheet worked out again, and look which of the two stands there.`,
    ];
  }

  /** What the plain part of the formula reads: cells and names outside of our functions, each once. */
  private async reads(node: Node, working: Working, from: Standing): Promise<readonly Given[]> {
    const bound = namesBound(node);
    const outside = outsideOurs(node, this.functions).filter(({ text }) => !bound.has(text.toLowerCase()));
    const found = new Map<string, Given>();
    for (const piece of outside) {
      if ((piece.is !== "reference" && piece.is !== "name") || found.has(piece.text)) continue;
      if (found.size >= MOST_READ) break;
      found.set(piece.text, {
        name: piece.text,
        help: "",
        value: await this.readText(piece, working),
        from: fromText(piece, from, this.overview),
        isAtFault: false,
      });
    }
    return [...found.values()];
  }

  private async readText(piece: Node, working: Working): Promise<string> {
    const found = await working.work(piece);
    if (!found.known) return NOT_WORKED_OUT;
    if (piece.is === "name") return foundText(found, isDay(piece.text) ? "date" : unitOfName(piece.text));
    return foundText(found);
  }
}

/** So many cells and names are listed. */
const MOST_READ = 20;

const isDay = (name: string): boolean => name.toLowerCase() === AS_OF.toLowerCase();

/** Our functions give no other errors. */
const isOurs = (code: string): boolean => code === "#VALUE!" || code === "#N/A";

/** Names that LET gives inside the formula: they stand for nothing outside of it. */
const namesBound = (node: Node): ReadonlySet<string> =>
  new Set(
    pieces(node).flatMap((piece) =>
      piece.is === "call" && piece.name.toUpperCase() === "LET"
        ? piece.args.slice(0, -1).flatMap(({ text }, i) => (i % 2 === 0 ? [text.toLowerCase()] : []))
        : [],
    ),
  );

/** The pieces of a formula that are not inside one of our functions. */
function outsideOurs(node: Node, functions: readonly SheetFunction[]): readonly Node[] {
  if (node.is === "call" && ourFunction(node.name, functions)) return [];
  const inner = node.is === "call" ? node.args : node.is === "operator" ? node.parts : [];
  return [node, ...inner.flatMap((each) => outsideOurs(each, functions))];
}
