/** New cell styles: a copy of a present one with differences, appended to styles.xml; one that is there already is used again. */
import type { RuleLook, StyleChange, StyleEdit } from "../../edits";
import { builtInId, FIRST_CUSTOM_FORMAT } from "../../parts/number-formats";
import { wholeNumber } from "../../parts/values";
import { refuse } from "../../../xlsx/refusal";
import { escapeAttribute } from "../../../xlsx/xml/characters";
import { appendInside, insertInOrder, parseElement, setAttribute, type XmlElement } from "../../../xlsx/xml/element";
import type { XmlSource } from "../../../xlsx/xml/encoding";
import { Splices } from "../../../xlsx/xml/splices";
import { changedFill, changedFont } from "./fonts";

/** A list in styles.xml whose members are named by their place. */
class StyleList {
  readonly texts: string[];
  readonly present: number;

  constructor(
    readonly element: XmlElement,
    member: string,
    source: string,
  ) {
    this.texts = element.all(member).map((one) => source.slice(one.start, one.end));
    this.present = this.texts.length;
  }

  place(text: string): number {
    const place = this.texts.indexOf(text);
    return place >= 0 ? place : this.texts.push(text) - 1;
  }
}

const noStyle = (index: number): never => refuse(`There is no cell style ${index} in this workbook.`);

/** ECMA-376 part 1, 18.8.39. */
const BEFORE_RULE_STYLES = [
  ...["numFmts", "fonts", "fills", "borders", "cellStyleXfs", "cellXfs", "cellStyles", "dxfs"],
];

export class StyleSheet {
  private readonly root: XmlElement;
  private readonly fonts: StyleList;
  private readonly fills: StyleList;
  private readonly styles: StyleList;
  private readonly xfs: readonly XmlElement[];
  private readonly formatIds = new Map<string, number>();
  private readonly newFormats: string[] = [];
  private readonly newRuleStyles: string[] = [];
  private readonly resolved = new Map<string, number>();
  private readonly keys = new WeakMap<StyleChange, string>();
  private nextFormatId = FIRST_CUSTOM_FORMAT;

  constructor(private readonly source: XmlSource) {
    this.root = parseElement(source);
    this.fonts = this.list("fonts", "font");
    this.fills = this.list("fills", "fill");
    this.styles = this.list("cellXfs", "xf");
    this.xfs = this.styles.element.all("xf");
    for (const format of this.root.first("numFmts")?.all("numFmt") ?? []) {
      const id = wholeNumber(format.get("numFmtId"), 0);
      const code = format.get("formatCode") ?? "";
      if (!this.formatIds.has(code)) this.formatIds.set(code, id);
      this.nextFormatId = Math.max(this.nextFormatId, id + 1);
    }
  }

  get added(): number {
    return this.styles.texts.length - this.styles.present;
  }

  /** The index of a style, made when there is none like it yet. */
  resolve(style: StyleEdit, base: number): number {
    if (typeof style === "number") {
      return style >= 0 && style < this.styles.present ? style : noStyle(style);
    }
    let changeKey = this.keys.get(style);
    if (changeKey === undefined) this.keys.set(style, (changeKey = JSON.stringify(style)));
    const from = style.from ?? base;
    const key = `${from} ${changeKey}`;
    let index = this.resolved.get(key);
    if (index === undefined) this.resolved.set(key, (index = this.make(style, from)));
    return index;
  }

  /** The place of a look among those that conditional formats have; made when there is none like it yet. */
  ruleStyle({ ink, ground, isBold, isItalic }: RuleLook): number {
    const tag = (local: string) => this.root.tag(local);
    const letters = `${isBold ? `<${tag("b")}/>` : ""}${isItalic ? `<${tag("i")}/>` : ""}`;
    /* In a rule's own style the colour of a solid ground is the one that cells use for the paper (18.8.14). */
    const text =
      `<${tag("dxf")}><${tag("font")}>${letters}<${tag("color")} rgb="FF${ink}"/></${tag("font")}>` +
      `<${tag("fill")}><${tag("patternFill")}><${tag("bgColor")} rgb="FF${ground}"/></${tag("patternFill")}></${tag("fill")}></${tag("dxf")}>`;
    const present = this.root.first("dxfs")?.all("dxf") ?? [];
    const same = present.findIndex((one) => this.source.text.slice(one.start, one.end) === text);
    if (same >= 0) return same;
    const place = this.newRuleStyles.indexOf(text);
    return present.length + (place >= 0 ? place : this.newRuleStyles.push(text) - 1);
  }

  private addRuleStyles(splices: Splices): void {
    const present = this.root.first("dxfs");
    const text = this.newRuleStyles.join("");
    if (present) {
      setAttribute(splices, present, "count", String(present.all("dxf").length + this.newRuleStyles.length));
      appendInside(splices, present, text);
    } else {
      const tag = this.root.tag("dxfs");
      const element = `<${tag} count="${this.newRuleStyles.length}">${text}</${tag}>`;
      insertInOrder(splices, this.root, "dxfs", element, BEFORE_RULE_STYLES);
    }
  }

  /** The part's new text; undefined when nothing was added. */
  changedText(): string | undefined {
    const splices = new Splices(this.source.text);
    for (const list of [this.fonts, this.fills, this.styles]) {
      if (list.texts.length === list.present) continue;
      setAttribute(splices, list.element, "count", String(list.texts.length));
      appendInside(splices, list.element, list.texts.slice(list.present).join(""));
    }
    if (this.newFormats.length > 0) this.addFormats(splices);
    if (this.newRuleStyles.length > 0) this.addRuleStyles(splices);
    return splices.isEmpty ? undefined : splices.apply();
  }

  private list(name: string, member: string): StyleList {
    const element = this.root.first(name);
    if (!element?.first(member)) {
      return refuse(
        "This workbook's cell styles are not complete, so that none can be added. Open it in Excel, save a copy and open that.",
      );
    }
    return new StyleList(element, member, this.source.text);
  }

  private make(change: StyleChange, from: number): number {
    const model = this.xfs[from] ?? noStyle(from);
    const attributes = new Map(model.attributes.map((one) => [one.raw, one.value]));
    const set = (name: string, value: number, applies: string): void => {
      if (wholeNumber(attributes.get(name), 0) === value) return;
      attributes.set(name, String(value));
      attributes.set(applies, "1");
    };
    if (change.numberFormat !== undefined) set("numFmtId", this.formatId(change.numberFormat), "applyNumberFormat");
    if (change.bold !== undefined || change.italic !== undefined || change.fontColor !== undefined) {
      const font = this.fonts.texts[wholeNumber(attributes.get("fontId"), 0)] ?? (this.fonts.texts[0] as string);
      set("fontId", this.fonts.place(changedFont(font, change, this.root)), "applyFont");
    }
    if (change.fill !== undefined) {
      set("fillId", change.fill === null ? 0 : this.fills.place(changedFill(change.fill, this.root)), "applyFill");
    }
    if (change.quoted === true) attributes.set("quotePrefix", "1");
    else if (change.quoted === false) attributes.delete("quotePrefix");
    return this.styleLike(model, attributes, change);
  }

  private styleLike(model: XmlElement, attributes: Map<string, string>, change: StyleChange): number {
    const alignment = new Map(model.first("alignment")?.attributes.map((one) => [one.raw, one.value]) ?? []);
    if (change.wrap !== undefined) alignment.set("wrapText", change.wrap ? "1" : "0");
    if (change.horizontal !== undefined) alignment.set("horizontal", change.horizontal);
    if (change.wrap !== undefined || change.horizontal !== undefined) attributes.set("applyAlignment", "1");
    const others = model.children
      .filter((child) => child.name.local !== "alignment")
      .map((child) => this.source.text.slice(child.start, child.end));
    const inside =
      (alignment.size > 0 ? `<${model.tag("alignment")}${attributesText(alignment)}/>` : "") + others.join("");
    const name = model.name.raw;
    const start = `<${name}${attributesText(attributes)}`;
    const text = inside === "" ? `${start}/>` : `${start}>${inside}</${name}>`;
    const same = this.xfs.findIndex((one) => this.canonical(one) === canonicalText(attributes, inside));
    return same >= 0 ? same : this.styles.place(text);
  }

  private canonical(style: XmlElement): string {
    const inside = style.children.map((child) =>
      child.name.local === "alignment"
        ? `<${child.name.raw}${attributesText(new Map(child.attributes.map((one) => [one.raw, one.value])))}/>`
        : this.source.text.slice(child.start, child.end),
    );
    return canonicalText(new Map(style.attributes.map((one) => [one.raw, one.value])), inside.join(""));
  }

  private formatId(code: string): number {
    const known = builtInId(code) ?? this.formatIds.get(code);
    if (known !== undefined) return known;
    const id = this.nextFormatId++;
    this.formatIds.set(code, id);
    this.newFormats.push(`<${this.root.tag("numFmt")} numFmtId="${id}" formatCode="${escapeAttribute(code)}"/>`);
    return id;
  }

  private addFormats(splices: Splices): void {
    const present = this.root.first("numFmts");
    const text = this.newFormats.join("");
    if (present) {
      setAttribute(splices, present, "count", String(present.all("numFmt").length + this.newFormats.length));
      appendInside(splices, present, text);
    } else {
      const tag = this.root.tag("numFmts");
      const element = `<${tag} count="${this.newFormats.length}">${text}</${tag}>`;
      insertInOrder(splices, this.root, "numFmts", element, ["numFmts"]);
    }
  }
}

function attributesText(attributes: ReadonlyMap<string, string>): string {
  let text = "";
  for (const [name, value] of attributes) text += ` ${name}="${escapeAttribute(value)}"`;
  return text;
}

/** Two styles are one when this is the same: the order of attributes does not count. */
function canonicalText(attributes: ReadonlyMap<string, string>, inside: string): string {
  return attributesText(new Map([...attributes].sort(([one], [other]) => (one < other ? -1 : 1)))) + inside;
}

/** For a workbook that came without styles. */
export const MINIMAL_STYLES =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n' +
  '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">' +
  '<fonts count="1"><font><sz val="11"/><name val="Calibri"/><family val="2"/></font></fonts>' +
  '<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>' +
  '<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders>' +
  '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
  '<cellXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs>' +
  '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>';
