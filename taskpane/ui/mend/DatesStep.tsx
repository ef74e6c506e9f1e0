import { useId } from "react";
import type { DateQuestions, MendChoices } from "../../actions/mend/interface";
import { mend as mendTexts } from "../../texts/mend";
import { Choice } from "../parts/Choice";
import { CellList } from "../parts/CellGroups";
import { dateText } from "../parts/dates";
import { Step } from "../parts/Step";
import type { MendState } from "./useMend";

const words = mendTexts.dates;

interface Props {
  readonly number: number;
  readonly state: MendState;
  readonly questions: DateQuestions;
  readonly locale: string;
}

type Said = Partial<MendChoices["dates"]>;

/** What the dates become, and the questions that only a person can answer: each once for the whole column. */
export function DatesStep({ number, state, questions, locale }: Props) {
  const { dates } = state.choices!;
  const say = (said: Said) => state.choose({ dates: { ...dates, ...said } });
  const day = (serial: number | null) => (serial === null ? null : dateText(serial, locale));
  const { ways, order, century, exchanged } = questions;
  return (
    <Step number={number} title={words.title}>
      {ways.length > 0 && (
        <ul className="rows">
          {ways.map(({ example, cells, becomes }) => (
            <li key={`${example} ${cells}`}>
              {becomes === null ? words.waits(example, cells) : words.becomes(example, day(becomes)!, cells)}
            </li>
          ))}
        </ul>
      )}
      {order && (
        <>
          <Choice
            legend={words.order(order.example, order.cells)}
            options={[
              { key: "day first", label: words.dayFirst(day(order.dayFirst)) },
              { key: "month first", label: words.monthFirst(day(order.monthFirst)) },
              { key: "leave", label: words.leave },
            ]}
            chosen={dates.order ?? "leave"}
            onChoose={(said) => say({ order: said === "leave" ? null : (said as "day first" | "month first") })}
          />
          <p className="note">{words.proof(order.proof)}</p>
        </>
      )}
      {century && (
        <>
          <Choice
            legend={words.century(century.example, century.cells)}
            options={[
              { key: "2000s", label: words.centuries["2000s"] },
              { key: "up to today", label: words.centuries["up to today"] },
              { key: "leave", label: words.leave },
            ]}
            chosen={dates.century ?? "leave"}
            onChoose={(said) => say({ century: said === "leave" ? null : (said as "2000s" | "up to today") })}
          />
          <p className="note">{century.years ? words.years(...century.years) : words.noYears}</p>
        </>
      )}
      {exchanged.length > 0 && <Exchanged state={state} cells={exchanged} say={say} />}
    </Step>
  );
}

interface ExchangedProps {
  readonly state: MendState;
  readonly cells: DateQuestions["exchanged"];
  readonly say: (said: Said) => void;
}

/** A suspicion, with the cells to compare; nothing is exchanged before somebody has said so. */
function Exchanged({ state, cells, say }: ExchangedProps) {
  const id = useId();
  return (
    <div className="close-stack">
      <p>{words.exchanged(cells.length)}</p>
      <CellList cells={cells} sheet={state.survey!.list!.sheet} reveal={state.reveal} />
      <div className="tick">
        <input
          type="checkbox"
          id={id}
          checked={state.choices!.dates.putRight}
          onChange={(event) => say({ putRight: event.target.checked })}
        />
        <label htmlFor={id}>{words.putRight(cells.length)}</label>
      </div>
    </div>
  );
}
