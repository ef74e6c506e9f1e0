import type { Call } from "../../actions/caseload/calls";
import { now } from "../../texts/now";
import { Step } from "../parts/Step";

/** Whom to call. What is empty says what to do instead. */
export function CallList({ calls }: { readonly calls: readonly Call[] }) {
  return (
    <Step title={now.out.call}>
      <dl className="stack">
        {calls.map(({ label, text }) => (
          <div className="close-stack" key={label}>
            <dt className="note">{label}</dt>
            <dd>
              <strong>{text}</strong>
            </dd>
          </div>
        ))}
      </dl>
    </Step>
  );
}
