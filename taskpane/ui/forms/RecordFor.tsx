/** A recording job for one person: find and confirm, look at the person's rows, then the form. */
import { useState, type ReactNode } from "react";
import type { Device, Meant } from "../../actions/caseload/identity";
import type { Caseload } from "../../actions/caseload/read";
import { forms } from "../../texts/forms";
import type { Workbook } from "../../workbook/port";
import { Notice } from "../parts/Notice";
import { FindPerson, type Confirmed } from "./FindPerson";

interface Props<Survey> {
  readonly workbook: Workbook;
  readonly locale: string;
  readonly survey: (caseload: Caseload, meant: Meant, device: Device) => Promise<Survey>;
  readonly children: (survey: Survey, again: () => void) => ReactNode;
}

export function RecordFor<Survey extends { readonly device: Device }>(props: Props<Survey>) {
  const { workbook, locale, survey, children } = props;
  const [surveyed, setSurveyed] = useState<Survey | null>(null);
  const [failure, setFailure] = useState<string | null>(null);

  async function look({ caseload, meant, device }: Confirmed) {
    if (!device) return;
    setFailure(null);
    await survey(caseload, meant, device).then(setSurveyed, (error: unknown) =>
      setFailure(forms.form.lookFailed(String(error))),
    );
  }

  if (surveyed)
    return (
      <div className="stack">
        <h3>{forms.person.confirmed(surveyed.device.id)}</h3>
        {children(surveyed, () => setSurveyed(null))}
      </div>
    );
  return (
    <div className="stack">
      {failure !== null && (
        <Notice kind="problem">
          <p>{failure}</p>
        </Notice>
      )}
      <FindPerson workbook={workbook} locale={locale} canDoubt={false} onConfirmed={(who) => void look(who)} />
    </div>
  );
}
