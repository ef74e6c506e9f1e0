/** A worksheet part with its plan carried out. */
import { parseRange, type Range, rangeText } from "../addresses";
import { MAIN } from "../parts/names";
import { refuse } from "../refusal";
import type { SheetChild } from "../sheet/tokens";
import { SheetWalk } from "../sheet/walk";
import type { XmlSource } from "../xml/encoding";
import { setAttribute, type XmlElement } from "../xml/element";
import { XmlReader } from "../xml/reader";
import { Splices } from "../xml/splices";
import { Arrays } from "./arrays";
import { CellChanger, type CellContext, type MeantCell } from "./cellChange";
import { CellWriter } from "./cellText";
import { columnsText } from "./columnWidths";
import { filterText } from "./filterText";
import { FormulaGroups } from "./formulaGroups";
import { RowsPatch } from "./patchRows";
import type { SheetPlan } from "./plan";

export interface PatchedSheet {
  readonly text: string;
  readonly meant: readonly MeantCell[];
  readonly formulaCellsChanged: boolean;
  /** Elements beside the rows that were meant to change. */
  readonly touchedChildren: ReadonlySet<string>;
}

/** ECMA-376 part 1, 18.3.1.99: what may come before the things that are put in here. */
const ORDER = [
  "sheetPr",
  "dimension",
  "sheetViews",
  "sheetFormatPr",
  "cols",
  "sheetData",
  "sheetCalcPr",
  "sheetProtection",
  "protectedRanges",
  "scenarios",
  "autoFilter",
];

export function patchSheet(source: XmlSource, plan: SheetPlan, context: CellContext): PatchedSheet {
  refuseProtected(plan);
  const splices = new Splices(source.text);
  const walk = new SheetWalk(source);
  const writer = new CellWriter(rootPrefix(source));
  const arrays = new Arrays(plan);
  const groups = new FormulaGroups(plan.facts.groups, plan.renames, writer);
  const changer = new CellChanger(plan, context, writer, groups, arrays);
  new RowsPatch(walk, plan, splices, writer, changer, groups, arrays).run();
  const around = new SheetSurroundings(walk, source.text, splices, plan);
  around.patch();
  return {
    text: splices.apply(),
    meant: changer.meant,
    formulaCellsChanged: changer.formulaCellsChanged,
    touchedChildren: around.touched,
  };
}

class SheetSurroundings {
  readonly touched = new Set<string>();

  constructor(
    private readonly walk: SheetWalk,
    private readonly source: string,
    private readonly splices: Splices,
    private readonly plan: SheetPlan,
  ) {}

  patch(): void {
    this.growDimension();
    if (this.plan.widths.length > 0) {
      const present = this.walk.child("cols");
      this.put(
        "cols",
        present,
        columnsText(present, this.plan.widths, (local) => this.tag(local)),
      );
    }
    if (this.plan.filter) this.patchFilter();
  }

  private patchFilter(): void {
    const edit = this.plan.filter;
    if (!edit) return;
    const present = this.walk.child("autoFilter");
    if (edit.remove) {
      if (present) this.put("autoFilter", present, "");
      this.setFilterMode(false);
      return;
    }
    const ref = edit.ref ?? present?.get("ref");
    if (ref === undefined) return refuse(`The sheet "${this.plan.sheet.name}" has no filter that could be changed.`);
    const text = filterText(present, this.source, edit, ref, (local) => this.tag(local));
    this.put("autoFilter", present, text);
    this.setFilterMode(
      text.includes(`<${this.tag("filterColumn")}`) && text.includes(`</${this.tag("filterColumn")}>`),
    );
  }

  /** Excel notes on the sheet itself that rows are filtered away (ECMA-376 part 1, 18.3.1.82). */
  private setFilterMode(isActive: boolean): void {
    const present = this.walk.child("sheetPr");
    this.touched.add("sheetPr");
    if (present) setAttribute(this.splices, present, "filterMode", isActive ? "1" : undefined);
    else if (isActive) this.put("sheetPr", undefined, `<${this.tag("sheetPr")} filterMode="1"/>`);
  }

  private growDimension(): void {
    const present = this.walk.child("dimension");
    const stated = present && parseRange(present.get("ref") ?? "");
    if (!present || !stated) return;
    const grown: { -readonly [K in keyof Range]: number } = { ...stated };
    for (const [row, cells] of this.plan.rows) {
      for (const [column, cell] of cells) {
        if (cell.value === undefined || cell.value === null) continue;
        grown.top = Math.min(grown.top, row);
        grown.bottom = Math.max(grown.bottom, row);
        grown.left = Math.min(grown.left, column);
        grown.right = Math.max(grown.right, column);
      }
    }
    if (rangeText(grown) === rangeText(stated)) return;
    this.touched.add("dimension");
    setAttribute(this.splices, present, "ref", rangeText(grown));
  }

  private put(local: string, present: XmlElement | undefined, text: string): void {
    this.touched.add(local);
    if (present) this.splices.replace(present.start, present.end, text);
    else this.splices.insert(this.placeFor(local), text);
  }

  private placeFor(local: string): number {
    const place = ORDER.indexOf(local);
    const comesBefore = (child: SheetChild): boolean => {
      const at = child.name.namespace === MAIN ? ORDER.indexOf(child.name.local) : -1;
      return at >= 0 && at < place;
    };
    return this.walk.children.filter(comesBefore).at(-1)?.end ?? this.walk.rootContentStart;
  }

  private tag(local: string): string {
    return this.walk.root.prefix === "" ? local : `${this.walk.root.prefix}:${local}`;
  }
}

function refuseProtected(plan: SheetPlan): void {
  const { facts, sheet } = plan;
  const hides = plan.hiddenRows.size > 0 && !facts.allowsFormattingRows && !facts.allowsFiltering;
  const filters = plan.filter !== undefined && !facts.allowsFiltering;
  const widens = plan.widths.length > 0 && !facts.allowsFormattingColumns;
  if (!hides && !filters && !widens) return;
  const what = filters ? "its filter" : hides ? "which rows it shows" : "the width of its columns";
  refuse(
    `The sheet "${sheet.name}" is protected, so ${what} cannot be changed. Unprotect it in Excel, save, and open it again.`,
  );
}

function rootPrefix(source: XmlSource): string {
  const reader = new XmlReader(source);
  while (reader.next()) if (reader.kind === "start") return reader.name.prefix;
  return "";
}
