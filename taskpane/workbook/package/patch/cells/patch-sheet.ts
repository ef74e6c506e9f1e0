/** A worksheet part with its plan carried out. */
import { parseRange, type Range, rangeText } from "../../addresses";
import { MAIN } from "../../parts/names";
import { refuse } from "../../../xlsx/refusal";
import { ByteWriter, isSame } from "../../../xlsx/byte-writer";
import type { Beside, SheetChild } from "../../sheet/tokens";
import { childElement, type SheetFrame } from "../../sheet/walk";
import { setAttribute, type XmlElement } from "../../../xlsx/xml/element";
import { Splices } from "../../../xlsx/xml/splices";
import { Arrays } from "./arrays";
import { CellChanger, type CellContext, type MeantCell } from "./cell-change";
import { CellWriter } from "./cell-text";
import { columnsText } from "./column-widths";
import { filterText } from "../tables/filter-text";
import { FormulaGroups } from "./formula-groups";
import { RowsPatch } from "./patch-rows";
import { ruleText } from "./rule-text";
import type { SheetPlan } from "../plan/plan";

export interface PatchedSheet {
  /** As it is to be written, in UTF-8; undefined where it stays as it is. */
  readonly chunks: readonly Uint8Array[] | undefined;
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
  "sortState",
  "dataConsolidate",
  "customSheetViews",
  "mergeCells",
  "phoneticPr",
  "conditionalFormatting",
];

export function* patchSheet(plan: SheetPlan, context: CellContext): Generator<number, PatchedSheet, void> {
  refuseProtected(plan);
  const { frame, store } = plan.facts;
  const writer = new CellWriter(frame.root.prefix);
  const arrays = new Arrays(plan);
  const groups = new FormulaGroups(store.data.groups, plan.renames, writer);
  const changer = new CellChanger(plan, context, writer, groups, arrays);
  const rows = new ByteWriter();
  const patch = new RowsPatch(plan, rows, writer, changer, groups, arrays);
  yield* patch.run();
  const around = new SheetSurroundings(plan, context);
  around.patch();
  const { head, tail } = around.splices;
  const { data } = frame;
  const isOpened = data.isSelfClosing && patch.isChanged;
  if (isOpened) head.replace(frame.head.length - 2, frame.head.length, ">");
  const isUntouched = !patch.isChanged && head.isEmpty && tail.isEmpty;
  return {
    chunks: isUntouched ? undefined : differentChunks(frame, around, rows, isOpened ? `</${data.name.raw}>` : ""),
    meant: changer.meant,
    formulaCellsChanged: changer.formulaCellsChanged,
    touchedChildren: around.touched,
  };
}

function differentChunks(
  { part }: SheetFrame,
  { splices }: SheetSurroundings,
  rows: ByteWriter,
  closing: string,
): readonly Uint8Array[] | undefined {
  const out = new ByteWriter();
  out.text(splices.head.apply());
  rows.close();
  for (const chunk of rows.chunks) out.bytes(chunk);
  out.text(closing + splices.tail.apply());
  out.close();
  return out.length === part.bytes.length && isSame(out.chunks, part.bytes) ? undefined : out.chunks;
}

class SheetSurroundings {
  readonly touched = new Set<string>();
  readonly splices: Readonly<Record<Beside, Splices>>;
  private readonly frame: SheetFrame;

  constructor(
    private readonly plan: SheetPlan,
    private readonly context: CellContext,
  ) {
    this.frame = plan.facts.frame;
    this.splices = { head: new Splices(this.frame.head), tail: new Splices(this.frame.tail) };
  }

  patch(): void {
    this.growDimension();
    if (this.plan.widths.length > 0) {
      const present = this.child("cols");
      this.put(
        "cols",
        present,
        columnsText(present, this.plan.widths, (local) => this.tag(local)),
      );
    }
    if (this.plan.filter) this.patchFilter();
    if (this.plan.rules.length > 0) this.addRules();
  }

  /** A lower number goes first: what was there keeps its place before them. */
  private addRules(): void {
    const { head, tail } = this.frame;
    const taken = [...`${head}${tail}`.matchAll(/\bpriority\s*=\s*["'](\d+)/g)].map(([, number]) => Number(number));
    const first = Math.max(0, ...taken) + 1;
    const text = this.plan.rules
      .map((rule, i) => ruleText(rule, first + i, this.context.ruleStyle(rule.look), (local) => this.tag(local)))
      .join("");
    this.touched.add("conditionalFormatting");
    const [place, at] = this.placeFor("conditionalFormatting");
    this.splices[place].insert(at, text);
  }

  private patchFilter(): void {
    const edit = this.plan.filter;
    if (!edit) return;
    const present = this.child("autoFilter");
    if (edit.remove) {
      if (present) this.put("autoFilter", present, "");
      this.setFilterMode(false);
      return;
    }
    const ref = edit.ref ?? present?.get("ref");
    if (ref === undefined) return refuse(`The sheet "${this.plan.sheet.name}" has no filter that could be changed.`);
    const text = filterText(present, this.frame[this.placeOf("autoFilter")], edit, ref, (local) => this.tag(local));
    this.put("autoFilter", present, text);
    this.setFilterMode(
      text.includes(`<${this.tag("filterColumn")}`) && text.includes(`</${this.tag("filterColumn")}>`),
    );
  }

  /** Excel notes on the sheet itself that rows are filtered away (ECMA-376 part 1, 18.3.1.82). */
  private setFilterMode(isActive: boolean): void {
    const present = this.child("sheetPr");
    this.touched.add("sheetPr");
    if (present) setAttribute(this.splices[this.placeOf("sheetPr")], present, "filterMode", isActive ? "1" : undefined);
    else if (isActive) this.put("sheetPr", undefined, `<${this.tag("sheetPr")} filterMode="1"/>`);
  }

  private growDimension(): void {
    const present = this.child("dimension");
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
    setAttribute(this.splices[this.placeOf("dimension")], present, "ref", rangeText(grown));
  }

  private put(local: string, present: XmlElement | undefined, text: string): void {
    this.touched.add(local);
    if (present) this.splices[this.placeOf(local)].replace(present.start, present.end, text);
    else {
      const [place, at] = this.placeFor(local);
      this.splices[place].insert(at, text);
    }
  }

  private child(local: string): XmlElement | undefined {
    return childElement(this.frame, local);
  }

  private placeOf(local: string): Beside {
    return this.frame.children.find(({ name }) => name.namespace === MAIN && name.local === local)?.place ?? "head";
  }

  private placeFor(local: string): readonly [Beside, number] {
    const place = ORDER.indexOf(local);
    const comesBefore = (child: SheetChild): boolean => {
      const at = child.name.namespace === MAIN ? ORDER.indexOf(child.name.local) : -1;
      return at >= 0 && (at < place || child.name.local === local);
    };
    const before = this.frame.children.filter(comesBefore).at(-1);
    return before ? [before.place, before.end] : ["head", this.frame.rootContentStart];
  }

  private tag(local: string): string {
    const { prefix } = this.frame.root;
    return prefix === "" ? local : `${prefix}:${local}`;
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
