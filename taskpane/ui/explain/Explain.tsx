import { useEffect, useRef, useState } from "react";
import { explainCell } from "../../actions/explain";
import { isExplanation, type Explained } from "../../actions/explain/interface";
import { explain as words } from "../../texts/explain";
import { pane as paneTexts } from "../../texts/pane";
import type { Overview, Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { functions } from "../guide/documented";
import { useReveal } from "../parts/useReveal";
import { Explanation } from "./Explanation";
import type { JobProps } from "../pane/define-job";

type Props = Pick<JobProps, "workbook" | "overview">;

/** Why the selected cell says what it says, at a press: not at every move of the selection. */
export function Explain({ workbook, overview }: Props) {
  const announce = useAnnounce();
  const [isBusy, setBusy] = useState(false);
  const [said, setSaid] = useState<Explained | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [said]);
  const reveal = useReveal(workbook);
  if (!workbook) return <p>{paneTexts.waiting}</p>;

  async function explain(of: Workbook) {
    if (isBusy) return;
    setBusy(true);
    const answer = await explainCell(of, functions).catch((error: unknown): Explained => ({
      sentence: words.failed(String(error)),
    }));
    setBusy(false);
    setSaid(answer);
    announce(isExplanation(answer) ? [answer.headline, ...answer.notes].join(" ") : answer.sentence);
  }

  const isElsewhere = said !== null && isExplanation(said) && hasMoved(overview, said.place);
  return (
    <>
      <p className="note">{words.lead}</p>
      <div className="presses">
        <button type="button" className="button primary" onClick={() => void explain(workbook)}>
          {isBusy ? words.looking : words.press}
        </button>
      </div>
      {said !== null && !isExplanation(said) && <p>{said.sentence}</p>}
      {said !== null && isExplanation(said) && (
        <Explanation
          said={said}
          heading={heading}
          moved={
            isElsewhere && (
              <p className="note">
                {words.moved}{" "}
                <button type="button" className="press" onClick={() => reveal(said.place)}>
                  {paneTexts.show}
                </button>
              </p>
            )
          }
        />
      )}
    </>
  );
}

/** What is on screen belongs to the cell that was asked about, not to the one selected since. */
const hasMoved = (
  overview: Overview | null,
  { sheet, area }: { sheet: string; area: { top: number; left: number } },
) => {
  const selection = overview?.selection;
  return (
    !!selection && (selection.sheet !== sheet || selection.area.top !== area.top || selection.area.left !== area.left)
  );
};
