import { isOlder } from "../../actions/caseload/schema";
import { agreement, settingLines } from "../../actions/clinic-settings";
import { clinicSettings as words } from "../../texts/clinic-settings";
import { pane as paneTexts } from "../../texts/pane";
import { Notice } from "../parts/Notice";
import type { JobProps } from "../pane/define-job";
import { EntryForms, WhileWriting } from "./EntryForms";
import { AllSettings, ToLookAt } from "./SettingsList";
import { useClinicSettings } from "./useClinicSettings";

type Props = Pick<JobProps, "workbook" | "overview" | "today" | "locale">;

/** Who agreed the settings, whom to call, and every setting with what stands in its cell and where it comes from. */
export function ClinicSettings({ workbook, overview, today, locale }: Props) {
  const state = useClinicSettings(workbook, today);
  if (!workbook || !overview) return <p>{paneTexts.waiting}</p>;
  const view = settingLines(overview, today);
  const { agreed, sentence } = agreement(overview, today);
  return (
    <WhileWriting state={state} workbook={workbook} again={words.result.again}>
      <Notice kind={agreed ? "plain" : "caution"}>
        <p>{view.isThere ? sentence : words.none.lead}</p>
        {!view.isThere && <p>{words.none.how}</p>}
        {isOlder(overview) && <p>{words.older}</p>}
      </Notice>
      {view.isThere && <ToLookAt view={view} reveal={state.reveal} />}
      {view.isThere && <EntryForms forms={["agreement", "calls"]} {...{ workbook, overview, today, locale, state }} />}
      <AllSettings view={view} reveal={state.reveal} />
    </WhileWriting>
  );
}
