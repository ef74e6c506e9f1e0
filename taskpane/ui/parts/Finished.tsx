import { useEffect, useRef, useState, type ReactNode } from "react";
import type { Afterwards } from "../../actions/action";
import { pane as words } from "../../texts/pane";
import type { Place, Receipt, Workbook } from "../../workbook/port";
import { Notice } from "./Notice";
import { TakeBack } from "./TakeBack";

interface Props {
  readonly title: string;
  readonly said: Afterwards;
  readonly receipt: Receipt;
  readonly workbook: Workbook;
  readonly reveal: (place: Place) => void;
  /** What the press says that leads back to the choices. */
  readonly again: string;
  readonly onAgain: () => void;
  readonly children?: ReactNode;
}

/** Stopped with nothing left behind is what was asked for; stopped half way is not. */
function kindOf({ outcome, canTakeBack }: Afterwards, isTakenBack: boolean): "done" | "plain" | "problem" {
  if (isTakenBack || outcome === "done") return "done";
  return outcome === "stopped" && !canTakeBack ? "plain" : "problem";
}

/** What was done, where to look, and the way back. The keyboard is moved here: what it stood on is gone. */
export function Finished({ title, said, receipt, workbook, reveal, again, onAgain, children }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [isTakenBack, setTakenBack] = useState(false);
  useEffect(() => heading.current?.focus(), [isTakenBack]);
  const { where } = said;
  return (
    <section className="stack">
      <Notice kind={kindOf(said, isTakenBack)}>
        <h3 ref={heading} tabIndex={-1}>
          {isTakenBack ? words.takenBack : title}
        </h3>
        {!isTakenBack && said.sentences.map((sentence) => <p key={sentence}>{sentence}</p>)}
        {!isTakenBack && children}
      </Notice>
      <div className="presses">
        {!isTakenBack && where && (
          <button type="button" className="button primary" onClick={() => reveal(where)}>
            {words.show}
          </button>
        )}
        {!isTakenBack && said.canTakeBack && (
          <TakeBack workbook={workbook} receipt={receipt} onDone={() => setTakenBack(true)} />
        )}
        <button type="button" className="button" onClick={onAgain}>
          {again}
        </button>
      </div>
    </section>
  );
}
