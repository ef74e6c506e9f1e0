import { useMemo } from "react";
import { lists } from "../../actions/caseload/lists";
import {
  afterChange,
  changeFields,
  endsCare,
  planChange,
  retyped,
  startOfChange,
  surveyChange,
  type ChangeForm as Form,
  type ChangePlan,
  type ChangeSurvey,
} from "../../actions/record-change";
import { textIn } from "../../actions/caseload/read";
import { forms } from "../../texts/forms";
import { intervalAdvice } from "../../texts/interval-advice";
import { recordChange as words } from "../../texts/record-change";
import { DateField, NumberField, TextField, WordField } from "../forms/Field";
import { useForm } from "../forms/useForm";
import { Notice } from "../parts/Notice";
import { Step } from "../parts/Step";
import { DeviceFields } from "../forms/DeviceFields";
import type { RecordingFormProps, RecordingProps } from "../forms/recording-job";
import { RecordFor } from "../forms/RecordFor";
import { RecordingForm } from "../forms/RecordingForm";

export function RecordChange(props: RecordingProps) {
  return (
    <RecordFor {...props} survey={(caseload, _meant, device) => surveyChange(props.workbook, caseload, device)}>
      {(survey, ways) => <ChangeForm {...props} survey={survey} ways={ways} />}
    </RecordFor>
  );
}

function ChangeForm({ survey, ways, workbook, today, locale, agreed }: RecordingFormProps<ChangeSurvey>) {
  const { device } = survey;
  const { form, at, applies } = useForm<Form>(changeFields, startOfChange(device, today), (before, change) =>
    retyped(device, before, change),
  );
  const plan = useMemo(() => planChange(survey, form, today), [form, survey, today]);
  const day = { today, locale };
  return (
    <RecordingForm
      {...ways}
      workbook={workbook}
      plan={plan}
      record={words.record}
      afterwards={(done, receipt) => afterChange(survey, done, receipt)}
      leave={forms.form.another}
      agreed={agreed}
      fields={
        <>
          <Step title={words.old}>
            <DateField {...day} {...at("out")} />
            <WordField of={lists.Reason} {...at("reason")} />
            <WordField of={lists.Where} {...at("where")} />
            <WordField of={lists["Unplanned visit"]} {...at("unplanned")} />
            {applies("nights") && <NumberField unit={forms.units.nights} {...at("nights")} />}
            <NumberField unit={forms.units.hours} hint={words.hoursHint} {...at("hoursOut")} />
            <WordField of={lists["Changed by"]} {...at("changedBy")} />
            <TextField {...at("note")} />
          </Step>
          {!endsCare(form) && (
            <Step title={words.next}>
              <p className="note">{words.offered}</p>
              <DateField hint={words.deviceInHint} {...day} {...at("deviceIn")} />
              <WordField of={lists.Access} blank={words.asItWas(forms.ends[device.access])} {...at("access")} />
              <DeviceFields at={at} applies={applies} />
              {/* Of the tube that came out: another kind has another past. */}
              {form.heldBy === textIn(device.row, "Held by").toLowerCase() && <Interval sentences={survey.interval} />}
              <TextField {...at("lot")} />
              <WordField of={lists["Position confirmed by"]} {...at("confirmedBy")} />
              {applies("pH") && <NumberField {...at("pH")} />}
            </Step>
          )}
        </>
      }
      meaning={(planned) => <Advice plan={planned} />}
    />
  );
}

function Interval({ sentences }: { readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return (
    <Notice kind="plain">
      <h4>{intervalAdvice.title}</h4>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </Notice>
  );
}

function Advice({ plan: { advice } }: { readonly plan: ChangePlan }) {
  if (advice.length === 0) return null;
  return (
    <Step title={words.means}>
      <Notice kind="problem">
        {advice.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </Notice>
    </Step>
  );
}
