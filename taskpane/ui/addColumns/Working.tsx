import { useEffect, useState } from "react";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { pane as paneTexts } from "../../texts/pane";
import { Step } from "../parts/Step";

/** Shorter work needs no bar: it would only flicker. */
const PATIENCE_MS = 400;

interface Props {
  readonly done: number;
  readonly of: number;
  readonly isStopping: boolean;
  readonly stop: () => void;
}

export function Working({ done, of, isStopping, stop }: Props) {
  const [isLong, setLong] = useState(false);
  useEffect(() => {
    const patience = setTimeout(() => setLong(true), PATIENCE_MS);
    return () => clearTimeout(patience);
  }, []);
  const words = addColumnsTexts.working;
  return (
    <Step title={words.title}>
      {isLong && (
        <>
          <progress aria-label={words.title} value={done} max={Math.max(of, 1)} />
          <p className="note">{isStopping ? words.stopping : words.step(done, of)}</p>
          <div className="presses">
            <button type="button" className="button" disabled={isStopping} onClick={stop}>
              {paneTexts.stop}
            </button>
          </div>
        </>
      )}
    </Step>
  );
}
