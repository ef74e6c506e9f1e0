/**
 * Reads XML one token at a time and says where each stands, so that what is not changed can keep its bytes. The tokens lie
 * end to end: written one after another they are the source again. What is not well-formed is refused, never mended, and
 * so is a DOCTYPE: a workbook needs none, and it is the door for entity bombs (OWASP XXE sheet).
 */
import { LIMITS } from "../limits";
import { refuse } from "../refusal";
import { AttributeList } from "./attributes";
import { decodeCdata, decodeText } from "./characters";
import { damaged } from "./damaged";
import type { XmlSource } from "./encoding";
import { isNameCharacter, skipSpace } from "./names";
import { type ElementName, rootScope, type Scope } from "./namespaces";

export type TokenKind = "declaration" | "start" | "end" | "text" | "cdata" | "comment" | "instruction";

const LESS = 60;
const GREATER = 62;
const SLASH = 47;
const EXCLAMATION = 33;
const QUESTION = 63;

export interface ReaderState {
  readonly depth: number;
  readonly hasRoot: boolean;
  readonly nameScope: Scope;
  readonly open: readonly ElementName[];
  readonly scopes: readonly Scope[];
}

export class XmlReader {
  kind: TokenKind = "text";
  /** Where the token stands in the source; `end` is the offset after it. */
  start = 0;
  end = 0;
  /** Of the start or end tag just read. */
  name: ElementName = { raw: "", prefix: "", local: "", namespace: "" };
  isSelfClosing = false;
  /** Elements open after this token. */
  depth = 0;
  readonly attributes: AttributeList;

  text: string;
  readonly partName: string;
  /** False while more of the document is to come (`goOn`). */
  private isLast: boolean;
  /** Where the text stands in its part. */
  private base = 0;
  private open: ElementName[] = [];
  private scopes: Scope[] = [rootScope()];
  /** Of the tag just read, self-closing ones included. */
  private nameScope: Scope = this.scope();
  private hasRoot = false;
  private nextAmpersand = -1;
  private nextBrackets = -1;

  constructor(
    source: Pick<XmlSource, "text" | "partName">,
    private readonly depthLimit: number = LIMITS.depth,
    isWhole = true,
  ) {
    this.text = source.text;
    this.partName = source.partName;
    this.isLast = isWhole;
    this.attributes = new AttributeList(source.text, source.partName);
  }

  /**
   * The next piece of a document that is read in pieces. It begins where a token begins; offsets count from its beginning.
   * @param base where it stands in its part
   * @param at where to go on inside it
   */
  goOn(text: string, base: number, isLast = false, at = 0): void {
    this.text = text;
    this.base = base;
    this.isLast = isLast;
    this.end = at;
    this.nextAmpersand = this.nextBrackets = -1;
    this.attributes.goOn(text, base);
  }

  /** Which elements are open: to come back to when a piece turns out to end in the middle of something. */
  state(): ReaderState {
    const { depth, hasRoot, nameScope } = this;
    return { depth, hasRoot, nameScope, open: [...this.open], scopes: [...this.scopes] };
  }

  comeBack({ depth, hasRoot, nameScope, open, scopes }: ReaderState): void {
    Object.assign(this, { depth, hasRoot, nameScope });
    this.open = [...open];
    this.scopes = [...scopes];
  }

  /** Goes to the next token; false at the end of a complete document. */
  next(): boolean {
    const at = this.end;
    this.start = at;
    if (at >= this.text.length) {
      if (!this.isLast) return false;
      if (this.open.length > 0) this.fail(`the element "${this.open.at(-1)?.raw}" is never closed`);
      if (!this.hasRoot) this.fail("there is nothing in it");
      return false;
    }
    if (this.text.charCodeAt(at) !== LESS) this.readText(at);
    else {
      const second = this.text.charCodeAt(at + 1);
      if (second === SLASH) this.readEndTag(at);
      else if (second === EXCLAMATION) this.readExclamation(at);
      else if (second === QUESTION) this.readInstruction(at);
      else this.readStartTag(at);
    }
    return true;
  }

  is(namespace: string, local: string): boolean {
    return this.name.local === local && this.name.namespace === namespace;
  }

  /** An attribute by the name written, prefix and all; unprefixed attributes are in no namespace. */
  attribute(rawName: string): string | undefined {
    return this.attributes.get(rawName);
  }

  /** What a prefix stands for at this place; an undeclared one is refused. */
  prefixUri(prefix: string): string {
    if (prefix === "xmlns") return "http://www.w3.org/2000/xmlns/";
    return this.nameScope.uriOf(prefix) ?? this.fail(`the prefix "${prefix.slice(0, 60)}" is not declared`);
  }

  /** The decoded characters of a text or CDATA token. */
  characters(): string {
    if (this.kind === "cdata") return decodeCdata(this.text, this.start + 9, this.end - 3);
    return decodeText(this.text, this.start, this.end, this.partName);
  }

  /** At a start tag: goes to the element's end and gives the characters directly inside it. */
  elementText(): string {
    if (this.isSelfClosing) return "";
    const inside = this.depth;
    let text = "";
    while (this.next()) {
      if (this.kind === "text" || this.kind === "cdata") {
        if (this.depth === inside) text = text === "" ? this.characters() : text + this.characters();
      } else if (this.kind === "end" && this.depth < inside) break;
    }
    return text;
  }

  /** At a start tag: goes to the element's end. */
  skipElement(): void {
    if (this.isSelfClosing) return;
    const inside = this.depth;
    while (this.next()) if (this.kind === "end" && this.depth < inside) break;
  }

  /** Somebody else has read on from here, up to a place where a token begins and the same elements are open. */
  skipTo(at: number): void {
    this.end = at;
  }

  fail(what: string, offset = this.start): never {
    return damaged(this.partName, this.base + offset, what);
  }

  private scope(): Scope {
    return this.scopes[this.scopes.length - 1] as Scope;
  }

  private readText(at: number): void {
    const less = this.text.indexOf("<", at);
    this.end = less < 0 ? this.text.length : less;
    this.kind = "text";
    if (this.nextAmpersand < at) this.nextAmpersand = indexOrNever(this.text, "&", at);
    if (this.nextBrackets < at) this.nextBrackets = indexOrNever(this.text, "]]>", at);
    if (this.nextBrackets < this.end) this.fail('a text holds "]]>"', this.nextBrackets);
    if (this.depth === 0) {
      if (skipSpace(this.text, at) < this.end) this.fail("there is text outside its root element");
    } else if (this.nextAmpersand < this.end) decodeText(this.text, this.nextAmpersand, this.end, this.partName);
  }

  private readStartTag(at: number): void {
    const text = this.text;
    let index = this.attributes.nameEnd(at + 1);
    const raw = text.slice(at + 1, index);
    let declares = false;
    this.attributes.clear();
    for (;;) {
      const afterSpace = skipSpace(text, index);
      const code = text.charCodeAt(afterSpace);
      if (code === GREATER) {
        this.isSelfClosing = false;
        this.end = afterSpace + 1;
        break;
      }
      if (code === SLASH) {
        if (text.charCodeAt(afterSpace + 1) !== GREATER) this.fail("a tag is not finished", afterSpace);
        this.isSelfClosing = true;
        this.end = afterSpace + 2;
        break;
      }
      if (afterSpace === index) this.fail("a tag is not finished", index);
      index = this.attributes.read(afterSpace);
      if (text.charCodeAt(afterSpace) === 120 && text.startsWith("xmlns", afterSpace)) declares = true;
    }
    if (this.depth === 0) {
      if (this.hasRoot) this.fail("it has a second root element");
      this.hasRoot = true;
    }
    this.kind = "start";
    const scope = declares ? this.declare() : this.scope();
    this.nameScope = scope;
    this.name = scope.resolve(raw) ?? this.fail(`the prefix of "${raw.slice(0, 60)}" is not declared`);
    if (this.isSelfClosing) return;
    if (this.depth >= this.depthLimit) {
      refuse(
        `This workbook is built in a way no spreadsheet program writes (${this.partName}: over ${this.depthLimit} elements inside one another). It was not opened.`,
      );
    }
    this.open.push(this.name);
    this.scopes.push(scope);
    this.depth++;
  }

  private readEndTag(at: number): void {
    const opened = this.open.pop();
    if (!opened) return this.fail("an element is closed that was not opened");
    const nameEnd = at + 2 + opened.raw.length;
    if (!this.text.startsWith(opened.raw, at + 2) || isNameCharacter(this.text.charCodeAt(nameEnd))) {
      this.fail(`the element "${opened.raw}" is closed by another name`);
    }
    const close = skipSpace(this.text, nameEnd);
    if (this.text.charCodeAt(close) !== GREATER) this.fail("a tag is not finished", close);
    this.scopes.pop();
    this.kind = "end";
    this.name = opened;
    this.depth--;
    this.end = close + 1;
  }

  private readExclamation(at: number): void {
    if (this.text.startsWith("<!--", at)) {
      const dashes = this.text.indexOf("--", at + 4);
      if (dashes < 0 || this.text.charCodeAt(dashes + 2) !== GREATER) this.fail("a comment is not finished");
      this.kind = "comment";
      this.end = dashes + 3;
    } else if (this.text.startsWith("<![CDATA[", at) && this.depth > 0) {
      const close = this.text.indexOf("]]>", at + 9);
      if (close < 0) this.fail("a CDATA section is not finished");
      this.kind = "cdata";
      this.end = close + 3;
    } else if (this.text.startsWith("<!DOCTYPE", at)) {
      refuse(
        `This workbook holds a document type declaration (${this.partName}), which no spreadsheet program writes ` +
          `and which can be used to attack. It was not opened.`,
      );
    } else this.fail("a tag is not finished");
  }

  private readInstruction(at: number): void {
    const close = this.text.indexOf("?>", at + 2);
    const nameEnd = this.attributes.nameEnd(at + 2);
    if (close < 0 || nameEnd > close) this.fail("a processing instruction is not finished");
    const target = this.text.slice(at + 2, nameEnd).toLowerCase();
    if (target === "xml" && this.base + at > 0) this.fail("an XML declaration does not stand at its beginning");
    this.kind = target === "xml" ? "declaration" : "instruction";
    this.end = close + 2;
    if (target === "xml") this.checkDeclaration(nameEnd, close);
  }

  /** A part that names an encoding other than the one its bytes are in would be read wrongly by somebody. */
  private checkDeclaration(from: number, close: number): void {
    this.attributes.clear();
    for (let index = skipSpace(this.text, from); index < close; index = skipSpace(this.text, index)) {
      index = this.attributes.read(index);
    }
    const encoding = this.attribute("encoding")?.toLowerCase();
    if (encoding !== undefined && !["utf-8", "utf8", "utf-16", "utf-16le", "utf-16be"].includes(encoding)) {
      this.fail(`it is written in the encoding "${encoding.slice(0, 40)}", which workbooks do not use`);
    }
  }

  private declare(): Scope {
    const declarations = new Map<string, string>();
    for (let index = 0; index < this.attributes.count; index++) {
      const raw = this.attributes.name(index);
      if (raw === "xmlns") declarations.set("", this.attributes.value(index));
      else if (raw.startsWith("xmlns:")) declarations.set(raw.slice(6), this.attributes.value(index));
    }
    return this.scope().with(declarations);
  }
}

function indexOrNever(text: string, what: string, from: number): number {
  const index = text.indexOf(what, from);
  return index < 0 ? Number.POSITIVE_INFINITY : index;
}
