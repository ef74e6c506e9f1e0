/** The workbook part with names added, changed or taken away. */
import type { DefinedNameEdit } from "../../edits";
import type { PackageSheet } from "../../contents";
import { renameColumns, type ColumnRename } from "../../../../../src/formula/renaming";
import { refuse } from "../../../xlsx/refusal";
import { escapeAttribute, escapeText } from "../../../xlsx/xml/characters";
import { appendInside, insertInOrder, parseElement, setAttribute, type XmlElement } from "../../../xlsx/xml/element";
import type { XmlSource } from "../../../xlsx/xml/encoding";
import { Splices } from "../../../xlsx/xml/splices";

/** ECMA-376 part 1, 18.2.27: what comes before the names. */
const ORDER = [
  "fileVersion",
  "fileSharing",
  "workbookPr",
  "workbookProtection",
  "bookViews",
  "sheets",
  "functionGroups",
  "externalReferences",
  "definedNames",
];

export function patchDefinedNames(
  source: XmlSource,
  edits: readonly DefinedNameEdit[],
  sheets: readonly PackageSheet[],
  renames: readonly ColumnRename[],
): string {
  const root = parseElement(source);
  const splices = new Splices(source.text);
  const list = root.first("definedNames");
  const present = list?.all("definedName") ?? [];
  const isMeant = (element: XmlElement, edit: DefinedNameEdit): boolean =>
    element.get("name")?.toLowerCase() === edit.name.toLowerCase() &&
    element.get("localSheetId") === scopeOf(edit, sheets);
  let removed = 0;
  for (const element of present) {
    const edit = edits.find((one) => isMeant(element, one));
    if (!edit) renameIn(splices, element, renames);
    else if (edit.text === null) {
      splices.remove(element.start, element.end);
      removed++;
    } else change(splices, element, edit);
  }
  const added = edits
    .filter((edit) => edit.text !== null && !present.some((element) => isMeant(element, edit)))
    .map((edit) => nameText(edit, scopeOf(edit, sheets), root))
    .join("");
  if (list && removed > 0 && removed === present.length && added === "") return withoutElement(source.text, list);
  if (added !== "" && list) appendInside(splices, list, added);
  else if (added !== "") {
    const tag = root.tag("definedNames");
    insertInOrder(splices, root, "definedNames", `<${tag}>${added}</${tag}>`, ORDER);
  }
  return splices.apply();
}

function scopeOf(edit: DefinedNameEdit, sheets: readonly PackageSheet[]): string | undefined {
  if (edit.sheetName === undefined) return undefined;
  const index = sheets.findIndex((sheet) => sheet.name === edit.sheetName);
  return index < 0 ? refuse(`There is no sheet "${edit.sheetName}" for the name "${edit.name}".`) : String(index);
}

function change(splices: Splices, element: XmlElement, edit: DefinedNameEdit): void {
  const text = escapeText(edit.text ?? "");
  if (element.isSelfClosing) appendInside(splices, element, text);
  else splices.replace(element.contentStart, element.contentEnd, text);
  if (edit.isHidden !== undefined) setAttribute(splices, element, "hidden", edit.isHidden ? "1" : undefined);
}

function renameIn(splices: Splices, element: XmlElement, renames: readonly ColumnRename[]): void {
  const renamed = renameColumns(element.text, renames);
  if (renamed !== element.text) splices.replace(element.contentStart, element.contentEnd, escapeText(renamed));
}

function nameText(edit: DefinedNameEdit, scope: string | undefined, root: XmlElement): string {
  const tag = root.tag("definedName");
  const attributes =
    ` name="${escapeAttribute(edit.name)}"` +
    (scope === undefined ? "" : ` localSheetId="${scope}"`) +
    (edit.isHidden ? ' hidden="1"' : "");
  return `<${tag}${attributes}>${escapeText(edit.text ?? "")}</${tag}>`;
}

function withoutElement(source: string, element: XmlElement): string {
  return source.slice(0, element.start) + source.slice(element.end);
}
