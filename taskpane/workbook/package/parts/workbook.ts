import type { DefinedName, PackageSheet } from "../contents";
import { refuse } from "../../xlsx/refusal";
import type { XmlElement } from "../../xlsx/xml/element";
import { OFFICE_RELATIONSHIPS, relationshipTypes } from "./names";
import type { Relationship } from "./package-files";
import { isTrue, wholeNumber } from "./values";

/** What the workbook part says of a sheet; the rest stands in the sheet's own part. */
export type ListedSheet = Pick<PackageSheet, "name" | "sheetId" | "relationshipId" | "partName" | "kind" | "state">;

export function readDate1904(workbook: XmlElement): boolean {
  return isTrue(workbook.first("workbookPr")?.get("date1904"));
}

/** The first window's; a workbook that says nothing shows its first sheet (ECMA-376 part 1, 18.2.30). */
export function readActiveSheet(workbook: XmlElement, sheets: readonly ListedSheet[]): string | undefined {
  const view = workbook.first("bookViews")?.first("workbookView");
  return view && sheets[wholeNumber(view.get("activeTab"), 0)]?.name;
}

export function readStructureLock(workbook: XmlElement): boolean {
  return isTrue(workbook.first("workbookProtection")?.get("lockStructure"));
}

export function readSheets(workbook: XmlElement, relationships: readonly Relationship[]): ListedSheet[] {
  const names = new Set<string>();
  return (workbook.first("sheets")?.all("sheet") ?? []).map((sheet) => {
    const name = sheet.get("name") ?? "";
    const relationshipId = sheet.attribute("id", OFFICE_RELATIONSHIPS)?.value ?? "";
    const relationship = relationships.find((one) => one.id === relationshipId);
    if (!relationship || names.has(name.toLowerCase())) {
      return refuse(
        `This workbook is damaged: it lists the sheet "${name}", which cannot be found. Open it in Excel and save a copy.`,
      );
    }
    names.add(name.toLowerCase());
    const state = sheet.get("state");
    return {
      name,
      sheetId: wholeNumber(sheet.get("sheetId"), 0),
      relationshipId,
      partName: relationship.target,
      kind: kindOf(relationship.type),
      state: state === "hidden" || state === "veryHidden" ? state : "visible",
    };
  });
}

function kindOf(relationshipType: string): PackageSheet["kind"] {
  if (relationshipType === relationshipTypes.worksheet) return "worksheet";
  return relationshipType === relationshipTypes.chartsheet ? "chartsheet" : "other";
}

export function readDefinedNames(workbook: XmlElement, sheets: readonly ListedSheet[]): DefinedName[] {
  return (workbook.first("definedNames")?.all("definedName") ?? []).map((element) => {
    const scope = element.get("localSheetId");
    const sheetName = scope === undefined ? undefined : sheets[Number(scope)]?.name;
    return {
      name: element.get("name") ?? "",
      ...(sheetName === undefined ? {} : { sheetName }),
      text: element.text,
      isHidden: isTrue(element.get("hidden")),
    };
  });
}
