import { clinicSettingNamed } from "../../../src/settings/index";
import {
  asTyped,
  cellNamed,
  forms,
  isRequired,
  settingText,
  writeEntries,
  type EntryName,
  type FormKey,
} from "../../actions/clinic-settings";
import { clinicSettings as words } from "../../texts/clinic-settings";
import type { Overview, Place } from "../../workbook/port";
import { dateText } from "../parts/dates";
import { EntryForm } from "../forms/EntryForm";
import { DateField, TextField } from "../forms/Field";
import { Cannot } from "../parts/Cannot";
import { Notice } from "../parts/Notice";
import { ProblemNotice } from "../parts/ProblemNotice";
import { Sentences } from "../parts/Sentences";
import { Step } from "../parts/Step";
import type { Typed } from "./useClinicSettings";

interface Props {
  readonly form: FormKey;
  readonly overview: Overview;
  /** Today as a day number. */
  readonly today: number;
  readonly locale: string;
  /** Why the last press wrote nothing. */
  readonly fault: string | null;
  /** Why this host cannot write at all. */
  readonly cannot: string | null;
  readonly reveal: (place: Place) => void;
  readonly typed: Typed;
  readonly onType: (typed: Typed) => void;
  readonly write: (typed: Typed) => Promise<void>;
}

/** One form: its fields hold what stands in the sheet until something is typed, and say what would be written. */
export function EntriesForm({ form, overview, today, locale, fault, cannot, reveal, typed, onType, write }: Props) {
  const isTouched = Object.keys(typed).length > 0;
  const plan = writeEntries.plan({ overview, today }, { form, typed });
  const faults = plan.outcome === "problem" ? (plan.faults ?? []) : [];
  const { title, lead, write: press } = words.forms[form];
  const at = (name: EntryName) => ({
    name,
    label: clinicSettingNamed(name).label,
    value: typed[name] ?? asTyped(name, cellNamed(overview, name)),
    isRequired: isRequired(name),
    hint: words.stands(standing(name, overview, locale)),
    onChange: (text: string) => onType({ ...typed, [name]: text }),
  });
  return (
    <Step title={title}>
      <p className="note">{lead}</p>
      <EntryForm
        faults={faults}
        onSubmit={() => void write(typed)}
        top={
          fault !== null &&
          faults.length === 0 && (
            <Notice kind="problem">
              <p>{fault}</p>
            </Notice>
          )
        }
      >
        {forms[form].map((name) =>
          name === "Agreed_On" ? (
            <DateField key={name} today={today} locale={locale} {...at(name)} />
          ) : (
            <TextField key={name} placeholder={placeholders[name]} {...at(name)} />
          ),
        )}
        {isTouched && plan.outcome === "planned" && (
          <div className="close-stack">
            <strong>{words.preview}</strong>
            <Sentences of={plan.says} />
          </div>
        )}
        {isTouched && plan.outcome === "problem" && faults.length === 0 && (
          <ProblemNotice problem={plan} reveal={reveal} />
        )}
        <Cannot why={cannot} />
        <div className="presses">
          <button type="submit" className="button primary" disabled={cannot !== null}>
            {press}
          </button>
        </div>
      </EntryForm>
    </Step>
  );
}

const placeholders: Partial<Record<EntryName, string>> = words.placeholders;

/** What the cell holds, as people read it. */
function standing(name: EntryName, overview: Overview, locale: string): string | null {
  const cell = cellNamed(overview, name);
  const isDay = name === "Agreed_On" && typeof cell === "number" && cell !== 0;
  return isDay ? dateText(cell, locale) : settingText(clinicSettingNamed(name), cell);
}
