import { useMemo } from "react";
import { callsIn } from "../../actions/caseload/calls";
import { lists } from "../../actions/caseload/lists";
import {
  afterCheck,
  checkFields,
  planCheck,
  startOfCheck,
  surveyCheck,
  type CheckPlan,
  type CheckSurvey,
} from "../../actions/record-check";
import { forms } from "../../texts/forms";
import { recordCheck as words } from "../../texts/record-check";
import { DateField, NumberField, TextField, WordField } from "../forms/Field";
import { useForm } from "../forms/useForm";
import { Notice } from "../parts/Notice";
import { Step } from "../parts/Step";
import { CallList } from "../forms/CallList";
import type { RecordingFormProps, RecordingProps } from "../forms/recording-job";
import { RecordFor } from "../forms/RecordFor";
import { RecordingForm } from "../forms/RecordingForm";

export function RecordCheck(props: RecordingProps) {
  return (
    <RecordFor {...props} survey={(caseload, meant, device) => surveyCheck(props.workbook, caseload, meant, device)}>
      {(survey, ways) => <CheckForm {...props} survey={survey} ways={ways} />}
    </RecordFor>
  );
}

function CheckForm({ survey, ways, workbook, today, locale, agreed }: RecordingFormProps<CheckSurvey>) {
  const { form, at, applies } = useForm(checkFields, startOfCheck(today));
  const plan = useMemo(() => planCheck(survey, form, today), [form, survey, today]);
  return (
    <RecordingForm
      {...ways}
      workbook={workbook}
      plan={plan}
      record={words.record}
      afterwards={(done, receipt) => afterCheck(survey, done, receipt)}
      leave={forms.form.another}
      agreed={agreed}
      fields={
        <Step title={words.title}>
          <DateField today={today} locale={locale} {...at("checkedOn")} />
          <NumberField unit={forms.units.mL} hint={words.outHint} {...at("out")} />
          <WordField of={lists.Looked} {...at("looked")} />
          <NumberField unit={forms.units.mL} {...at("putIn")} />
          {applies("water") && <WordField of={lists.Water} {...at("water")} />}
          <WordField of={lists.By} {...at("by")} />
          <WordField of={lists["How known"]} {...at("howKnown")} />
          <TextField {...at("note")} />
        </Step>
      }
      meaning={(planned) => <Meaning plan={planned} survey={survey} />}
    />
  );
}

function Meaning({ plan: { meaning }, survey }: { readonly plan: CheckPlan; readonly survey: CheckSurvey }) {
  const { state, advice, figures, isUrgent } = meaning;
  return (
    <>
      <Step title={words.meaning}>
        <Notice kind={isUrgent ? "problem" : "plain"}>
          <p className="large">{state === null ? words.noWord : words.word(state)}</p>
          {advice.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Notice>
        {figures.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </Step>
      {isUrgent && <CallList calls={callsIn(survey.caseload.names)} />}
    </>
  );
}
