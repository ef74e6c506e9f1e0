import { useMemo } from "react";
import { lists } from "../../actions/caseload/lists";
import {
  afterChange,
  endsCare,
  planChange,
  retyped,
  startOfChange,
  surveyChange,
  type ChangeForm as Form,
  type ChangePlan,
  type ChangeSurvey,
} from "../../actions/record-change";
import { forms } from "../../texts/forms";
import { recordCheck } from "../../texts/record-check";
import { recordChange as words } from "../../texts/record-change";
import { Notice } from "../parts/Notice";
import { Step } from "../parts/Step";
import { DeviceFields } from "../forms/DeviceFields";
import { DateField, NumberField, TextField, WordField } from "../forms/Field";
import type { JobProps } from "../forms/job-props";
import { RecordFor } from "../forms/RecordFor";
import { RecordingForm } from "../forms/RecordingForm";
import { useForm } from "../forms/useForm";

export function RecordChange({ workbook, today, locale, agreed }: JobProps) {
  return (
    <RecordFor
      workbook={workbook}
      locale={locale}
      survey={(caseload, _meant, device) => surveyChange(workbook, caseload, device)}
    >
      {(survey, again) => (
        <ChangeForm survey={survey} workbook={workbook} today={today} agreed={agreed} onAgain={again} />
      )}
    </RecordFor>
  );
}

interface FormProps extends Pick<JobProps, "workbook" | "today" | "agreed"> {
  readonly survey: ChangeSurvey;
  readonly onAgain: () => void;
}

function ChangeForm({ survey, workbook, today, agreed, onAgain }: FormProps) {
  const { device } = survey;
  const { form, at } = useForm<Form>(startOfChange(device, today), (before, change) => retyped(device, before, change));
  const plan = useMemo(() => planChange(survey, form, today), [form, survey, today]);
  return (
    <RecordingForm
      workbook={workbook}
      plan={plan}
      record={words.record}
      afterwards={(done, receipt) => afterChange(survey, done, receipt)}
      onAgain={onAgain}
      agreed={agreed}
      fields={(faultOf) => (
        <>
          <Step title={words.old}>
            <DateField label={words.out} today={today} {...at("out", faultOf)} />
            <WordField label={words.reason} of={lists.Reason} {...at("reason", faultOf)} />
            <WordField label={words.where} of={lists.Where} {...at("where", faultOf)} />
            <WordField label={words.unplanned} of={lists["Unplanned visit"]} {...at("unplanned", faultOf)} />
            <NumberField label={words.nights} unit={forms.units.nights} {...at("nights", faultOf)} />
            <NumberField
              label={words.hoursOut}
              unit={forms.units.hours}
              hint={words.hoursHint}
              {...at("hoursOut", faultOf)}
            />
            <WordField label={words.changedBy} of={lists["Changed by"]} {...at("changedBy", faultOf)} />
            <TextField label={recordCheck.note} {...at("note", faultOf)} />
          </Step>
          {!endsCare(form) && (
            <Step title={words.next}>
              <p className="note">{words.offered}</p>
              <DateField label={words.deviceIn} hint={words.deviceInHint} today={today} {...at("deviceIn", faultOf)} />
              <WordField
                label={words.access}
                of={lists.Access}
                blank={words.asItWas(forms.ends[device.access])}
                {...at("access", faultOf)}
              />
              <DeviceFields at={(field) => at(field, faultOf)} />
              <TextField label={words.lot} {...at("lot", faultOf)} />
              <WordField
                label={words.confirmedBy}
                of={lists["Position confirmed by"]}
                {...at("confirmedBy", faultOf)}
              />
              <NumberField label={words.pH} {...at("pH", faultOf)} />
            </Step>
          )}
        </>
      )}
      meaning={(planned) => <Advice plan={planned} />}
    />
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
