import { Fragment } from "react";
import type { Call } from "../../actions/caseload/calls";
import { now } from "../../texts/now";
import { Step } from "../parts/Step";

/** Whom to call. What is empty says what to do instead. */
export function CallList({ calls }: { readonly calls: readonly Call[] }) {
  return (
    <Step title={now.out.call}>
      <dl className="pairs">
        {calls.map(({ label, text }) => (
          <Fragment key={label}>
            <dt>{label}</dt>
            <dd>
              <strong>{text}</strong>
            </dd>
          </Fragment>
        ))}
      </dl>
    </Step>
  );
}
