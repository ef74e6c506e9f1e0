import type { Problem } from "../../actions/action";
import { pane as paneTexts } from "../../texts/pane";
import type { Place } from "../../workbook/port";
import { Notice } from "./Notice";

/** A refusal: what, where, what to do, and a press to go there. */
export function ProblemNotice({
  problem,
  reveal,
}: {
  readonly problem: Problem;
  readonly reveal: (place: Place) => void;
}) {
  const { where } = problem;
  return (
    <Notice kind="problem">
      <p>{problem.sentence}</p>
      {where && (
        <div className="presses">
          <button type="button" className="press" onClick={() => reveal(where)}>
            {paneTexts.show}
          </button>
        </div>
      )}
    </Notice>
  );
}
