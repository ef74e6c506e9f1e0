import { useCallback, useEffect, useMemo, useState } from "react";
import { afterPerson, planPerson, startOfPerson, surveyPerson, type PersonSurvey } from "../../actions/add-person";
import { lists } from "../../actions/caseload/lists";
import { readCaseload } from "../../actions/caseload/read";
import { forms } from "../../texts/forms";
import { addPerson as words } from "../../texts/add-person";
import { pane as paneTexts } from "../../texts/pane";
import { TryAgain } from "../parts/TryAgain";
import { Step } from "../parts/Step";
import { DeviceFields } from "../forms/DeviceFields";
import { DateField, TextField, WordField } from "../forms/Field";
import type { JobProps } from "../forms/job-props";
import { RecordingForm } from "../forms/RecordingForm";
import { useForm } from "../forms/useForm";

/** The list is looked at when the form is opened, and again for each further person. */
export function AddPerson(props: JobProps) {
  const { workbook } = props;
  const [survey, setSurvey] = useState<PersonSurvey | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  const look = useCallback(async () => {
    setSurvey(null);
    setFailure(null);
    try {
      const found = await readCaseload(workbook);
      if (found.is === "caseload") setSurvey(await surveyPerson(workbook, found));
      else setFailure(found.sentence);
    } catch (error) {
      setFailure(forms.form.lookFailed(String(error)));
    }
  }, [workbook]);
  useEffect(() => void look(), [look]);

  if (failure !== null) return <TryAgain sentence={failure} press={paneTexts.tryAgain} onPress={() => void look()} />;
  if (!survey) return <p>{paneTexts.loading}</p>;
  return <PersonForm {...props} survey={survey} onAgain={() => void look()} />;
}

function PersonForm({
  survey,
  workbook,
  today,
  agreed,
  onAgain,
}: JobProps & { readonly survey: PersonSurvey; readonly onAgain: () => void }) {
  const { form, at } = useForm(startOfPerson);
  const plan = useMemo(() => planPerson(survey, form, today), [form, survey, today]);
  return (
    <RecordingForm
      workbook={workbook}
      plan={plan}
      record={words.record}
      afterwards={(_done, receipt) => afterPerson(survey, form, receipt)}
      onAgain={onAgain}
      agreed={agreed}
      fields={(faultOf) => (
        <>
          <Step title={words.title}>
            <TextField label={words.id} hint={words.only} {...at("id", faultOf)} />
            <WordField label={words.status} of={lists.Status} {...at("status", faultOf)} />
            <DateField label={words.born} hint={words.bornHint} today={today} {...at("born", faultOf)} />
            <WordField label={words.access} of={lists.Access} {...at("access", faultOf)} />
            <DateField label={words.made} today={today} {...at("made", faultOf)} />
            <WordField label={words.slow} hint={words.slowHint} of={lists["Slow healing"]} {...at("slow", faultOf)} />
          </Step>
          <Step title={words.device}>
            <DeviceFields at={(field) => at(field, faultOf)} />
            <DateField label={words.deviceIn} today={today} {...at("deviceIn", faultOf)} />
            <WordField label={words.changedBy} of={lists["Changed by"]} {...at("changedBy", faultOf)} />
            <WordField label={words.spare} of={lists["Spare at home"]} {...at("spare", faultOf)} />
          </Step>
        </>
      )}
    />
  );
}
