import { useEffect, useRef } from "react";
import { isOlder, schemaOf } from "../../actions/caseload/schema";
import { isMarkedInvented } from "../../actions/set-up";
import { pane as paneTexts } from "../../texts/pane";
import { setUp as words } from "../../texts/set-up";
import { Notice } from "../parts/Notice";
import { Step } from "../parts/Step";
import { BringUpToDate } from "../bring-up-to-date/BringUpToDate";
import { ChooseSteps } from "./ChooseSteps";
import { MadeStep } from "./MadeStep";
import { RemoveInvented } from "./RemoveInvented";
import { useSetUp, type SetUpState } from "./useSetUp";
import type { JobProps } from "../pane/define-job";

type Props = Pick<JobProps, "workbook" | "overview" | "today" | "openNew">;

/** A new workbook from a few choices; and, where the invented people are still in the present one, the way to be rid of them. */
export function SetUp({ workbook, overview, today, openNew }: Props) {
  const state = useSetUp(today, openNew);
  if (!workbook || !overview) return <p>{paneTexts.waiting}</p>;
  const { phase } = state;
  const schema = schemaOf(overview);
  const older = (
    <BringUpToDate workbook={workbook} schema={isOlder(overview) ? schema : null} today={today} openNew={openNew} />
  );
  const remove = <RemoveInvented workbook={workbook} isMarked={isMarkedInvented(overview)} />;
  switch (phase.is) {
    case "choosing":
      return (
        <>
          {older}
          {remove}
          <ChooseSteps choices={state.choices} choose={state.choose} />
          <MadeStep state={state} />
        </>
      );
    case "making":
      return (
        <Step title={words.working}>
          <p>{paneTexts.loading}</p>
        </Step>
      );
    case "opened":
    case "refused":
      return (
        <>
          <Outcome state={state} />
          {remove}
        </>
      );
  }
}

/** The keyboard is moved here: what it stood on is gone. */
function Outcome({ state: { phase, backToChoices } }: { readonly state: SetUpState }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const isOpened = phase.is === "opened";
  return (
    <section className="stack">
      <Notice kind={isOpened ? "done" : "problem"}>
        <h3 ref={heading} tabIndex={-1}>
          {isOpened ? words.done.title : words.notDone}
        </h3>
        {isOpened && <p>{words.done.sentence(phase.name)}</p>}
        {phase.is === "refused" && <p>{phase.sentence}</p>}
      </Notice>
      <div className="presses">
        <button type="button" className="button" onClick={backToChoices}>
          {isOpened ? words.done.again : paneTexts.backToChoices}
        </button>
      </div>
    </section>
  );
}
