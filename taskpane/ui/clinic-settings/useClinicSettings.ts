/** Writing into the settings sheet: the workbook is looked at once more before anything is written. */
import { useState } from "react";
import { writeEntries, type EntriesChoices, type FormKey } from "../../actions/clinic-settings";
import { pane as paneTexts } from "../../texts/pane";
import type { Place, Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { useApply, type Applying } from "../parts/useApply";
import { useReveal } from "../parts/useReveal";

interface Fault {
  readonly form: FormKey;
  readonly sentence: string;
}

export interface ClinicSettingsState {
  readonly applying: Applying;
  readonly fault: Fault | null;
  reveal(place: Place): void;
  write(choices: EntriesChoices): Promise<void>;
}

export function useClinicSettings(workbook: Workbook | null, today: number): ClinicSettingsState {
  const announce = useAnnounce();
  const applying = useApply(workbook);
  const reveal = useReveal(workbook);
  const [fault, setFault] = useState<Fault | null>(null);

  function fail(form: FormKey, sentence: string) {
    setFault({ form, sentence });
    announce(sentence);
  }

  return {
    applying,
    fault,
    reveal,
    write: async (choices) => {
      if (!workbook) return;
      try {
        const plan = writeEntries.plan(await writeEntries.survey(workbook, { today }), choices);
        if (plan.outcome === "problem") return fail(choices.form, plan.sentence);
        setFault(null);
        await applying.apply(plan.change, (receipt) => writeEntries.afterwards(plan, receipt));
      } catch (error) {
        fail(choices.form, paneTexts.unexpected(String(error)));
      }
    },
  };
}
