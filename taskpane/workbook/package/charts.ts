/**
 * Charts of a sheet that comes in: a drawing with its charts, each drawn from the sheet's own cells (DrawingML charts,
 * ECMA-376 part 1, 21.2, and SpreadsheetML drawings, 20.5). No results are kept beside the references: programs read the
 * cells when they open the file.
 */
import type { NewChart } from "./edits";
import { OFFICE_RELATIONSHIPS, RELATIONSHIPS } from "./parts/names";
import { relationshipsPart } from "./parts/package-files";
import { escapeText } from "../xlsx/xml/characters";

const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006";
const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
/** How large each is, in columns and rows of the default size. */
const [WIDE, TALL] = [9, 20];
const INKS = ["0C5A6B", "8C1C4B", "4A3000", "3A2E66", "535F60"];

export interface LoosePart {
  readonly name: string;
  readonly text: string;
  /** Null: the package's list of types knows its ending. */
  readonly contentType: string | null;
}

const relations = (all: readonly { readonly type: string; readonly target: string }[]): string =>
  `${HEAD}<Relationships xmlns="${RELATIONSHIPS}">${all
    .map(
      ({ type, target }, i) =>
        `<Relationship Id="rId${i + 1}" Type="${OFFICE_RELATIONSHIPS}/${type}" Target="${target}"/>`,
    )
    .join("")}</Relationships>`;

/** @param isTaken whether a part of that name is there already */
export function chartParts(
  sheetName: string,
  sheetPart: string,
  charts: readonly NewChart[],
  isTaken: (part: string) => boolean,
): readonly LoosePart[] {
  const used = new Set<string>();
  const free = (stem: string): string => {
    for (let n = 1; ; n++) {
      const name = `${stem}${n}.xml`;
      if (isTaken(name) || used.has(name)) continue;
      used.add(name);
      return name;
    }
  };
  const drawing = free("xl/drawings/drawing");
  const parts = charts.map((chart) => ({ name: free("xl/charts/chart"), text: chartXml(chart, sheetName) }));
  const type = (kind: string): string => `application/vnd.openxmlformats-officedocument.${kind}+xml`;
  return [
    {
      name: relationshipsPart(sheetPart),
      text: relations([{ type: "drawing", target: `/${drawing}` }]),
      contentType: null,
    },
    { name: drawing, text: drawingXml(charts), contentType: type("drawing") },
    {
      name: relationshipsPart(drawing),
      text: relations(parts.map(({ name }) => ({ type: "chart", target: `/${name}` }))),
      contentType: null,
    },
    ...parts.map((part) => ({ ...part, contentType: type("drawingml.chart") })),
  ];
}

function drawingXml(charts: readonly NewChart[]): string {
  const place = (row: number, column: number) =>
    `<xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff>`;
  const anchors = charts.map(
    ({ at: { row, column }, title }, i) =>
      `<xdr:twoCellAnchor><xdr:from>${place(row, column)}</xdr:from><xdr:to>${place(row + TALL, column + WIDE)}</xdr:to>` +
      `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="${i + 2}" name="Chart ${i + 1}" descr="${escapeText(title).replaceAll('"', "&quot;")}"/>` +
      `<xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>` +
      `<a:graphic><a:graphicData uri="${DRAWING}/chart"><c:chart xmlns:c="${DRAWING}/chart" r:id="rId${i + 1}"/></a:graphicData></a:graphic>` +
      `</xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor>`,
  );
  return (
    `${HEAD}<xdr:wsDr xmlns:xdr="${DRAWING}/spreadsheetDrawing" xmlns:a="${DRAWING}/main" ` +
    `xmlns:r="${OFFICE_RELATIONSHIPS}">${anchors.join("")}</xdr:wsDr>`
  );
}

const [X_AXIS, Y_AXIS] = ["111", "222"];

function chartXml({ kind, title, names, series }: NewChart, sheetName: string): string {
  const on = (ref: string): string => escapeText(`'${sheetName.replaceAll("'", "''")}'!${ref}`);
  const isScatter = kind === "scatter";
  const one = (i: number, { name, values }: NewChart["series"][number]): string => {
    const ink = `<a:solidFill><a:srgbClr val="${INKS[i % INKS.length]}"/></a:solidFill>`;
    const looks = kind === "lines" || isScatter ? `<a:ln w="22225">${ink}</a:ln>` : ink;
    const reference = (tag: string, ref: string, isText: boolean): string =>
      `<c:${tag}><c:${isText ? "strRef" : "numRef"}><c:f>${on(ref)}</c:f></c:${isText ? "strRef" : "numRef"}></c:${tag}>`;
    return (
      `<c:ser><c:idx val="${i}"/><c:order val="${i}"/>${reference("tx", name, true)}<c:spPr>${looks}</c:spPr>` +
      (kind === "columns" || kind === "bars" ? `<c:invertIfNegative val="0"/>` : "") +
      (isScatter ? `<c:marker><c:symbol val="none"/></c:marker>` : "") +
      (isScatter
        ? reference("xVal", names, false) + reference("yVal", values, false)
        : reference("cat", names, true) + reference("val", values, false)) +
      (kind === "lines" || isScatter ? `<c:smooth val="0"/>` : "") +
      "</c:ser>"
    );
  };
  const all = series.map((each, i) => one(i, each)).join("");
  const axes = `<c:axId val="${X_AXIS}"/><c:axId val="${Y_AXIS}"/>`;
  const plots: Readonly<Record<NewChart["kind"], string>> = {
    columns: `<c:barChart><c:barDir val="col"/><c:grouping val="stacked"/><c:varyColors val="0"/>${all}<c:gapWidth val="60"/><c:overlap val="100"/>${axes}</c:barChart>`,
    bars: `<c:barChart><c:barDir val="bar"/><c:grouping val="clustered"/><c:varyColors val="0"/>${all}<c:gapWidth val="60"/>${axes}</c:barChart>`,
    lines: `<c:lineChart><c:grouping val="standard"/><c:varyColors val="0"/>${all}<c:marker val="1"/>${axes}</c:lineChart>`,
    scatter: `<c:scatterChart><c:scatterStyle val="lineMarker"/><c:varyColors val="0"/>${all}${axes}</c:scatterChart>`,
  };
  const axis = (tag: string, id: string, other: string, place: string, isTurned: boolean): string =>
    `<c:${tag}><c:axId val="${id}"/><c:scaling><c:orientation val="${isTurned ? "maxMin" : "minMax"}"/></c:scaling><c:delete val="0"/>` +
    `<c:axPos val="${place}"/><c:numFmt formatCode="General" sourceLinked="1"/><c:majorTickMark val="out"/><c:minorTickMark val="none"/>` +
    `<c:tickLblPos val="nextTo"/><c:crossAx val="${other}"/><c:crosses val="${isTurned ? "autoZero" : kind === "bars" ? "max" : "autoZero"}"/></c:${tag}>`;
  const isBars = kind === "bars";
  return (
    `${HEAD}<c:chartSpace xmlns:c="${DRAWING}/chart" xmlns:a="${DRAWING}/main" xmlns:r="${OFFICE_RELATIONSHIPS}"><c:chart>` +
    `<c:title><c:tx><c:rich><a:bodyPr/><a:p><a:r><a:t>${escapeText(title)}</a:t></a:r></a:p></c:rich></c:tx><c:overlay val="0"/></c:title>` +
    `<c:autoTitleDeleted val="0"/><c:plotArea><c:layout/>${plots[kind]}` +
    /* The first name stands at the top of bars, as it does in the figures. */
    axis(isScatter ? "valAx" : "catAx", X_AXIS, Y_AXIS, isBars ? "l" : "b", isBars) +
    axis("valAx", Y_AXIS, X_AXIS, isBars ? "b" : "l", false) +
    `</c:plotArea>${series.length > 1 ? '<c:legend><c:legendPos val="b"/><c:overlay val="0"/></c:legend>' : ""}` +
    `<c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart></c:chartSpace>`
  );
}
