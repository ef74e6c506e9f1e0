import type { XmlElement } from "../../xlsx/xml/element";
import { DYNAMIC_ARRAY } from "./names";
import { isTrue, wholeNumber } from "./values";

/**
 * What a cell's `cm` points to (ECMA-376 part 1, 18.9; MS-XLSX 2.3.4): the n-th record of cellMetadata names a type (counted
 * from 1) and a record of that type's futureMetadata (counted from 0), which says whether the array spills by itself.
 */
export interface DynamicArrayMetadata {
  /** Values of `cm` that mark a spilling array. */
  readonly marks: ReadonlySet<number>;
  readonly cellRecords: number;
  /** The place of the type XLDAPR among the metadata types, counted from 1; 0 for none. */
  readonly typeIndex: number;
  readonly typeCount: number;
  /** The first record of XLDAPR that says "dynamic"; -1 for none. */
  readonly dynamicRecord: number;
  readonly futureRecords: number;
}

const TYPE = "XLDAPR";

export function readMetadata(root: XmlElement | undefined): DynamicArrayMetadata {
  const types = root?.first("metadataTypes")?.all("metadataType") ?? [];
  const typeIndex = types.findIndex((type) => type.get("name") === TYPE) + 1;
  const future = root?.all("futureMetadata").find((one) => one.get("name") === TYPE);
  const dynamic = (future?.all("bk") ?? []).map(saysDynamic);
  const marks = new Set<number>();
  const records = root?.first("cellMetadata")?.all("bk") ?? [];
  records.forEach((record, index) => {
    const points = record.all("rc").some((rc) => {
      return wholeNumber(rc.get("t"), 0) === typeIndex && dynamic[wholeNumber(rc.get("v"), -1)] === true;
    });
    if (typeIndex > 0 && points) marks.add(index + 1);
  });
  return {
    marks,
    cellRecords: records.length,
    typeIndex,
    typeCount: types.length,
    dynamicRecord: dynamic.indexOf(true),
    futureRecords: dynamic.length,
  };
}

function saysDynamic(element: XmlElement): boolean {
  if (element.name.namespace === DYNAMIC_ARRAY && element.name.local === "dynamicArrayProperties") {
    return isTrue(element.get("fDynamic"));
  }
  return element.children.some(saysDynamic);
}
