/** Under every place: why the selected cell says what it says, in a sentence, and the press for the steps. */
import { useEffect, useState } from "react";
import { explain as words } from "../../texts/explain";
import type { Overview, Workbook } from "../../workbook/port";

/** Whoever moves through cells is not followed at every one. */
const PAUSE_MS = 300;

interface Props {
  readonly workbook: Workbook;
  readonly overview: Overview;
  readonly onSteps: () => void;
}

export function AtSelection({ workbook, overview, onSteps }: Props) {
  const [about, setAbout] = useState<{ readonly cell: string; readonly sentence: string | null } | null>(null);
  const cell = JSON.stringify(overview.selection);
  useEffect(() => {
    let isCurrent = true;
    const show = (sentence: string | null) => isCurrent && setAbout({ cell, sentence });
    /* A cell that cannot be read just now is read at the next change. */
    const pause = setTimeout(() => void sentenceAbout(workbook, overview).then(show, () => show(null)), PAUSE_MS);
    return () => {
      isCurrent = false;
      clearTimeout(pause);
    };
  }, [workbook, overview, cell]);
  const sentence = about?.cell === cell ? about.sentence : null;
  if (sentence === null) return null;
  return (
    <div className="at-selection">
      <p>{sentence}</p>
      <button type="button" className="press" onClick={onSteps}>
        {words.steps}
      </button>
    </div>
  );
}

/** Fetched with the first cell that is asked about. */
export async function sentenceAbout(workbook: Workbook, overview: Overview): Promise<string | null> {
  if (!overview.selection) return null;
  const [{ sentenceAtSelection }, { functions }] = await Promise.all([
    import(/* webpackChunkName: "explain" */ "../../actions/explain/at-selection"),
    import(/* webpackChunkName: "explain" */ "../../../src/index"),
  ]);
  return sentenceAtSelection(workbook, overview, functions);
}
