/** Writing into the settings sheet: the workbook is looked at once more before anything is written. */
import { useState } from "react";
import { writeEntries, type EntriesChoices, type EntryName, type FormKey } from "../../actions/clinic-settings";
import { pane as paneTexts } from "../../texts/pane";
import type { Place, Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { useApply, type Applying } from "../parts/useApply";
import { useReveal } from "../parts/useReveal";

interface Fault {
  readonly form: FormKey;
  readonly sentence: string;
}

export type Typed = Readonly<Partial<Record<EntryName, string>>>;

export interface ClinicSettingsState {
  /** Here, so that what was typed into one form outlives the writing of the other. */
  typedIn(form: FormKey): Typed;
  type(form: FormKey, typed: Typed): void;
  readonly applying: Applying;
  readonly fault: Fault | null;
  reveal(place: Place): void;
  /** Gives whether it stands in the sheet now; where nothing does, the form comes back with its entries. */
  write(choices: EntriesChoices): Promise<boolean>;
}

export function useClinicSettings(workbook: Workbook | null, today: number): ClinicSettingsState {
  const announce = useAnnounce();
  const applying = useApply(workbook);
  const reveal = useReveal(workbook);
  const [fault, setFault] = useState<Fault | null>(null);

  const [typed, setTyped] = useState<Readonly<Partial<Record<FormKey, Typed>>>>({});

  function fail(form: FormKey, sentence: string): false {
    setFault({ form, sentence });
    announce(sentence);
    return false;
  }

  return {
    applying,
    fault,
    reveal,
    typedIn: (form) => typed[form] ?? {},
    type: (form, entries) => setTyped((before) => ({ ...before, [form]: entries })),
    write: async (choices) => {
      if (!workbook) return false;
      try {
        const plan = writeEntries.plan(await writeEntries.survey(workbook, { today }), choices);
        if (plan.outcome === "problem") return fail(choices.form, plan.sentence);
        setFault(null);
        const carriedOut = await applying.apply(plan.change, (receipt) => writeEntries.afterwards(plan, receipt));
        if (!carriedOut || carriedOut.words.outcome === "done" || carriedOut.words.canTakeBack) return true;
        applying.backToChoices();
        return fail(choices.form, carriedOut.words.sentences.join(" "));
      } catch (error) {
        return fail(choices.form, paneTexts.unexpected(String(error)));
      }
    },
  };
}
