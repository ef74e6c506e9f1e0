/**
 * What the three recording jobs share: faults once somebody has tried, a preview of every row that will be written, a
 * second press for what is doubtful, then the result and the way back. A refusal leaves every entry where it is.
 */
import { Fragment, useEffect, useRef, useState, type ReactNode } from "react";
import type { Afterwards } from "../../actions/action";
import type { Faulty } from "../../actions/caseload/typed";
import type { Recording, RowPreview } from "../../actions/caseload/write";
import { forms } from "../../texts/forms";
import type { Receipt, Workbook } from "../../workbook/port";
import { EntryForm } from "./EntryForm";
import { Finished } from "../parts/Finished";
import { Notice } from "../parts/Notice";
import { Sentences } from "../parts/Sentences";
import { Step } from "../parts/Step";
import { useReveal } from "../parts/useReveal";
import { useApply } from "../parts/useApply";
import { Working } from "../parts/Working";

const words = forms.form;
const TITLES = { done: words.done, refused: words.refused, stopped: words.stopped } as const;

export interface FormWays {
  /** Leads away from the form; once it is done a new one begins. */
  readonly again: (isDone: boolean) => void;
  /** Looks at the list once more, entries kept. Gives why it could not, or null. */
  readonly renew: () => Promise<string | null>;
}

interface Props<P extends Recording> extends FormWays {
  readonly workbook: Workbook;
  readonly plan: P | Faulty;
  /** What the press says. */
  readonly record: string;
  readonly afterwards: (plan: P, receipt: Receipt) => Afterwards;
  /** What the press says that leads away before anything is recorded; left out where there is nowhere to go. */
  readonly leave?: string;
  /** Whether the clinic has agreed its settings. */
  readonly agreed: string;
  readonly fields: ReactNode;
  /** What the entries mean, shown before they are recorded. */
  readonly meaning?: (plan: P) => ReactNode;
}

export function RecordingForm<P extends Recording>(props: Props<P>) {
  const { workbook, plan, record, afterwards, again, renew, leave, agreed, fields, meaning } = props;
  const applying = useApply(workbook);
  const reveal = useReveal(workbook);
  /* The doubts that were shown; others that come up later are asked about anew. */
  const [asked, setAsked] = useState<string | null>(null);
  const [attempts, setAttempts] = useState(0);
  const [refused, setRefused] = useState<readonly string[] | null>(null);
  const doubts = useRef<HTMLDivElement>(null);
  const refusal = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (attempts > 0) doubts.current?.focus();
  }, [attempts]);
  useEffect(() => {
    if (refused) refusal.current?.focus();
  }, [refused]);

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
          onAgain={() => again(true)}
        />
        <p className="note">{agreed}</p>
      </>
    );

  const asks = plan.outcome === "faulty" ? [] : plan.asks;
  const isAsked = asks.length > 0 && asked === asks.join("\n");

  async function onPress() {
    if (plan.outcome === "faulty") return;
    if (asks.length > 0 && !isAsked) {
      setAsked(asks.join("\n"));
      return setAttempts((n) => n + 1);
    }
    setRefused(null);
    const carriedOut = await applying.apply(plan.change, (receipt) => afterwards(plan, receipt));
    if (!carriedOut || carriedOut.words.outcome === "done" || carriedOut.words.canTakeBack) return;
    /* Nothing stands: the form comes back as it was, on the list as it is now. */
    applying.backToChoices();
    setAsked(null);
    const unread = await renew().catch((error: unknown) => words.lookFailed(String(error)));
    setRefused([...carriedOut.words.sentences, unread ?? words.stillHere]);
  }

  return (
    <EntryForm
      faults={plan.outcome === "faulty" ? plan.faults : []}
      onSubmit={() => void onPress()}
      top={
        refused && (
          <Notice kind="problem">
            <h3 ref={refusal} tabIndex={-1}>
              {words.refused}
            </h3>
            {refused.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </Notice>
        )
      }
    >
      {fields}
      {plan.outcome === "planned" && meaning?.(plan)}
      {plan.outcome === "planned" && <Preview rows={plan.rows} says={plan.says} />}
      <div ref={doubts} tabIndex={-1}>
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
        {leave !== undefined && (
          <button type="button" className="button" onClick={() => again(false)}>
            {leave}
          </button>
        )}
      </div>
    </EntryForm>
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
