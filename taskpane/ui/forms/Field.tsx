/** Fields of the forms: native controls, each with its label, unit, hint and fault, and a date in words. */
import { useId, type ReactNode } from "react";
import { dayOfText, isoText } from "../../../src/worksheet/dates";
import { entryForm as words } from "../../texts/entry-form";
import { dayInFull } from "../parts/dates";
import { useFields } from "./EntryForm";

interface Common {
  /** By which faults name it. */
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly isRequired?: boolean;
  /** What its form does not know: found out by a look at the workbook. */
  readonly fault?: string | undefined;
  readonly hint?: ReactNode;
}

interface Tied {
  readonly id: string;
  readonly required: boolean;
  readonly "aria-describedby": string | undefined;
  readonly "aria-invalid": true | undefined;
}

interface Frame extends Omit<Common, "value" | "onChange"> {
  readonly unit?: string;
  /** What was typed, in other words. */
  readonly readBack?: string | undefined;
  readonly children: (tied: Tied) => ReactNode;
}

function Field({ name, label, isRequired = false, fault: own, hint, unit, readBack, children }: Frame) {
  const outside = useId();
  const fields = useFields();
  const id = fields?.idOf(name) ?? outside;
  const fault = own ?? fields?.faultOf(name);
  const parts = { unit, read: readBack, about: hint, fault };
  const about = Object.entries(parts).flatMap(([part, said]) => (said === undefined || said === "" ? [] : [id + part]));
  const control = children({
    id,
    required: isRequired,
    "aria-describedby": about.length === 0 ? undefined : about.join(" "),
    "aria-invalid": fault === undefined ? undefined : true,
  });
  return (
    <div className={fault === undefined ? "field" : "field faulty"}>
      <div className="field-label">
        <label htmlFor={id}>{label}</label>
        {/* The control says it to those who hear. */}
        {isRequired && (
          <span className="mark" aria-hidden="true">
            {words.required}
          </span>
        )}
      </div>
      {fault !== undefined && (
        <span id={`${id}fault`} className="fault">
          {fault}
        </span>
      )}
      {unit ? (
        <div className="with-unit">
          {control}
          <span id={`${id}unit`}>{unit}</span>
        </div>
      ) : (
        control
      )}
      {readBack !== undefined && (
        <span id={`${id}read`} className="read-back">
          {readBack}
        </span>
      )}
      {hint !== undefined && hint !== "" && (
        <span id={`${id}about`} className="note">
          {hint}
        </span>
      )}
    </div>
  );
}

interface Text extends Common {
  readonly placeholder?: string | undefined;
}

export function TextField({ value, onChange, placeholder, ...about }: Text) {
  return (
    <Field {...about}>
      {(tied) => (
        <input
          {...tied}
          value={value}
          placeholder={placeholder}
          autoComplete="off"
          spellCheck={false}
          onChange={(e) => onChange(e.target.value)}
        />
      )}
    </Field>
  );
}

export function NumberField({ value, onChange, ...about }: Common & { readonly unit?: string }) {
  return (
    <Field {...about}>
      {(tied) => (
        <input
          {...tied}
          value={value}
          inputMode="decimal"
          autoComplete="off"
          onChange={(e) => onChange(e.target.value)}
        />
      )}
    </Field>
  );
}

interface Day extends Common {
  /** Days after it cannot be chosen, and are refused where they are typed. */
  readonly today: number;
  readonly locale: string;
}

/** The host's own calendar. What it holds is read back in words: 3/12 and 12/3 look alike in figures. */
export function DateField({ value, onChange, today, locale, ...about }: Day) {
  const day = dayOfText(value);
  return (
    <Field {...about} readBack={day === null ? undefined : dayInFull(day, locale)}>
      {(tied) => (
        <input {...tied} type="date" max={isoText(today)} value={value} onChange={(e) => onChange(e.target.value)} />
      )}
    </Field>
  );
}

interface Choice extends Common {
  readonly of: readonly string[];
  /** What it means that no word is chosen. */
  readonly blank?: string;
}

export function WordField({ value, onChange, of, blank = words.choose, ...about }: Choice) {
  return (
    <Field {...about}>
      {(tied) => (
        <select {...tied} value={value} onChange={(e) => onChange(e.target.value)}>
          <option value="">{blank}</option>
          {/* What stands in the list but is none of its words is shown as it is, to be put right. */}
          {value !== "" && !of.includes(value) && <option value={value}>{value}</option>}
          {of.map((word) => (
            <option key={word} value={word}>
              {word}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
