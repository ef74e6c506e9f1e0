import { useCallback, useEffect, useMemo, useState } from "react";
import {
  afterPerson,
  personFields,
  planPerson,
  startOfPerson,
  surveyPerson,
  type PersonSurvey,
} from "../../actions/add-person";
import { lists } from "../../actions/caseload/lists";
import { readCaseload } from "../../actions/caseload/read";
import { forms } from "../../texts/forms";
import { addPerson as words } from "../../texts/add-person";
import { pane as paneTexts } from "../../texts/pane";
import { DateField, TextField, WordField } from "../forms/Field";
import { useForm } from "../forms/useForm";
import { TryAgain } from "../parts/TryAgain";
import { Step } from "../parts/Step";
import { DeviceFields } from "../forms/DeviceFields";
import type { RecordingFormProps, RecordingProps } from "../forms/recording-job";
import { RecordingForm } from "../forms/RecordingForm";

/** The list is looked at when the form is opened, and again for each further person and after a refusal. */
export function AddPerson(props: RecordingProps) {
  const { workbook } = props;
  const [survey, setSurvey] = useState<PersonSurvey | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  const [round, setRound] = useState(0);
  const look = useCallback(async (): Promise<string | null> => {
    const found = await readCaseload(workbook).catch((error: unknown) => forms.form.lookFailed(String(error)));
    if (typeof found === "string") return found;
    if (found.is !== "caseload") return found.sentence;
    setSurvey(await surveyPerson(workbook, found));
    return null;
  }, [workbook]);
  const begin = useCallback(async () => {
    setFailure(null);
    setFailure(await look().catch((error: unknown) => forms.form.lookFailed(String(error))));
  }, [look]);
  useEffect(() => void begin(), [begin, round]);

  if (failure !== null) return <TryAgain sentence={failure} press={paneTexts.tryAgain} onPress={() => void begin()} />;
  if (!survey) return <p>{paneTexts.loading}</p>;
  const again = () => {
    setSurvey(null);
    setRound(round + 1);
  };
  return <PersonForm {...props} key={round} survey={survey} ways={{ again, renew: look }} />;
}

function PersonForm({ survey, ways, workbook, today, locale, agreed }: RecordingFormProps<PersonSurvey>) {
  const { form, at, applies } = useForm(personFields, startOfPerson);
  const plan = useMemo(() => planPerson(survey, form, today), [form, survey, today]);
  const day = { today, locale };
  return (
    <RecordingForm
      {...ways}
      workbook={workbook}
      plan={plan}
      record={words.record}
      afterwards={(_done, receipt) => afterPerson(survey, form, receipt)}
      agreed={agreed}
      fields={
        <>
          <Step title={words.title}>
            <TextField hint={words.only} {...at("id")} />
            <WordField of={lists.Status} {...at("status")} />
            <DateField hint={words.bornHint} {...day} {...at("born")} />
            <WordField of={lists.Access} {...at("access")} />
            <DateField {...day} {...at("made")} />
            <WordField hint={words.slowHint} of={lists["Slow healing"]} {...at("slow")} />
          </Step>
          <Step title={words.device}>
            <DeviceFields at={at} applies={applies} />
            <DateField {...day} {...at("deviceIn")} />
            <WordField of={lists["Changed by"]} {...at("changedBy")} />
            <WordField of={lists["Spare at home"]} {...at("spare")} />
          </Step>
        </>
      }
    />
  );
}
