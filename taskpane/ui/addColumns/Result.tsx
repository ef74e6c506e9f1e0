import { useEffect, useRef, useState } from "react";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { pane as paneTexts } from "../../texts/pane";
import type { Afterwards } from "../../actions/action";
import type { Workbook } from "../../workbook/port";
import { Notice } from "../parts/Notice";
import { TakeBack } from "../parts/TakeBack";
import type { AddColumnsState, Phase } from "./useAddColumns";

const words = addColumnsTexts.result;

interface Props {
  readonly finished: Extract<Phase, { is: "finished" }>;
  readonly state: AddColumnsState;
  readonly workbook: Workbook;
}

/** Stopped with nothing left behind is what was asked for; stopped half way is not. */
function kindOf({ outcome, canTakeBack }: Afterwards, isTakenBack: boolean): "done" | "plain" | "problem" {
  if (isTakenBack || outcome === "done") return "done";
  return outcome === "stopped" && !canTakeBack ? "plain" : "problem";
}

/** What was done, where to look, and the way back. The keyboard is moved here: what it stood on is gone. */
export function Result({ finished, state, workbook }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [isTakenBack, setTakenBack] = useState(false);
  const { words: said, receipt } = finished;
  useEffect(() => heading.current?.focus(), [isTakenBack]);
  const { where } = said;
  return (
    <section className="stack">
      <Notice kind={kindOf(said, isTakenBack)}>
        <h3 ref={heading} tabIndex={-1}>
          {isTakenBack ? paneTexts.takenBack : words.title[said.outcome]}
        </h3>
        {!isTakenBack && said.sentences.map((sentence) => <p key={sentence}>{sentence}</p>)}
        {!isTakenBack && said.outcome === "done" && finished.plan.numbers.length > 0 && <p>{paneTexts.notAgreed}</p>}
      </Notice>
      <div className="presses">
        {!isTakenBack && where && (
          <button type="button" className="button primary" onClick={() => state.reveal(where)}>
            {said.outcome === "done" ? words.show : words.showWhere}
          </button>
        )}
        {!isTakenBack && said.canTakeBack && (
          <TakeBack workbook={workbook} receipt={receipt} onDone={() => setTakenBack(true)} />
        )}
        <button type="button" className="button" onClick={state.backToChoices}>
          {said.outcome === "done" && !isTakenBack ? words.more : words.back}
        </button>
      </div>
    </section>
  );
}
