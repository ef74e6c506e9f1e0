import { useState } from "react";
import { cannotDo, type Afterwards } from "../../actions/action";
import { carryOut } from "../../actions/carry-out";
import { afterSheet } from "../../actions/new-sheet";
import { newSheet as words } from "../../texts/new-sheet";
import { pane as paneTexts } from "../../texts/pane";
import type { Change, Receipt, Workbook } from "../../workbook/port";
import { useAnnounce } from "./announce";
import { Notice } from "./Notice";
import { TakeBack } from "./TakeBack";
import { useReveal } from "./useReveal";

interface Props {
  readonly workbook: Workbook;
  /** Made at the press, from what is on screen then. */
  readonly change: () => Change;
}

/** Puts what is on screen into a sheet of its own, shows it, and takes it back. */
export function SheetPress({ workbook, change }: Props) {
  const announce = useAnnounce();
  const reveal = useReveal(workbook);
  const [isBusy, setBusy] = useState(false);
  const [said, setSaid] = useState<{ readonly words: Afterwards; readonly receipt: Receipt } | null>(null);
  if (cannotDo(workbook, change()) !== null) return null;

  async function put() {
    setBusy(true);
    const watch = { report: () => undefined, signal: new AbortController().signal };
    const tried = await carryOut(workbook, change(), watch, afterSheet);
    setBusy(false);
    setSaid(tried);
    announce(tried.words.sentences.join(" "));
  }

  const where = said?.words.where;
  return (
    <>
      <button type="button" className="button" disabled={isBusy} onClick={() => void put()}>
        {words.press}
      </button>
      {said && (
        <Notice kind={said.words.outcome === "done" ? "done" : "problem"}>
          {said.words.sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          <div className="presses">
            {where && (
              <button type="button" className="press" onClick={() => reveal(where)}>
                {paneTexts.show}
              </button>
            )}
            {said.words.canTakeBack && (
              <TakeBack workbook={workbook} receipt={said.receipt} onDone={() => setSaid(null)} />
            )}
          </div>
        </Notice>
      )}
    </>
  );
}
