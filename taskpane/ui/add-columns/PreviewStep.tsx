import { useState } from "react";
import { FormulasField, MissedRows } from "./FormulasField";
import { recipeNamed } from "../../../src/columns/recipes/index";
import type { AddColumnsPlan, ColumnPreview, RowGroup, Survey } from "../../actions/add-columns/interface";
import type { Problem } from "../../actions/action";
import { asksOf } from "../../../src/columns/asks";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { pane as paneTexts } from "../../texts/pane";
import { dateText } from "../parts/dates";
import { ProblemNotice } from "../parts/ProblemNotice";
import { Sentences } from "../parts/Sentences";
import { Step } from "../parts/Step";
import type { AddColumnsState } from "./useAddColumns";

const words = addColumnsTexts.preview;
/** Presses for single rows shown at once; the rest a press away. */
const FIRST_ROWS = 5;
const MORE_ROWS = 50;

interface Props {
  readonly number: number;
  readonly state: AddColumnsState;
  readonly survey: Survey;
  readonly plan: AddColumnsPlan | Problem;
  readonly locale: string;
}

/** What will happen, in numbers, before it happens. */
export function PreviewStep({ number, state, survey, plan, locale }: Props) {
  if (plan.outcome === "problem") {
    return (
      <Step number={number} title={paneTexts.preview}>
        <ProblemNotice problem={plan} reveal={state.reveal} />
      </Step>
    );
  }
  const counting = plan.columns.filter(({ key }) => recipeNamed(key).usesAsOf).map(({ header }) => header);
  const date = dateText(survey.asOf.day, locale);
  const showRow = (row: number) => {
    const { sheet, area } = plan.place;
    const list = survey.list?.area;
    state.reveal({
      sheet,
      area: { top: row - 1, left: list?.left ?? area.left, rows: 1, columns: list?.columns ?? area.columns },
    });
  };
  const [first, ...others] = plan.says.filter((sentence) => !plan.routine.includes(sentence));
  return (
    <Step number={number} title={paneTexts.preview}>
      <p>
        <strong>{first}</strong>
      </p>
      {others.length > 0 && <Sentences of={others} />}
      <MissedRows columns={plan.columns} />
      {plan.columns.map((column) => column.counts.length > 0 && <Counts key={column.key} column={column} />)}
      <details className="fold">
        <summary>{words.full}</summary>
        <FormulasField columns={plan.columns} state={state} />
        {plan.routine.length > 0 && <Sentences of={plan.routine} />}
        {counting.length > 0 && (
          <p className="note">{survey.asOf.from === "name" ? words.asOf(date) : words.asOfNew(date)}</p>
        )}
        {plan.columns.map((column) => (
          <ColumnFigures key={column.key} column={column} showRow={showRow} />
        ))}
      </details>
    </Step>
  );
}

/** How many rows would show each word today, in the colours that the words will have in the list. */
function Counts({ column }: { readonly column: ColumnPreview }) {
  return (
    <div className="close-stack">
      <h4>{column.header}</h4>
      <ul className="legend" aria-label={words.counts}>
        {column.counts.map(({ word, rows }) => (
          <li key={word}>
            <strong>{rows}</strong> <span className={`state ${asksOf(word)}`}>{word}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

function ColumnFigures({
  column,
  showRow,
}: {
  readonly column: ColumnPreview;
  readonly showRow: (row: number) => void;
}) {
  return (
    <div className="close-stack column-figures">
      <h4>{column.header}</h4>
      <p>{words.answers(column.filled, column.of)}</p>
      {column.groups.length > 0 && (
        <ul className="bullets">
          {column.groups.map((group) => (
            <li key={group.sentence}>
              {group.sentence} <RowPresses group={group} showRow={showRow} />
            </li>
          ))}
        </ul>
      )}
      <p className="note">{words.formula}</p>
      <code className="formula">={column.formula}</code>
    </div>
  );
}

function RowPresses({ group, showRow }: { readonly group: RowGroup; readonly showRow: (row: number) => void }) {
  const [shown, setShown] = useState(FIRST_ROWS);
  const hidden = group.rows.length - shown;
  return (
    <span className="row-presses">
      <span className="note">{words.goTo}</span>
      {group.rows.slice(0, shown).map((row) => (
        <button key={row} type="button" className="press" aria-label={words.goToRow(row)} onClick={() => showRow(row)}>
          {row}
        </button>
      ))}
      {hidden > 0 && (
        <button type="button" className="press" onClick={() => setShown((now) => now + MORE_ROWS)}>
          {words.moreRows(hidden)}
        </button>
      )}
    </span>
  );
}
