/** The attributes of the tag just read, kept as places in the source: most are never looked at, so none is copied before it is. */
import { decodeAttribute } from "./characters";
import { damaged } from "./damaged";
import { isNameCharacter, isNameStart, skipSpace } from "./names";

const LESS = 60;
const EQUALS = 61;
const AMPERSAND = 38;

/** No element of a workbook has more than a few dozen. */
const MOST = 1000;

export interface AttributeSpan {
  readonly nameStart: number;
  /** Between the quotes. */
  readonly start: number;
  readonly end: number;
}

export class AttributeList {
  count = 0;
  /** Four to an attribute: where its name starts and ends, where its value starts and ends. */
  private readonly places: number[] = [];

  /** Where the text stands in its part. */
  private base = 0;

  constructor(
    private text: string,
    private readonly partName: string,
  ) {}

  goOn(text: string, base: number): void {
    this.text = text;
    this.base = base;
  }

  clear(): void {
    this.count = 0;
  }

  get(rawName: string): string | undefined {
    const length = rawName.length;
    for (let index = 0; index < this.count; index++) {
      const start = this.places[index * 4] as number;
      if ((this.places[index * 4 + 1] as number) - start === length && this.text.startsWith(rawName, start)) {
        return this.value(index);
      }
    }
    return undefined;
  }

  name(index: number): string {
    return this.text.slice(this.places[index * 4], this.places[index * 4 + 1]);
  }

  value(index: number): string {
    const { start, end } = this.span(index);
    return decodeAttribute(this.text, start, end, this.partName);
  }

  span(index: number): AttributeSpan {
    return {
      nameStart: this.places[index * 4] as number,
      start: this.places[index * 4 + 2] as number,
      end: this.places[index * 4 + 3] as number,
    };
  }

  /** Reads name="value" and gives the offset after it. */
  read(at: number): number {
    const { text } = this;
    const nameEnd = this.nameEnd(at);
    let index = skipSpace(text, nameEnd);
    if (text.charCodeAt(index) !== EQUALS) this.fail("an attribute has no value", at);
    index = skipSpace(text, index + 1);
    const quote = text.charCodeAt(index);
    if (quote !== 34 && quote !== 39) this.fail("an attribute's value has no quotes", at);
    const valueStart = ++index;
    let hasReference = false;
    for (; ; index++) {
      const code = text.charCodeAt(index);
      if (code === quote) break;
      if (code === LESS || Number.isNaN(code)) this.fail("an attribute's value is not finished", at);
      if (code === AMPERSAND) hasReference = true;
    }
    if (hasReference) decodeAttribute(text, valueStart, index, this.partName);
    this.refuseSecond(at, nameEnd);
    const place = this.count++ * 4;
    this.places[place] = at;
    this.places[place + 1] = nameEnd;
    this.places[place + 2] = valueStart;
    this.places[place + 3] = index;
    return index + 1;
  }

  /** The offset after the name that starts there. */
  nameEnd(at: number): number {
    if (!isNameStart(this.text.charCodeAt(at))) this.fail("a name was expected", at);
    let index = at + 1;
    while (isNameCharacter(this.text.charCodeAt(index))) index++;
    return index;
  }

  private refuseSecond(start: number, end: number): void {
    if (this.count > MOST) this.fail("an element has over a thousand attributes", start);
    const { places, text } = this;
    for (let place = 0; place < this.count * 4; place += 4) {
      const otherStart = places[place] as number;
      if ((places[place + 1] as number) - otherStart !== end - start) continue;
      let index = start;
      while (index < end && text.charCodeAt(index) === text.charCodeAt(otherStart + index - start)) index++;
      if (index === end) this.fail("an attribute stands twice in one element", start);
    }
  }

  private fail(what: string, offset: number): never {
    return damaged(this.partName, this.base + offset, what);
  }
}
