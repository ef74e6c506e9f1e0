import { useEffect, useState } from "react";
import { pane as paneTexts } from "../../texts/pane";
import { Step } from "./Step";

/** Shorter work needs no bar: it would only flicker. */
const PATIENCE_MS = 400;

interface Props {
  readonly title: string;
  readonly done: number;
  readonly of: number;
  readonly isStopping: boolean;
  readonly stop: () => void;
}

/** A work under way: how far it is, and how to stop it. */
export function Working({ title, done, of, isStopping, stop }: Props) {
  const [isLong, setLong] = useState(false);
  useEffect(() => {
    const patience = setTimeout(() => setLong(true), PATIENCE_MS);
    return () => clearTimeout(patience);
  }, []);
  return (
    <Step title={title}>
      {isLong && (
        <>
          <progress aria-label={title} value={done} max={Math.max(of, 1)} />
          <p className="note">{isStopping ? paneTexts.stopping : paneTexts.share(done, of)}</p>
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
