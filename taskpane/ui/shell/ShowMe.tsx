/** Show me first: the invented list, and what two columns make of it, in one press. */
import { useState } from "react";
import { shell as shellTexts } from "../../texts/shell";
import { pane as paneTexts } from "../../texts/pane";
import type { Grid } from "../../workbook/embedded/interface";
import { OpenButton } from "./Bar";

const words = shellTexts.showMe;

interface Props {
  readonly grid: Grid;
  readonly today: number;
  readonly onOpen: (file: File) => void;
  readonly onStay: () => void;
}

type Stage =
  { readonly is: "before" | "working" } | { readonly is: "after" | "failed"; readonly sentences: readonly string[] };

export function ShowMe({ grid, today, onOpen, onStay }: Props) {
  const [stage, setStage] = useState<Stage>({ is: "before" });

  /** As in Add columns, with what it proposes; nobody is asked, because nobody stands behind these rows. */
  async function next() {
    setStage({ is: "working" });
    try {
      const { addColumns } = await import(/* webpackChunkName: "add-columns" */ "../../actions/add-columns");
      const { workbook } = grid;
      const survey = await addColumns.survey(workbook, { today });
      const plan = addColumns.plan(survey, { ...survey.proposal, recipes: ["changeDue", "change"] });
      if (plan.outcome === "problem") return setStage({ is: "failed", sentences: [plan.sentence] });
      const watch = { report: () => undefined, signal: new AbortController().signal };
      const receipt = await workbook.apply(plan.change, watch);
      const { outcome, sentences, where } = addColumns.afterwards(plan, receipt);
      if (outcome !== "done") return setStage({ is: "failed", sentences });
      if (where) await workbook.reveal(where);
      /* Nobody has typed anything: there is nothing of theirs to save. */
      grid.markSaved();
      setStage({ is: "after", sentences });
    } catch (error) {
      setStage({ is: "failed", sentences: [paneTexts.unexpected(String(error))] });
    }
  }

  const isAfter = stage.is === "after";
  return (
    <section className="show-me" aria-labelledby="show-me">
      <div className="close-stack" role="status">
        <h2 id="show-me">{isAfter ? words.done : words.title}</h2>
        <p>{isAfter ? words.doneLead : words.lead}</p>
        {"sentences" in stage && stage.sentences.map((sentence) => <p key={sentence}>{sentence}</p>)}
      </div>
      <div className="presses">
        {!isAfter && (
          <button
            type="button"
            className="button primary"
            disabled={stage.is === "working"}
            onClick={() => void next()}
          >
            {stage.is === "working" ? words.working : words.next}
          </button>
        )}
        {isAfter && <OpenButton className="button primary" label={words.own} isDisabled={false} onOpen={onOpen} />}
        <button type="button" className="button" onClick={onStay}>
          {words.stay}
        </button>
      </div>
    </section>
  );
}
