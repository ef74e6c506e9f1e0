import { cited } from "./cited";

/**
 * The two error codes that show a sentence in Excel (the others show a generic text only).
 * #N/A means "cannot be estimated from these data"; everything else is #VALUE!.
 */
export type ErrorCode = "#VALUE!" | "#N/A";

/** A piece of a sentence that whoever shows it may call otherwise: an argument, or the cell's own text. */
class Named {
  constructor(
    readonly is: "argument" | "cell",
    readonly text: string,
  ) {}
}

type Piece = string | Named;

/** An argument of the function. */
export const argument = (name: string): Named => new Named("argument", name);

/** What stands in the cell, in quotation marks and not too long. */
export const cellText = (text: string): Named => new Named("cell", cited(text));

const isArgument = (piece: Piece | undefined): piece is Named => typeof piece === "object" && piece.is === "argument";

const textOf = (piece: Piece): string => (typeof piece === "string" ? piece : piece.text);

/**
 * The one error a worksheet user meets: a code for the cell, a sentence for the person.
 * It is returned, never thrown: an exception inside one custom function stops a whole spreadsheet engine.
 */
export class SheetError {
  /** A short fragment: which argument, what is wrong, what to do. */
  readonly message: string;
  /** So that nobody has to look for an argument's name among the words: "in", "out" and "date" are both. */
  readonly #pieces: readonly Piece[];
  readonly #isWhole: boolean;

  constructor(
    says: string | readonly Piece[],
    readonly code: ErrorCode = "#VALUE!",
    isWhole = false,
  ) {
    this.#pieces = typeof says === "string" ? [says] : says;
    this.#isWhole = isWhole;
    this.message = typeof says === "string" ? says : says.map(textOf).join("");
  }

  /** The argument that it is about: the one with which its sentence begins. */
  get about(): string | undefined {
    const [first] = this.#pieces;
    return isArgument(first) ? first.text : undefined;
  }

  /** The arguments that its sentence names, in their order. */
  get named(): readonly string[] {
    return this.#pieces.filter(isArgument).map(({ text }) => text);
  }

  /** Whether it is a sentence without the argument too: "no French size in it", and not "must be a date". */
  get isWhole(): boolean {
    return this.#isWhole;
  }

  /** The same about an argument: "must be a date" becomes "due must be a date". */
  of(name: string): SheetError {
    return this.behind([argument(name), " "]);
  }

  /** The same with more before it. */
  behind(pieces: readonly Piece[]): SheetError {
    return new SheetError([...pieces, ...this.#pieces], this.code, this.#isWhole);
  }

  /** The same without the argument that it is about. */
  bare(): SheetError {
    return this.about === undefined ? this : new SheetError(this.#pieces.slice(2), this.code, this.#isWhole);
  }

  /**
   * The sentence in the words of whoever shows it.
   * @param argument what an argument is called there
   * @param cell what stands for the cell's own text where that is shown beside the sentence anyway
   */
  said({ argument, cell }: { readonly argument?: (name: string) => string; readonly cell?: string }): string {
    return this.#pieces
      .map((piece) => {
        if (typeof piece === "string") return piece;
        return piece.is === "argument" ? (argument?.(piece.text) ?? piece.text) : (cell ?? piece.text);
      })
      .join("");
  }
}

type Woven = (texts: TemplateStringsArray, ...pieces: readonly (Piece | number)[]) => SheetError;

/** An error that names arguments or the cell's text: fault`${argument("due")} is before ${argument("asof")}`. */
export const fault: Woven = (texts, ...pieces) => new SheetError(woven(texts, pieces));

/** The same where it is a whole sentence before the argument's name is put in front. */
export const wholeFault: Woven = (texts, ...pieces) => new SheetError(woven(texts, pieces), "#VALUE!", true);

function woven(texts: TemplateStringsArray, pieces: readonly (Piece | number)[]): readonly Piece[] {
  const all: Piece[] = [];
  texts.forEach((text, i) => {
    if (text !== "") all.push(text);
    const piece = pieces[i];
    if (piece !== undefined) all.push(typeof piece === "number" ? String(piece) : piece);
  });
  return all;
}

/** "Cannot be estimated from these data." */
export const notAvailable = (says: string | readonly Piece[]): SheetError => new SheetError(says, "#N/A");

/**
 * An error that was in a cell when it came in. Hosts hand errors over in their own shapes; their adapters, or `call`,
 * turn them into this.
 */
export class CellError {
  constructor(readonly code: string) {}
}
