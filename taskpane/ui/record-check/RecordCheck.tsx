import { useMemo } from "react";
import { callsIn } from "../../actions/caseload/calls";
import { lists } from "../../actions/caseload/lists";
import {
  afterCheck,
  planCheck,
  startOfCheck,
  surveyCheck,
  type CheckPlan,
  type CheckSurvey,
} from "../../actions/record-check";
import { forms } from "../../texts/forms";
import { recordCheck as words } from "../../texts/record-check";
import { Notice } from "../parts/Notice";
import { Step } from "../parts/Step";
import { CallList } from "../forms/CallList";
import { DateField, NumberField, TextField, WordField } from "../forms/Field";
import type { JobProps } from "../forms/job-props";
import { RecordFor } from "../forms/RecordFor";
import { RecordingForm } from "../forms/RecordingForm";
import { useForm } from "../forms/useForm";

export function RecordCheck({ workbook, today, locale, agreed }: JobProps) {
  return (
    <RecordFor
      workbook={workbook}
      locale={locale}
      survey={(caseload, meant, device) => surveyCheck(workbook, caseload, meant, device)}
    >
      {(survey, again) => (
        <CheckForm survey={survey} workbook={workbook} today={today} agreed={agreed} onAgain={again} />
      )}
    </RecordFor>
  );
}

interface FormProps extends Pick<JobProps, "workbook" | "today" | "agreed"> {
  readonly survey: CheckSurvey;
  readonly onAgain: () => void;
}

function CheckForm({ survey, workbook, today, agreed, onAgain }: FormProps) {
  const { form, at } = useForm(startOfCheck(today));
  const plan = useMemo(() => planCheck(survey, form, today), [form, survey, today]);
  return (
    <RecordingForm
      workbook={workbook}
      plan={plan}
      record={words.record}
      afterwards={(done, receipt) => afterCheck(survey, done, receipt)}
      onAgain={onAgain}
      agreed={agreed}
      fields={(faultOf) => (
        <Step title={words.title}>
          <DateField label={words.checkedOn} today={today} {...at("checkedOn", faultOf)} />
          <NumberField label={words.out} unit={forms.units.mL} hint={words.outHint} {...at("out", faultOf)} />
          <WordField label={words.looked} of={lists.Looked} {...at("looked", faultOf)} />
          <NumberField label={words.putIn} unit={forms.units.mL} {...at("putIn", faultOf)} />
          <WordField label={words.water} of={lists.Water} {...at("water", faultOf)} />
          <WordField label={words.by} of={lists.By} {...at("by", faultOf)} />
          <WordField label={words.howKnown} of={lists["How known"]} {...at("howKnown", faultOf)} />
          <TextField label={words.note} {...at("note", faultOf)} />
        </Step>
      )}
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
