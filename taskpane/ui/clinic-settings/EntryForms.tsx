/** The forms for who agreed the settings and whom to call, wherever they are asked for; one for Working and what became of it. */
import type { ReactNode } from "react";
import type { FormKey } from "../../actions/clinic-settings";
import { clinicSettings as words } from "../../texts/clinic-settings";
import type { Overview, Workbook } from "../../workbook/port";
import { Finished } from "../parts/Finished";
import { Working } from "../parts/Working";
import { EntriesForm } from "./EntriesForm";
import type { ClinicSettingsState } from "./useClinicSettings";

interface Props {
  readonly forms: readonly FormKey[];
  readonly workbook: Workbook;
  readonly overview: Overview;
  readonly today: number;
  readonly locale: string;
  readonly state: ClinicSettingsState;
}

export function EntryForms({ forms, workbook, overview, today, locale, state }: Props) {
  const can = workbook.can("writeNamed");
  return forms.map((form) => (
    <EntriesForm
      key={form}
      form={form}
      overview={overview}
      today={today}
      locale={locale}
      fault={state.fault?.form === form ? state.fault.sentence : null}
      cannot={can === true ? null : can}
      reveal={state.reveal}
      typed={state.typedIn(form)}
      onType={(entries) => state.type(form, entries)}
      write={async (entries) => {
        if (await state.write({ form, typed: entries })) state.type(form, {});
      }}
    />
  ));
}

interface WritingProps {
  readonly state: ClinicSettingsState;
  readonly workbook: Workbook;
  /** What the press says that leads back to the forms. */
  readonly again: string;
  readonly children: ReactNode;
}

/** The forms, or what is being written, or what became of it. */
export function WhileWriting({ state, workbook, again, children }: WritingProps) {
  const { phase } = state.applying;
  if (phase.is === "working") return <Working title={words.working} {...phase} stop={state.applying.stop} />;
  const isFinished = phase.is === "finished";
  return (
    <>
      {isFinished && (
        <Finished
          title={words.result.title[phase.words.outcome]}
          said={phase.words}
          receipt={phase.receipt}
          workbook={workbook}
          reveal={state.reveal}
          again={again}
          onAgain={state.applying.backToChoices}
        />
      )}
      {!isFinished && children}
    </>
  );
}
