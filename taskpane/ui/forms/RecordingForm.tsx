/**
 * What the three recording jobs share: faults once somebody has tried, a preview of every row that will be written, a
 * second press for what is doubtful, then the result and the way back.
 */
import { Fragment, useEffect, useRef, useState, type ReactNode } from "react";
import type { Afterwards } from "../../actions/action";
import type { Faulty } from "../../actions/caseload/typed";
import type { Recording, RowPreview } from "../../actions/caseload/write";
import { forms } from "../../texts/forms";
import type { Receipt, Workbook } from "../../workbook/port";
import { Finished } from "../parts/Finished";
import { Notice } from "../parts/Notice";
import { Sentences } from "../parts/Sentences";
import { Step } from "../parts/Step";
import { useReveal } from "../parts/useReveal";
import { useApply } from "../parts/useApply";
import { Working } from "../parts/Working";

const words = forms.form;
const TITLES = { done: words.done, refused: words.refused, stopped: words.stopped } as const;

interface Props<P extends Recording> {
  readonly workbook: Workbook;
  readonly plan: P | Faulty;
  /** What the press says. */
  readonly record: string;
  readonly afterwards: (plan: P, receipt: Receipt) => Afterwards;
  readonly onAgain: () => void;
  /** Whether the clinic has agreed its settings. */
  readonly agreed: string;
  readonly fields: (faultOf: (field: string) => string | undefined) => ReactNode;
  /** What the entries mean, shown before they are recorded. */
  readonly meaning?: (plan: P) => ReactNode;
}

export function RecordingForm<P extends Recording>(props: Props<P>) {
  const { workbook, plan, record, afterwards, onAgain, agreed, fields, meaning } = props;
  const applying = useApply(workbook);
  const reveal = useReveal(workbook);
  const [isTried, setTried] = useState(false);
  /* The doubts that were shown; others that come up later are asked about anew. */
  const [asked, setAsked] = useState<string | null>(null);
  const [attempts, setAttempts] = useState(0);
  const notice = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (attempts > 0) notice.current?.focus();
  }, [attempts]);

  const { phase } = applying;
  if (phase.is === "working") return <Working title={words.working} {...phase} stop={applying.stop} />;
  if (phase.is === "finished")
    return (
      <>
        <Finished
          title={TITLES[phase.words.outcome]}
          said={phase.words}
          receipt={phase.receipt}
          workbook={workbook}
          reveal={reveal}
          again={words.another}
          onAgain={onAgain}
        />
        <p className="note">{agreed}</p>
      </>
    );

  const faults = plan.outcome === "faulty" ? plan.faults : [];
  const asks = plan.outcome === "faulty" ? [] : plan.asks;
  const isAsked = asks.length > 0 && asked === asks.join("\n");

  function onPress() {
    if (plan.outcome === "faulty") {
      setTried(true);
      return setAttempts((n) => n + 1);
    }
    if (asks.length > 0 && !isAsked) {
      setAsked(asks.join("\n"));
      return setAttempts((n) => n + 1);
    }
    void applying.apply(plan.change, (receipt) => afterwards(plan, receipt));
  }

  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onPress();
      }}
    >
      {fields((field) => (isTried ? faults.find((fault) => fault.field === field)?.sentence : undefined))}
      {plan.outcome === "planned" && meaning?.(plan)}
      {plan.outcome === "planned" && <Preview rows={plan.rows} says={plan.says} />}
      <div ref={notice} tabIndex={-1}>
        {isTried && faults.length > 0 && (
          <Notice kind="problem">
            <p>{words.mend(faults.length)}</p>
            <Sentences of={faults.map(({ sentence }) => sentence)} />
          </Notice>
        )}
        {isAsked && (
          <Notice kind="caution">
            <p>{words.asks}</p>
            <Sentences of={asks} />
          </Notice>
        )}
      </div>
      <p className="note">{agreed}</p>
      <div className="presses">
        <button type="submit" className="button primary">
          {isAsked ? words.anyway : record}
        </button>
        <button type="button" className="button" onClick={onAgain}>
          {words.another}
        </button>
      </div>
    </form>
  );
}

function Preview({ rows, says }: { readonly rows: readonly RowPreview[]; readonly says: readonly string[] }) {
  return (
    <Step title={words.preview}>
      <p className="note">{words.previewLead}</p>
      {says.map((sentence) => (
        <Notice kind="caution" key={sentence}>
          <p>{sentence}</p>
        </Notice>
      ))}
      {rows.map(({ title, lines }) => (
        <div className="close-stack" key={title}>
          <h4>{title}</h4>
          <dl className="pairs">
            {lines.map(({ header, text }) => (
              <Fragment key={header}>
                <dt>{header}</dt>
                <dd>{text}</dd>
              </Fragment>
            ))}
          </dl>
        </div>
      ))}
    </Step>
  );
}
