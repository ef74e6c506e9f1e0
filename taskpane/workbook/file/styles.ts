/** xl/styles.xml: one style for each way a cell looks, collected while the sheets are written. */
import type { Look, RuleLook } from "../../../src/caseload/book";
import { FONT, groupPaint, LINE, looks, NORMAL_SIZE, ruleLooks, type Paint } from "./looks";
import { counted, element, MAIN, part } from "./xml";

export interface CellLook {
  readonly look?: Look | "group";
  readonly format?: string;
  readonly wrap?: boolean;
  /** The text begins like a formula: the style says that it is none, as Excel's own apostrophe does. */
  readonly isQuoted?: boolean;
}

/** Formats with a number of their own (ECMA-376 part 1, 18.8.30); others are numbered from 164. */
const BUILT_IN: Readonly<Record<string, number>> = { General: 0, "0": 1, "0.00": 2, "@": 49 };
const FIRST_OWN_FORMAT = 164;

export const TABLE_STYLE = "Caseload";
const RULE_LOOKS = Object.keys(ruleLooks) as RuleLook[];
/** Where a rule's look stands among the differential styles. */
export const ruleStyle = (look: RuleLook): number => RULE_LOOKS.indexOf(look);

const rgb = (color: string) => ({ rgb: `FF${color}` });

const font = ({ ink, size = NORMAL_SIZE, isBold, isItalic }: Paint): string =>
  element("font", {}, [
    isBold ? "<b/>" : "",
    isItalic ? "<i/>" : "",
    element("sz", { val: size }),
    element("color", rgb(ink)),
    element("name", { val: FONT }),
    element("family", { val: 2 }),
  ]);

const fill = (ground: string): string =>
  element(
    "fill",
    {},
    element("patternFill", { patternType: "solid" }, [
      element("fgColor", rgb(ground)),
      element("bgColor", { indexed: 64 }),
    ]),
  );

const SIDES = ["left", "right", "top", "bottom"];
const sides = (line: string, style: string): readonly string[] =>
  SIDES.map((side) => element(side, { style }, element("color", rgb(line))));

const border = (line: string): string => element("border", {}, [...sides(line, "thin"), "<diagonal/>"]);

/** Rules and table styles paint a ground by its background colour (ECMA-376 part 1, 18.8.14). */
const differential = ({ ink, ground, isBold, isItalic, dashes }: Paint): string =>
  element("dxf", {}, [
    element("font", {}, [isBold ? "<b/>" : "", isItalic ? "<i/>" : "", element("color", rgb(ink))]),
    ground === undefined
      ? ""
      : element("fill", {}, element("patternFill", { patternType: "solid" }, element("bgColor", rgb(ground)))),
    dashes === undefined ? "" : element("border", {}, sides(dashes, "dashed")),
  ]);

/** Thin lines between the rows of a table. */
const TABLE_LINES = element(
  "dxf",
  {},
  element(
    "border",
    {},
    ["bottom", "horizontal"].map((side) => element(side, { style: "thin" }, element("color", rgb(LINE)))),
  ),
);

const LEFT_TOP: ReadonlySet<string> = new Set(["lead", "text", "caution", "invented", "setting"]);
const IN_MIDDLE: ReadonlySet<string> = new Set(["typedHeader", "computedHeader"]);

function alignment({ look = "text", wrap, format }: CellLook): string {
  const vertical = IN_MIDDLE.has(look) ? "center" : LEFT_TOP.has(look) || wrap ? "top" : undefined;
  const horizontal = format === "@" ? "left" : undefined;
  const isPlain = !wrap && vertical === undefined && horizontal === undefined;
  return isPlain ? "" : element("alignment", { horizontal, vertical, wrapText: wrap || undefined });
}

/** Things by their text, in the order of first use. */
class Numbered {
  private readonly numbers = new Map<string, number>();
  constructor(first: readonly string[]) {
    first.forEach((text) => this.of(text));
  }
  of(text: string): number {
    const known = this.numbers.get(text) ?? this.numbers.size;
    this.numbers.set(text, known);
    return known;
  }
  get all(): readonly string[] {
    return [...this.numbers.keys()];
  }
}

const pattern = (patternType: string): string => element("fill", {}, element("patternFill", { patternType }));
const NO_BORDER = "<border><left/><right/><top/><bottom/><diagonal/></border>";

export class Styles {
  private readonly formats = new Numbered([]);
  private readonly fonts = new Numbered([font(looks.text)]);
  private readonly fills = new Numbered([pattern("none"), pattern("gray125")]);
  private readonly borders = new Numbered([NO_BORDER]);
  private readonly cells = new Numbered([element("xf", { numFmtId: 0, fontId: 0, fillId: 0, borderId: 0, xfId: 0 })]);
  private readonly known = new Map<string, number>();

  /** The number by which a cell names its style. */
  of(cell: CellLook): number {
    const key = [cell.look ?? "text", cell.format ?? "General", cell.wrap ?? false, cell.isQuoted ?? false].join("\n");
    const known = this.known.get(key) ?? this.cells.of(this.formatOf(cell));
    this.known.set(key, known);
    return known;
  }

  private formatOf(cell: CellLook): string {
    const paint = cell.look === "group" ? groupPaint : looks[cell.look ?? "text"];
    const code = cell.format ?? "General";
    const aligned = alignment(cell);
    return element(
      "xf",
      {
        numFmtId: BUILT_IN[code] ?? FIRST_OWN_FORMAT + this.formats.of(code),
        fontId: this.fonts.of(font(paint)),
        fillId: paint.ground === undefined ? 0 : this.fills.of(fill(paint.ground)),
        borderId: paint.line === undefined ? 0 : this.borders.of(border(paint.line)),
        xfId: 0,
        quotePrefix: cell.isQuoted || undefined,
        applyNumberFormat: code === "General" ? undefined : 1,
        applyFont: 1,
        applyFill: paint.ground === undefined ? undefined : 1,
        applyBorder: paint.line === undefined ? undefined : 1,
        applyAlignment: aligned === "" ? undefined : 1,
      },
      aligned,
    );
  }

  xml(): string {
    const own = this.formats.all.map((formatCode, index) =>
      element("numFmt", { numFmtId: FIRST_OWN_FORMAT + index, formatCode }),
    );
    const root = element("styleSheet", { xmlns: MAIN }, [
      counted("numFmts", own),
      counted("fonts", this.fonts.all),
      counted("fills", this.fills.all),
      counted("borders", this.borders.all),
      counted("cellStyleXfs", [element("xf", { numFmtId: 0, fontId: 0, fillId: 0, borderId: 0 })]),
      counted("cellXfs", this.cells.all),
      counted("cellStyles", [element("cellStyle", { name: "Normal", xfId: 0, builtinId: 0 })]),
      counted("dxfs", [...RULE_LOOKS.map((look) => differential(ruleLooks[look])), TABLE_LINES]),
      element(
        "tableStyles",
        { count: 1, defaultTableStyle: "TableStyleMedium2", defaultPivotStyle: "PivotStyleLight16" },
        element("tableStyle", { name: TABLE_STYLE, pivot: 0, count: 1 }, [
          element("tableStyleElement", { type: "wholeTable", dxfId: RULE_LOOKS.length }),
        ]),
      ),
    ]);
    return part(root);
  }
}
