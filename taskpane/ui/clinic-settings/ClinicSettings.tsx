import { useState } from "react";
import { isOlder } from "../../actions/caseload/schema";
import { agreement, settingLines, type FormKey } from "../../actions/clinic-settings";
import { clinicSettings as words } from "../../texts/clinic-settings";
import { pane as paneTexts } from "../../texts/pane";
import { Finished } from "../parts/Finished";
import { Notice } from "../parts/Notice";
import { Working } from "../parts/Working";
import { EntriesForm, type Typed } from "./EntriesForm";
import { AllSettings, ToLookAt } from "./SettingsList";
import { useClinicSettings } from "./useClinicSettings";
import type { JobProps } from "../pane/define-job";

type Props = Pick<JobProps, "workbook" | "overview" | "today" | "locale">;

/** Who agreed the settings, whom to call, and every setting with what stands in its cell and where it comes from. */
export function ClinicSettings({ workbook, overview, today, locale }: Props) {
  const state = useClinicSettings(workbook, today);
  /* Here, so that what was typed into one form outlives the writing of the other. */
  const [typed, setTyped] = useState<Readonly<Partial<Record<FormKey, Typed>>>>({});
  if (!workbook || !overview) return <p>{paneTexts.waiting}</p>;
  const { phase } = state.applying;
  if (phase.is === "working") return <Working title={words.working} {...phase} stop={state.applying.stop} />;
  if (phase.is === "finished")
    return (
      <Finished
        title={words.result.title[phase.words.outcome]}
        said={phase.words}
        receipt={phase.receipt}
        workbook={workbook}
        reveal={state.reveal}
        again={words.result.again}
        onAgain={state.applying.backToChoices}
      />
    );
  const view = settingLines(overview, today);
  const { agreed, sentence } = agreement(overview, today);
  const can = workbook.can("writeNamed");
  return (
    <>
      <Notice kind={agreed ? "plain" : "caution"}>
        <p>{view.isThere ? sentence : words.none.lead}</p>
        {!view.isThere && <p>{words.none.how}</p>}
        {isOlder(overview) && <p>{words.older}</p>}
      </Notice>
      {view.isThere && <ToLookAt view={view} reveal={state.reveal} />}
      {view.isThere &&
        (["agreement", "calls"] as const).map((form) => (
          <EntriesForm
            key={form}
            form={form}
            overview={overview}
            today={today}
            locale={locale}
            fault={state.fault?.form === form ? state.fault.sentence : null}
            cannot={can === true ? null : can}
            reveal={state.reveal}
            typed={typed[form] ?? {}}
            onType={(entries) => setTyped((before) => ({ ...before, [form]: entries }))}
            write={async (entries) => {
              if (await state.write({ form, typed: entries })) setTyped((before) => ({ ...before, [form]: {} }));
            }}
          />
        ))}
      <AllSettings view={view} reveal={state.reveal} />
    </>
  );
}
