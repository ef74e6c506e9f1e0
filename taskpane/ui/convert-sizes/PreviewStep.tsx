import { cannotDo, type Problem } from "../../actions/action";
import type { SizesPlan } from "../../actions/convert-sizes/interface";
import { convertSizes as convertTexts } from "../../texts/convert-sizes";
import { pane as paneTexts } from "../../texts/pane";
import type { Workbook } from "../../workbook/port";
import { Cannot } from "../parts/Cannot";
import { ProblemNotice } from "../parts/ProblemNotice";
import { Sentences } from "../parts/Sentences";
import { Step } from "../parts/Step";
import { Unread } from "./Unread";
import type { ConvertState } from "./useConvert";

const words = convertTexts.preview;

interface Props {
  readonly number: number;
  readonly state: ConvertState;
  readonly plan: SizesPlan | Problem;
  readonly workbook: Workbook;
}

/** What will be read and what not, before anything is written. */
export function PreviewStep({ number, state, plan, workbook }: Props) {
  if (plan.outcome === "problem")
    return (
      <Step number={number} title={paneTexts.preview}>
        <ProblemNotice problem={plan} reveal={state.reveal} />
      </Step>
    );
  const cannot = cannotDo(workbook, plan.change);
  const [first, ...others] = plan.says;
  const { reading, source } = plan;
  return (
    <Step number={number} title={paneTexts.preview}>
      <p>
        <strong>{first}</strong>
      </p>
      <Sentences of={others} />
      <Unread reading={reading} sheet={source.sheet} reveal={state.reveal} />
      {reading.notRead + reading.doubtful > 0 && (
        <p className="note">
          {words.corrected}{" "}
          <button type="button" className="press" onClick={state.readAgain}>
            {words.readAgain}
          </button>
        </p>
      )}
      <details className="fold">
        <summary>{words.formula}</summary>
        <code className="formula">{plan.formula}</code>
      </details>
      <Cannot why={cannot} />
      <div className="presses">
        <button
          type="button"
          className="button primary"
          disabled={cannot !== null}
          onClick={() => void state.convert()}
        >
          {words.add}
        </button>
      </div>
    </Step>
  );
}
