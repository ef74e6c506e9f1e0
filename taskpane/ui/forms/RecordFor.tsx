/** A recording job for one person: find and confirm, look at the person's rows, then the form. */
import { useState, type ReactNode } from "react";
import { whoIsMeant, type Device, type Meant } from "../../actions/caseload/identity";
import { readCaseload, type Caseload } from "../../actions/caseload/read";
import { forms } from "../../texts/forms";
import type { Workbook } from "../../workbook/port";
import { Notice } from "../parts/Notice";
import { FindPerson, whoIs, type Confirmed } from "./FindPerson";
import type { FormWays } from "./recording-job";

interface Props<Survey> {
  readonly workbook: Workbook;
  readonly locale: string;
  readonly survey: (caseload: Caseload, meant: Meant, device: Device) => Promise<Survey>;
  readonly children: (survey: Survey, ways: FormWays) => ReactNode;
}

/** Who was read back, and what was read of them. */
interface Subject<Survey> {
  readonly survey: Survey;
  readonly id: string;
  /** Birth and access, as they were read back. */
  readonly told: string;
}

export function RecordFor<Survey extends { readonly device: Device }>(props: Props<Survey>) {
  const { workbook, locale, survey, children } = props;
  const [subject, setSubject] = useState<Subject<Survey> | null>(null);
  const [isLooking, setLooking] = useState(true);
  /** A form is used once; until then it keeps its entries for the person for whom they were made. */
  const [round, setRound] = useState(0);
  const [failure, setFailure] = useState<string | null>(null);

  async function look(confirmed: Confirmed) {
    const { caseload, meant, device } = confirmed;
    if (!device) return;
    setFailure(null);
    try {
      const found = await survey(caseload, meant, device);
      setSubject({ survey: found, ...whoIs(confirmed, locale)! });
      setLooking(false);
    } catch (error) {
      setFailure(forms.form.lookFailed(String(error)));
    }
  }

  /** The list has changed: the same person is read again, and read back again where anything of it differs. */
  async function renew(): Promise<string | null> {
    if (!subject) return null;
    const caseload = await readCaseload(workbook);
    if (caseload.is !== "caseload") return caseload.sentence;
    const meant = whoIsMeant(caseload.tubes, subject.id);
    const device = meant.devices.find(({ access }) => access === subject.survey.device.access);
    if (!device || meant.doubt !== null || whoIs({ caseload, meant, device }, locale)?.told !== subject.told) {
      setLooking(true);
      setFailure(forms.form.lookAgain(subject.id));
      return null;
    }
    setSubject({ ...subject, survey: await survey(caseload, meant, device) });
    return null;
  }

  const ways: FormWays = {
    again: (isDone) => {
      setLooking(true);
      if (!isDone) return;
      setSubject(null);
      setRound(round + 1);
    },
    renew,
  };
  return (
    <>
      {isLooking && (
        <div className="stack">
          {failure !== null && (
            <Notice kind="problem">
              <p>{failure}</p>
            </Notice>
          )}
          <FindPerson workbook={workbook} locale={locale} canDoubt={false} onConfirmed={(who) => void look(who)} />
        </div>
      )}
      {subject && (
        <div className="stack" key={`${round} ${subject.id} ${subject.told}`} hidden={isLooking}>
          <div className="close-stack">
            <h3>{forms.person.confirmed(subject.id)}</h3>
            <p className="note">{subject.told}</p>
          </div>
          {children(subject.survey, ways)}
        </div>
      )}
    </>
  );
}
