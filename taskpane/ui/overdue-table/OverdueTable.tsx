/** What is overdue, due or without a date, in three tables: on screen, on paper, as a sheet. */
import { useEffect, useState } from "react";
import { agreement } from "../../actions/clinic-settings/agreement";
import { sheetOfValues } from "../../actions/new-sheet";
import { overdueSheet, readOverdue, type Overdue } from "../../actions/overdue-table";
import { standings, type Standing } from "../../../src/schedule/overdue-table";
import { overdueTable as words } from "../../texts/overdue-table";
import { pane as paneTexts } from "../../texts/pane";
import type { JobProps } from "../pane/define-job";
import { Notice } from "../parts/Notice";
import { SheetPress } from "../parts/SheetPress";
import { Step } from "../parts/Step";
import { PaperFoot, PrintPress } from "../print/Paper";

export function OverdueTable({ workbook, overview, today, locale, version, isShown }: JobProps) {
  const [overdue, setOverdue] = useState<Overdue | string | null>(null);
  useEffect(() => {
    if (!isShown || !workbook || !overview) return;
    let isCurrent = true;
    readOverdue(workbook, today).then(
      (read) => isCurrent && setOverdue(read),
      /* A host that is busy tells again when it is done; until then no count is better than an old one. */
      () => isCurrent && setOverdue(null),
    );
    return () => void (isCurrent = false);
  }, [isShown, overview, today, workbook]);
  if (!workbook || !overview) return <p>{paneTexts.waiting}</p>;
  if (overdue === null) return <p>{paneTexts.loading}</p>;
  if (typeof overdue === "string")
    return (
      <Notice kind="plain">
        <p>{overdue}</p>
      </Notice>
    );
  const paper = { overview, today, locale, version, agreed: agreement(overview, today).sentence };
  return (
    <>
      <Tables overdue={overdue} />
      <div className="presses">
        <PrintPress
          press={words.print}
          page={
            <>
              <h1>{words.heading(overdue.label)}</h1>
              <Tables overdue={overdue} />
              <PaperFoot {...paper} />
            </>
          }
        />
        <SheetPress workbook={workbook} change={() => sheetOfValues(overdueSheet(overdue), overview, today)} />
      </div>
    </>
  );
}

function Tables({ overdue: { tables, missing, rows } }: { readonly overdue: Overdue }) {
  const sum = (standing: Standing): number =>
    (tables[0]?.lines ?? []).reduce((all, { counts }) => all + counts[standing], 0);
  return (
    <>
      {tables.length > 0 && (
        <p>
          <strong>{words.counted(sum("overdue"), sum("no date"), rows)}</strong>
        </p>
      )}
      {missing.length > 0 && <p>{words.missing(missing.map((way) => words.ways[way].toLowerCase()))}</p>}
      {tables.map(({ way, lines }) => (
        <Step key={way} title={words.ways[way]}>
          <table className="figures">
            <thead>
              <tr>
                <td />
                {words.columns.map((column) => (
                  <th scope="col" key={column}>
                    {column}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {lines.map(({ by, counts, all }) => (
                <tr key={by}>
                  <th scope="row">{by}</th>
                  {standings.map((standing) => (
                    <td key={standing}>{counts[standing]}</td>
                  ))}
                  <td>{all}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Step>
      ))}
      <p className="note">{words.caution}</p>
    </>
  );
}
