/** Between the bar and the sheet: what is under way, and what the page and the grid say. */
import { useEffect, useState } from "react";
import { pane as paneTexts } from "../../texts/pane";
import { shell as words } from "../../texts/shell";
import type { Said } from "./useNews";
import type { AtWork } from "./useWork";

/** How far a large file is, and the press that stops it. */
export function WorkHere({ title, share, isStopping, stop }: AtWork) {
  return (
    <div className="say plain">
      <div className="close-stack">
        <p>{isStopping ? paneTexts.stopping : title}</p>
        <progress aria-label={title} value={share} max={1} />
      </div>
      <button type="button" className="button" disabled={isStopping} onClick={stop}>
        {paneTexts.stop}
      </button>
    </div>
  );
}

/** What the page and the grid say, seen and spoken; it stays until it is closed or something else is said. */
interface Props {
  readonly said: Said | null;
  readonly onClose: () => void;
  readonly onDayFirst: (dayFirst: boolean) => void;
}

export function SaidHere({ said, onClose, onDayFirst }: Props) {
  const [spoken, setSpoken] = useState("");
  useEffect(() => setSpoken(said ? said.sentences.join(" ") + (said.at % 2 === 0 ? " " : "") : ""), [said]);
  return (
    <>
      <div className="for-ears" role="status">
        {spoken}
      </div>
      {said && said.kind !== "heard" && (
        <div className={`say ${said.kind}`}>
          <div className="close-stack">
            {said.sentences.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </div>
          <div className="presses">
            {said.asks && (
              <>
                <button type="button" className="button" onClick={() => onDayFirst(true)}>
                  {words.dayFirstAnswers.day}
                </button>
                <button type="button" className="button" onClick={() => onDayFirst(false)}>
                  {words.dayFirstAnswers.month}
                </button>
              </>
            )}
            <button type="button" className="button" onClick={onClose}>
              {words.closeShort}
            </button>
          </div>
        </div>
      )}
    </>
  );
}
