import { useId, useState } from "react";
import type { Survey } from "../../actions/add-columns/interface";
import type { SurveyedList, Wish } from "../../actions/list/interface";
import { ownList as words } from "../../texts/own-list";
import { Notice } from "../parts/Notice";
import { ProblemNotice } from "../parts/ProblemNotice";
import { Step } from "../parts/Step";
import type { Place } from "../../workbook/port";
import { SHEET_ROWS } from "../../workbook/area";

/** A job on a list: what was found, and how to look again. */
export interface ListState {
  readonly survey: (Pick<Survey, "lists" | "list" | "sentence"> & Partial<Pick<Survey, "asOf">>) | null;
  look(wish?: Wish): Promise<void>;
  reveal(place: Place): void;
}

/** Which list: what was found, and how to correct it. */
export function ListStep({ number, state }: { readonly number: number; readonly state: ListState }) {
  const { survey } = state;
  if (!survey) return null;
  const { list } = survey;
  return (
    <Step
      number={number}
      title={words.title}
      press={
        <button type="button" className="press" onClick={() => void state.look()}>
          {words.lookAgain}
        </button>
      }
    >
      <div className="close-stack">
        <p>{survey.sentence}</p>
        {list && !list.found.sure && <p className="note">{list.found.sentence}</p>}
      </div>
      {!list && <p className="note">{words.none}</p>}
      {list && !list.found.sure && (
        <Notice kind="caution">
          <p>{words.unsure}</p>
        </Notice>
      )}
      {list?.obstacles.map((problem) => (
        <ProblemNotice key={problem.sentence} problem={problem} reveal={state.reveal} />
      ))}
      {survey.asOf?.refused && (
        <Notice kind="problem">
          <p>{survey.asOf.refused}</p>
        </Notice>
      )}
      {list?.notices.map(({ sentence }) => (
        <p className="note" key={sentence}>
          {sentence}
        </p>
      ))}
      {survey.lists.length > 0 && <Correction state={state} isAsked={!list?.found.sure} />}
    </Step>
  );
}

function ListColumns({ list }: { readonly list: SurveyedList }) {
  return (
    <details className="fold">
      <summary>{words.inColumns}</summary>
      <ul className="rows">
        {list.columns.map((column) => (
          <li key={column.index} className="close-stack">
            <strong>{words.column(column.letters, column.header)}</strong>
            <span className="samples">{column.samples.slice(0, 3).join(" · ") || words.noSamples}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Stays as it is while another list is looked at: the keyboard stands in it, and arrow keys go through the lists. */
function Correction({ state, isAsked }: { readonly state: ListState; readonly isAsked: boolean }) {
  const id = useId();
  const { survey } = state;
  const list = survey?.list ?? null;
  const [header, setHeader] = useState(String(list?.headerRow ?? 1));
  const [last, setLast] = useState(String(list?.lastRow ?? ""));
  const [fault, setFault] = useState(false);
  const [isOpen, setOpen] = useState(isAsked);
  const found = `${list?.key} ${list?.headerRow} ${list?.lastRow}`;
  const [foundBefore, setFoundBefore] = useState(found);
  if (found !== foundBefore) {
    setFoundBefore(found);
    setHeader(String(list?.headerRow ?? 1));
    setLast(String(list?.lastRow ?? ""));
    setFault(false);
    if (isAsked) setOpen(true);
  }
  if (!survey) return null;
  const row = (text: string): number | null => {
    const value = Number(text);
    return Number.isInteger(value) && value >= 1 && value <= SHEET_ROWS ? value : null;
  };

  function onUse() {
    const headerRow = row(header);
    const lastRow = row(last);
    setFault(headerRow === null || lastRow === null);
    if (list && headerRow !== null && lastRow !== null) void state.look({ list: list.key, headerRow, lastRow });
  }

  return (
    <details className="fold" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.correct}</summary>
      {list?.found.sure && <p className="note">{list.found.sentence}</p>}
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          onUse();
        }}
      >
        <div className="field">
          <label htmlFor={`${id}list`}>{words.choose}</label>
          <select
            id={`${id}list`}
            value={list?.key ?? ""}
            onChange={(event) => void state.look({ list: event.target.value })}
          >
            {!list && <option value="">{words.chooseOne}</option>}
            {survey.lists.map(({ key, label }) => (
              <option key={key} value={key}>
                {label}
              </option>
            ))}
          </select>
        </div>
        {list?.in === "sheet" && (
          <>
            <div className="field">
              <label htmlFor={`${id}header`}>{words.headerRow}</label>
              <input
                id={`${id}header`}
                inputMode="numeric"
                value={header}
                aria-invalid={fault || undefined}
                onChange={(event) => setHeader(event.target.value)}
              />
            </div>
            <div className="field">
              <label htmlFor={`${id}last`}>{words.lastRow}</label>
              <input
                id={`${id}last`}
                inputMode="numeric"
                value={last}
                aria-invalid={fault || undefined}
                onChange={(event) => setLast(event.target.value)}
              />
            </div>
            {fault && <p className="fault">{words.wholeRow(SHEET_ROWS)}</p>}
            <div className="presses">
              <button type="submit" className="button">
                {words.use}
              </button>
            </div>
          </>
        )}
      </form>
      {list && <ListColumns list={list} />}
    </details>
  );
}
