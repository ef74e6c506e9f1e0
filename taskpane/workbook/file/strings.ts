/** xl/sharedStrings.xml: every text once. */
import { asText, element, MAIN, part } from "./xml";

/** Excel's own limit for the text in a cell. */
const LONGEST_TEXT = 32_767;

export class Strings {
  private readonly numbers = new Map<string, number>();
  private count = 0;

  of(text: string): number {
    if (text.length > LONGEST_TEXT) throw new Error(`A text is longer than a cell holds: ${text.slice(0, 80)}…`);
    this.count++;
    const known = this.numbers.get(text) ?? this.numbers.size;
    this.numbers.set(text, known);
    return known;
  }

  xml(): string {
    const items = [...this.numbers.keys()].map((text) => {
      const keepsSpaces = text.trim() !== text || text.includes("\n");
      return `<si><t${keepsSpaces ? ' xml:space="preserve"' : ""}>${asText(text)}</t></si>`;
    });
    return part(element("sst", { xmlns: MAIN, count: this.count, uniqueCount: items.length }, items));
  }
}
