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
import type { FormWays } from "./recording-job";
import { useReveal } from "../parts/useReveal";
import { useApply, type Applying } from "../parts/useApply";
import { Working } from "../parts/Working";

const words = forms.form;
const TITLES = { done: words.done, refused: words.refused, stopped: words.stopped } as const;

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
  const { workbook, plan, record, again, leave, agreed, fields, meaning } = props;
  const { applying, asks, refused, isAsked, attempts, onPress } = useRecording(props);
  const reveal = useReveal(workbook);
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
  return (
    <EntryForm
      faults={plan.outcome === "faulty" ? plan.faults : []}
      onSubmit={() => void onPress()}
      top={refused && <Refused sentences={refused} />}
    >
      {fields}
      {plan.outcome === "planned" && meaning?.(plan)}
      {plan.outcome === "planned" && <Preview rows={plan.rows} says={plan.says} />}
      <Doubts asks={isAsked ? asks : []} attempts={attempts} />
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

interface RecordingState {
  readonly applying: Applying;
  /** What is doubtful about the entries. */
  readonly asks: readonly string[];
  /** The same doubts were shown at the last press: the next one records. */
  readonly isAsked: boolean;
  readonly attempts: number;
  /** Why nothing was recorded. */
  readonly refused: readonly string[] | null;
  onPress(): Promise<void>;
}

/** The press: first it shows what is doubtful, then it records; after a refusal the form comes back as it was. */
function useRecording<P extends Recording>({ workbook, plan, afterwards, renew }: Props<P>): RecordingState {
  const applying = useApply(workbook);
  /* The doubts that were shown; others that come up later are asked about anew. */
  const [asked, setAsked] = useState<string | null>(null);
  const [attempts, setAttempts] = useState(0);
  const [refused, setRefused] = useState<readonly string[] | null>(null);
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
    setAttempts(0);
    const unread = await renew().catch((error: unknown) => words.lookFailed(String(error)));
    setRefused([...carriedOut.words.sentences, unread ?? words.stillHere]);
  }

  return { applying, asks, isAsked, attempts, refused, onPress };
}

/** The keyboard goes where a refusal is told. */
function Refused({ sentences }: { readonly sentences: readonly string[] }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [sentences]);
  return (
    <Notice kind="problem">
      <h3 ref={heading} tabIndex={-1}>
        {words.refused}
      </h3>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </Notice>
  );
}

interface DoubtsProps {
  readonly asks: readonly string[];
  /** With each one the keyboard goes to the doubts anew. */
  readonly attempts: number;
}

function Doubts({ asks, attempts }: DoubtsProps) {
  const whole = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (attempts > 0) whole.current?.focus();
  }, [attempts]);
  return (
    <div ref={whole} tabIndex={-1}>
      {asks.length > 0 && (
        <Notice kind="caution">
          <p>{words.asks}</p>
          <Sentences of={asks} />
        </Notice>
      )}
    </div>
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
