import type { Call } from "../../actions/caseload/calls";
import { tubeOut } from "../../texts/tube-out";
import { Step } from "../parts/Step";

interface Props {
  readonly calls: readonly Call[];
  /** Leads to the form where the numbers are entered. */
  readonly enter?: () => void;
}

/** Whom to call. What is empty says what to do instead. */
export function CallList({ calls, enter }: Props) {
  return (
    <Step title={tubeOut.call}>
      <dl className="calls">
        {calls.map(({ label, text, isMissing }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>
              {isMissing ? <span className="state missing">{text}</span> : <strong className="large">{text}</strong>}
            </dd>
          </div>
        ))}
      </dl>
      {enter && calls.some(({ isMissing }) => isMissing) && (
        <div className="presses">
          <button type="button" className="button" onClick={enter}>
            {tubeOut.enter}
          </button>
        </div>
      )}
    </Step>
  );
}
