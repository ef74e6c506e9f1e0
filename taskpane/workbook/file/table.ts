/** xl/tables/tableN.xml: a table with its filter buttons, and the formulas that rows added later take over. */
import { standing, type TableDescription } from "../../../src/caseload/book";
import { cellAddress } from "../../../src/columns/formula";
import { inFile } from "./formula";
import { TABLE_STYLE } from "./styles";
import { asText, counted, element, MAIN, part } from "./xml";

const tableRange = ({ top, left, rows, columns }: TableDescription): string =>
  `${cellAddress(top, left)}:${cellAddress(top + rows.length, left + columns.length - 1)}`;

export function tableXml(table: TableDescription, id: number): string {
  const ref = tableRange(table);
  const columns = table.columns.map(({ header, formula }, index) =>
    element(
      "tableColumn",
      { id: index + 1, name: header },
      formula ? `<calculatedColumnFormula>${asText(inFile(standing(table, index)))}</calculatedColumnFormula>` : "",
    ),
  );
  const root = element(
    "table",
    { xmlns: MAIN, id, name: table.name, displayName: table.name, ref, totalsRowShown: 0 },
    [
      element("autoFilter", { ref }),
      counted("tableColumns", columns),
      element("tableStyleInfo", {
        name: TABLE_STYLE,
        showFirstColumn: 0,
        showLastColumn: 0,
        showRowStripes: 0,
        showColumnStripes: 0,
      }),
    ],
  );
  return part(root);
}
