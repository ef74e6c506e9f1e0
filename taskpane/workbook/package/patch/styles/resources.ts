/** What the cells of all sheets share: styles, and the mark of spilling arrays. Made when first asked for. */
import type { RuleLook, StyleEdit } from "../../edits";
import type { OpenedPackage } from "../../opened";
import { METADATA_CONTENT_TYPE, relationshipTypes, STYLES_CONTENT_TYPE } from "../../parts/names";
import { isRefusal, orRefusal } from "../../../xlsx/refusal";
import type { XmlSource } from "../../../xlsx/xml/encoding";
import type { CellContext } from "../cells/cell-change";
import type { Outgoing } from "../outgoing";
import { newMetadata, spillMark, withSpillMark } from "./spill-metadata";
import { MINIMAL_STYLES, StyleSheet } from "./style-sheet";

export class WorkbookResources implements CellContext {
  private styles: { readonly source: XmlSource; readonly sheet: StyleSheet } | undefined;
  private markIsNew = false;

  constructor(readonly opened: OpenedPackage) {}

  get stylesAdded(): number {
    return this.styles?.sheet.added ?? 0;
  }

  styleFor(style: StyleEdit, base: number): number {
    return this.styleSheet().sheet.resolve(style, base);
  }

  ruleStyle(look: RuleLook): number {
    return this.styleSheet().sheet.ruleStyle(look);
  }

  quoted(isQuoted: boolean, base: number): number {
    const style = orRefusal(() => ({ index: this.styleFor({ quoted: isQuoted }, base) }));
    return isRefusal(style) ? base : style.index;
  }

  dynamicMark(): number {
    const { mark, isNew } = spillMark(this.opened.parts.metadata);
    this.markIsNew ||= isNew;
    return mark;
  }

  write(outgoing: Outgoing): void {
    const { parts } = this.opened;
    const text = this.styles?.sheet.changedText();
    if (this.styles && text !== undefined) {
      if (parts.stylesPart === undefined)
        outgoing.add("styles.xml", text, STYLES_CONTENT_TYPE, relationshipTypes.styles);
      else outgoing.change(this.styles.source, text);
    }
    if (!this.markIsNew) return;
    if (parts.metadataPart === undefined) {
      outgoing.add("metadata.xml", newMetadata(), METADATA_CONTENT_TYPE, relationshipTypes.metadata);
    } else {
      const source = parts.files.xml(parts.metadataPart);
      outgoing.change(source, withSpillMark(source, parts.metadata));
    }
  }

  private styleSheet(): { readonly source: XmlSource; readonly sheet: StyleSheet } {
    if (this.styles) return this.styles;
    const { stylesPart, files } = this.opened.parts;
    const minimal: XmlSource = {
      text: MINIMAL_STYLES,
      encoding: { name: "utf-8", hasMark: false },
      partName: "styles.xml",
    };
    const source = stylesPart === undefined ? minimal : files.xml(stylesPart);
    this.styles = { source, sheet: new StyleSheet(source) };
    return this.styles;
  }
}
