/**
 * A formula made ready to be worked out for every row of a column: references resolved, names looked up, functions bound,
 * once. What is not known here is said (NotKnown), never half worked out: such a formula is another engine's.
 */
import { readArea, type Area, type Line } from "../areas";
import { CellError } from "../../worksheet/error";
import { parse } from "../parse";
import type { Node, Sign } from "../tree";
import { Block, type Any, type Sheet } from "./cells";
import { rules } from "./rules/index";
import { NotKnown, single, type Piece, type Work } from "./piece";
import { compared, DIV0, finite, isError, NUM, toNumber, toText, VALUE, type Value } from "./values";
import { nobody } from "./watch";

/** What the compiler asks of the workbook. */
export interface Surroundings {
  readonly sheet: (name: string) => Sheet | undefined;
  /** What a name stands for, in A1 and without "=". */
  readonly meaning: (name: string, sheet: Sheet) => string | undefined;
  /** One of our own functions; undefined for other names. */
  readonly ours: (name: string) => OurFunction | undefined;
  /** The day that counts as today; undefined where nobody has said which. */
  readonly today: number | undefined;
}

/** A function of ours that gives one value for these arguments. */
export interface OurFunction {
  readonly work: (args: readonly Any[]) => Value;
  /** Whether the argument is taken as a whole; of others, many cells give many answers. */
  readonly takesMany: (at: number) => boolean;
  /** Whether it gives one value where so many arguments stand; a row of them fills other cells too. */
  readonly givesOne: (args: readonly Node[]) => boolean;
}

/** Cells that a formula reads, in its own row or wherever it stands. */
export interface Read {
  readonly sheet: Sheet;
  readonly area: Area;
  /** A function watches it more closely: by the keys that it looks up, by the places that it reads. */
  readonly isWatched: boolean;
}

export interface Compiled {
  readonly work: Work<Value>;
  /** How many names LET gives. */
  readonly names: number;
  readonly reads: readonly Read[];
  /** What it takes from where it stands and from how far ranges go, beside the cells that it reads. */
  readonly hangsOn: HangsOn;
}

/** What else than values of cells a formula's result hangs on. */
export interface HangsOn {
  /** The number of its own row. */
  readonly place: boolean;
  /** How many rows a range has. */
  readonly extent: boolean;
  /** What names mean that stand for no cells. */
  readonly meanings: string;
}

/** Whole rows (3:7) are another engine's: each of their 16,384 columns would be kept an eye on. */
const WIDEST = 1_000;

/** Names may stand on names. */
const DEEPEST = 8;

/**
 * @param text A1 spelling, for the cell in `row`; rows of other cells of the column are counted from there
 * @param isAlone no other cell shares it: every reference means the same cells always
 */
export function compile(text: string, sheet: Sheet, row: number, around: Surroundings, isAlone: boolean): Compiled {
  const compiler = new Compiler(sheet, row, around, isAlone);
  const value = compiler.value(parse(text));
  // a formula that gives an empty cell shows 0
  const { reads, count: names, hangsOn } = compiler;
  return { work: (here) => value(here) ?? 0, names, reads, hangsOn };
}

export class Compiler {
  readonly reads: Read[] = [];
  readonly hangsOn = { place: false, extent: false, meanings: "" };
  count = 0;
  private scope: ReadonlyMap<string, Piece> = new Map();
  private depth = 0;

  constructor(
    private readonly home: Sheet,
    private readonly row: number,
    readonly around: Surroundings,
    private readonly isAlone: boolean,
    /** It is what a name stands for: cells without a sheet's name are nobody's. */
    private readonly isName = false,
  ) {}

  /** What is to be one value; what may be many is another engine's, which fills as many cells. */
  value(node: Node): Work<Value> {
    const { value, isMany } = this.piece(node);
    if (isMany) throw new NotKnown(node.text);
    return value;
  }

  piece(node: Node, isWatched = false): Piece {
    switch (node.is) {
      case "number":
      case "text":
      case "boolean":
        return constant(node, node.value);
      case "error":
        return constant(node, new CellError(node.code));
      case "nothing":
        return constant(node, null);
      case "array":
        return { node, any: () => node.rows, value: () => node.rows[0]![0]!, isMany: true };
      case "reference":
        return this.reference(node, isWatched);
      case "name":
        return this.name(node, isWatched);
      case "operator":
        return plain(node, this.operator(node.sign, node.parts));
      case "call":
        return this.call(node);
      case "unknown":
        throw new NotKnown(node.text);
    }
  }

  /** The block that an argument always stands for, where it is one: a range for functions that look things up in it. */
  range(node: Node): Block {
    const here = { row: this.row, named: [], watcher: nobody };
    const found = this.piece(node, true);
    const isReference = node.is === "reference" || (node.is === "name" && !this.scope.has(node.text.toLowerCase()));
    if (!isReference) throw new NotKnown(node.text);
    const block = found.any(here);
    const area = this.reads.at(-1)?.area;
    if (!(block instanceof Block) || !area?.top.isFixed || !area.bottom.isFixed) throw new NotKnown(node.text);
    return block;
  }

  private reference(node: Node, isWatched: boolean): Piece {
    const written = readArea(node.text);
    const area = written && this.isAlone ? standing(written) : written;
    const sheet = area && (area.sheet === null ? (this.isName ? undefined : this.home) : this.around.sheet(area.sheet));
    if (!area || !sheet || area.right.at - area.left.at > WIDEST) throw new NotKnown(node.text);
    this.reads.push({ sheet, area, isWatched });
    const { top, bottom, left, right } = area;
    const from = this.line(top);
    if (top.at === bottom.at && left.at === right.at && top.isFixed === bottom.isFixed) {
      const column = sheet.column(left.at);
      return {
        node,
        value: (here) => column.get(from(here.row)),
        any: (here) => new Block(sheet, from(here.row), left.at, from(here.row), left.at),
      };
    }
    const to = this.line(bottom);
    const block = (row: number) => new Block(sheet, from(row), left.at, to(row), right.at);
    const always = top.isFixed && bottom.isFixed ? block(this.row) : undefined;
    return { node, value: () => VALUE, isMany: true, any: always ? () => always : (here) => block(here.row) };
  }

  /** The row that a line means for a formula in another row of its column. */
  private line({ at, isFixed }: Line): (row: number) => number {
    const offset = at - this.row;
    return isFixed ? () => at : (row) => row + offset;
  }

  private name(node: Node, isWatched: boolean): Piece {
    const bound = this.scope.get(node.text.toLowerCase());
    if (bound) return { ...bound, node };
    const meaning = this.around.meaning(node.text, this.home);
    if (meaning === undefined || this.depth >= DEEPEST) throw new NotKnown(node.text);
    this.depth++;
    // a name stands for the same cells wherever it is used, and knows nothing of what LET has named there
    const names = new Compiler(this.home, this.row, this.around, false, true);
    names.depth = this.depth;
    const meant = parse(meaning);
    const found = names.piece(meant, isWatched);
    this.depth--;
    if (meant.is !== "reference") this.hangsOn.meanings += `${node.text}=${meaning};${names.hangsOn.meanings}`;
    this.hangsOn.extent ||= names.hangsOn.extent;
    this.hangsOn.place ||= names.hangsOn.place;
    // relative to a cell that only the program knows where the name was given
    const isRelative = ({ area }: Read): boolean => ![area.top, area.bottom, area.left, area.right].every(isFixed);
    if (names.reads.some(isRelative)) throw new NotKnown(node.text);
    this.reads.push(...names.reads);
    return { ...found, node };
  }

  private call(node: Node & { readonly is: "call" }): Piece {
    const name = node.name.toUpperCase().replace(/^_XLFN\./, "");
    if (name === "LET") return this.letting(node);
    const ours = this.around.ours(name);
    if (ours) {
      const pieces = node.args.map((arg) => this.piece(arg));
      if (!ours.givesOne(node.args) || pieces.some(({ isMany }, at) => isMany && !ours.takesMany(at)))
        throw new NotKnown(node.text);
      const args = pieces.map(({ any }) => any);
      return plain(node, (here) => ours.work(args.map((arg) => arg(here))));
    }
    const rule = rules.get(name);
    if (!rule) throw new NotKnown(node.name);
    const { least, most } = rule;
    if (node.args.length < least || node.args.length > most) throw new NotKnown(node.text);
    const work = rule.bind(node.args, this);
    return { node, any: work, value: (here) => single(work(here)) };
  }

  /** What a name stands for is worked out when it is first asked for, once for each cell. */
  private letting(node: Node & { readonly is: "call" }): Piece {
    const outer = this.scope;
    const { args } = node;
    if (args.length < 3 || args.length % 2 === 0) throw new NotKnown(node.text);
    for (let i = 0; i + 1 < args.length; i += 2) {
      if (args[i]!.is !== "name") throw new NotKnown(node.text);
      const bound = this.piece(args[i + 1]!);
      this.scope = new Map(this.scope).set(
        args[i]!.text.toLowerCase(),
        isCheap(args[i + 1]!) ? bound : this.kept(bound),
      );
    }
    const result = this.piece(args.at(-1)!);
    this.scope = outer;
    return { ...result, node };
  }

  private kept({ node, any, isMany = false }: Piece): Piece {
    const at = this.count++;
    const once: Work = (here) => {
      const known = here.named[at];
      return known === undefined ? (here.named[at] = any(here)) : known;
    };
    return { node, any: once, value: (here) => single(once(here)), isMany };
  }

  private operator(sign: Sign, parts: readonly Node[]): Work<Value> {
    if (!(sign in arithmetic) && !(sign in comparisons) && !["&", "%"].includes(sign)) throw new NotKnown(sign);
    const [a, b] = parts.map((part) => this.value(part));
    if (!b) return signed(sign, a!);
    const first = a!;
    const compare = comparisons[sign];
    if (compare) return (here) => both(first(here), b(here), (x, y) => compare(compared(x, y)));
    if (sign === "&")
      return (here) => both(first(here), b(here), (x, y) => `${toText(x) as string}${toText(y) as string}`);
    const work = arithmetic[sign]!;
    return (here) =>
      both(first(here), b(here), (x, y) => {
        const [one, other] = [toNumber(x), toNumber(y)];
        return isError(one) ? one : isError(other) ? other : work(one, other);
      });
  }
}

const isFixed = (line: Line): boolean => line.isFixed;
const fixed = ({ at }: Line): Line => ({ at, isFixed: true });
const standing = ({ sheet, top, bottom, left, right }: Area): Area => ({
  sheet,
  top: fixed(top),
  bottom: fixed(bottom),
  left: fixed(left),
  right: fixed(right),
});

const plain = (node: Node, work: Work<Value>): Piece => ({ node, value: work, any: work });
const constant = (node: Node, value: Value): Piece => plain(node, () => value);

/** Reading it again costs no more than remembering it, and an empty cell stays an empty cell. */
const isCheap = (node: Node): boolean => ["reference", "name", "number", "text", "boolean", "error"].includes(node.is);

const both = (x: Value, y: Value, work: (x: Value, y: Value) => Value): Value =>
  isError(x) ? x : isError(y) ? y : work(x, y);

function signed(sign: Sign, work: Work<Value>): Work<Value> {
  if (sign === "+") return work;
  return (here) => {
    const number = toNumber(work(here));
    if (isError(number)) return number;
    return sign === "%" ? number / 100 : 0 - number;
  };
}

const comparisons: { readonly [S in Sign]?: (difference: number) => boolean } = {
  "=": (difference) => difference === 0,
  "<>": (difference) => difference !== 0,
  "<": (difference) => difference < 0,
  ">": (difference) => difference > 0,
  "<=": (difference) => difference <= 0,
  ">=": (difference) => difference >= 0,
};

const arithmetic: { readonly [S in Sign]?: (x: number, y: number) => Value } = {
  "+": (x, y) => finite(x + y),
  "-": (x, y) => finite(x - y),
  "*": (x, y) => finite(x * y),
  "/": (x, y) => (y === 0 ? DIV0 : finite(x / y)),
  "^": (x, y) => (x === 0 && y === 0 ? NUM : x === 0 && y < 0 ? DIV0 : finite(x ** y)),
};
