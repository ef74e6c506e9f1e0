import { useState } from "react";
import { pane as words } from "../../texts/pane";
import type { Receipt, TakenBack, Workbook } from "../../workbook/port";
import { useAnnounce } from "./announce";

interface Props {
  readonly workbook: Workbook;
  readonly receipt: Receipt;
  readonly onDone: () => void;
}

/** Takes a change back. Where somebody has edited the cells since, it says which and asks before it goes on. */
export function TakeBack({ workbook, receipt, onDone }: Props) {
  const announce = useAnnounce();
  const [isBusy, setBusy] = useState(false);
  const [answer, setAnswer] = useState<TakenBack | null>(null);

  async function takeBack(force: boolean) {
    setBusy(true);
    const outcome = await workbook
      .takeBack(receipt, { force })
      .catch((error: unknown): TakenBack => ({ outcome: "failed", sentence: words.unexpected(String(error)) }));
    setBusy(false);
    setAnswer(outcome);
    announce(outcome.outcome === "taken back" ? words.takenBack : outcome.sentence);
    if (outcome.outcome === "taken back") onDone();
  }

  if (answer?.outcome === "differs") {
    return (
      <div className="close-stack">
        <p>{answer.sentence}</p>
        <div className="presses">
          <button type="button" className="button" disabled={isBusy} onClick={() => void takeBack(true)}>
            {words.takeBackAnyway}
          </button>
          <button type="button" className="button" disabled={isBusy} onClick={() => setAnswer(null)}>
            {words.keepIt}
          </button>
        </div>
      </div>
    );
  }
  return (
    <>
      {answer?.outcome === "failed" && (
        <div className="close-stack">
          <p>{answer.sentence}</p>
        </div>
      )}
      <button type="button" className="button" disabled={isBusy} onClick={() => void takeBack(false)}>
        {isBusy ? words.takingBack : words.takeBack}
      </button>
    </>
  );
}
