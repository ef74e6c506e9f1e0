/** A picture as a sheet of the workbook: its sentences, its figures as cells, and a chart drawn from them. */
import { pictures as words } from "../../texts/pictures";
import type { Change, NewSheet, Overview, SheetCell, SheetChart } from "../../workbook/port";

/** A figure as people read it, and the number behind it where there is one. */
export type FigureCell = string | { readonly text: string; readonly value: number };

export interface PutFigure {
  /** What the sheet is called, where that name is free. */
  readonly sheetName: string;
  readonly title: string;
  readonly sentences: readonly string[];
  readonly columns: readonly string[];
  readonly rows: readonly (readonly FigureCell[])[];
  /** Columns of the figures, counted from 0; null: a table alone. */
  readonly chart: {
    readonly kind: SheetChart["kind"];
    readonly names?: number;
    readonly series: readonly number[];
  } | null;
}

/** As people read it: whole, with a tenth, or as a share. */
const formatOf = (text: string): string => (text.endsWith("%") ? "0%" : /\.\d$/.test(text) ? "0.0" : "#,##0");

const cellOf = (cell: FigureCell): SheetCell =>
  typeof cell === "string" ? { value: cell === "" ? null : cell } : { value: cell.value, format: formatOf(cell.text) };

const [WIDEST, NARROWEST] = [36, 11];

function freeName(wanted: string, overview: Overview): string {
  const taken = new Set(overview.sheets.map(({ name }) => name.toLowerCase()));
  for (let n = 1; ; n++) {
    const name = n === 1 ? wanted : `${wanted} ${n}`;
    if (!taken.has(name.toLowerCase())) return name;
  }
}

export function putFigure(figure: PutFigure, overview: Overview): Change {
  const { title, sentences, columns, rows, chart } = figure;
  const above: NewSheet["cells"] = [
    [{ value: title, look: "title" }],
    ...[...sentences, words.caution].map((sentence) => [sentence]),
    [],
  ];
  const header = above.length;
  const widths = columns.map((column, i) => {
    const texts = rows.map((row) => (typeof row[i] === "string" ? row[i] : (row[i]?.text ?? "")));
    const longest = Math.max(NARROWEST, ...texts.map(({ length }) => length + 2));
    return Math.min(WIDEST, Math.max(longest, Math.ceil(column.length / 2) + 2));
  });
  const drawn: SheetChart[] =
    chart === null || rows.length === 0
      ? []
      : [
          {
            ...{ kind: chart.kind, title, header, rows: rows.length },
            ...{ names: chart.names ?? 0, series: chart.series },
            at: { row: header, column: columns.length + 1 },
          },
        ];
  const sheet: NewSheet = {
    name: freeName(figure.sheetName, overview),
    cells: [
      ...above,
      columns.map((column) => ({ value: column, look: "header" as const })),
      ...rows.map((row) => row.map(cellOf)),
    ],
    widths,
    ...(drawn.length > 0 && { charts: drawn }),
    print: { landscape: true, titleRow: header, footer: title },
  };
  return { steps: [{ kind: "addSheet", sheet }], expects: [] };
}
