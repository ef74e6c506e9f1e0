/** Replacements at offsets of a text, put in all at once: what lies between them keeps every character. */
interface Splice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export class Splices {
  private readonly list: Splice[] = [];

  constructor(private readonly source: string) {}

  get isEmpty(): boolean {
    return this.list.length === 0;
  }

  replace(start: number, end: number, text: string): void {
    this.list.push({ start, end, text });
  }

  /** Insertions at one offset stand in the order they were asked for. */
  insert(at: number, text: string): void {
    this.list.push({ start: at, end: at, text });
  }

  remove(start: number, end: number): void {
    this.list.push({ start, end, text: "" });
  }

  apply(): string {
    // An insertion before a replacement at the same offset; sort() keeps the order of equals.
    const ordered = [...this.list].sort((one, other) => one.start - other.start || one.end - other.end);
    const pieces: string[] = [];
    let from = 0;
    for (const { start, end, text } of ordered) {
      if (start < from) throw new Error(`Two changes overlap at offset ${start}.`);
      pieces.push(this.source.slice(from, start), text);
      from = end;
    }
    pieces.push(this.source.slice(from));
    return pieces.join("");
  }
}
