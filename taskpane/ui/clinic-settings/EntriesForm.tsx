import { useId, useState } from "react";
import { clinicSettingNamed } from "../../../src/settings/index";
import { isoText } from "../../../src/worksheet/dates";
import {
  asTyped,
  cellNamed,
  forms,
  settingText,
  writeEntries,
  type EntryName,
  type FormKey,
} from "../../actions/clinic-settings";
import { clinicSettings as words } from "../../texts/clinic-settings";
import type { Overview, Place } from "../../workbook/port";
import { dateText } from "../parts/dates";
import { Cannot } from "../parts/Cannot";
import { Notice } from "../parts/Notice";
import { ProblemNotice } from "../parts/ProblemNotice";
import { Sentences } from "../parts/Sentences";
import { Step } from "../parts/Step";

type Typed = Readonly<Partial<Record<EntryName, string>>>;

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
  readonly write: (typed: Typed) => void;
}

/** One form: its fields hold what stands in the sheet until something is typed, and say what would be written. */
export function EntriesForm({ form, overview, today, locale, fault, cannot, reveal, write }: Props) {
  const [typed, setTyped] = useState<Typed>({});
  const isTouched = Object.keys(typed).length > 0;
  const plan = writeEntries.plan({ overview, today }, { form, typed });
  const { title, lead, write: press } = words.forms[form];
  return (
    <Step title={title}>
      <p className="note">{lead}</p>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          write(typed);
        }}
      >
        {forms[form].map((name) => (
          <EntryField
            key={name}
            name={name}
            value={typed[name] ?? asTyped(name, cellNamed(overview, name))}
            stands={standing(name, overview, locale)}
            today={today}
            onType={(text) => setTyped((before) => ({ ...before, [name]: text }))}
          />
        ))}
        {isTouched && plan.outcome === "planned" && (
          <div className="close-stack">
            <strong>{words.preview}</strong>
            <Sentences of={plan.says} />
          </div>
        )}
        {isTouched && plan.outcome === "problem" && <ProblemNotice problem={plan} reveal={reveal} />}
        {fault !== null && plan.outcome === "planned" && (
          <Notice kind="problem">
            <p>{fault}</p>
          </Notice>
        )}
        <Cannot why={cannot} />
        <div className="presses">
          <button
            type="submit"
            className="button primary"
            disabled={!isTouched || cannot !== null || plan.outcome === "problem"}
          >
            {press}
          </button>
        </div>
      </form>
    </Step>
  );
}

/** What the cell holds, as people read it. */
function standing(name: EntryName, overview: Overview, locale: string): string | null {
  const cell = cellNamed(overview, name);
  const isDay = name === "Agreed_On" && typeof cell === "number" && cell !== 0;
  return isDay ? dateText(cell, locale) : settingText(clinicSettingNamed(name), cell);
}

interface FieldProps {
  readonly name: EntryName;
  readonly value: string;
  readonly stands: string | null;
  readonly today: number;
  readonly onType: (text: string) => void;
}

function EntryField({ name, value, stands, today, onType }: FieldProps) {
  const id = useId();
  const isDay = name === "Agreed_On";
  return (
    <div className="field">
      <label htmlFor={id}>{clinicSettingNamed(name).label}</label>
      <input
        id={id}
        type={isDay ? "date" : "text"}
        max={isDay ? isoText(today) : undefined}
        autoComplete="off"
        value={value}
        placeholder={name === "Agreed_By" ? words.placeholders.Agreed_By : undefined}
        aria-describedby={`${id}stands`}
        onChange={(event) => onType(event.target.value)}
      />
      <span id={`${id}stands`} className="note">
        {words.stands(stands)}
      </span>
    </div>
  );
}
