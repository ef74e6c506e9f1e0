/** Fields of the small forms: native controls, each with its label, unit, hint and fault. */
import { useId, type ReactNode } from "react";
import { forms as words } from "../../texts/forms";
import { isoText } from "../../../src/worksheet/dates";

interface Common {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly fault?: string | undefined;
  readonly hint?: string;
}

interface Tied {
  readonly id: string;
  readonly "aria-describedby": string | undefined;
  readonly "aria-invalid": true | undefined;
}

function Field({
  label,
  fault,
  hint,
  unit,
  children,
}: Pick<Common, "label" | "fault" | "hint"> & {
  readonly unit?: string;
  readonly children: (tied: Tied) => ReactNode;
}) {
  const id = useId();
  const about = [unit && `${id}unit`, (fault ?? hint) && `${id}about`].filter(Boolean).join(" ");
  const control = children({
    id,
    "aria-describedby": about === "" ? undefined : about,
    "aria-invalid": fault === undefined ? undefined : true,
  });
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {unit ? (
        <div className="with-unit">
          {control}
          <span id={`${id}unit`}>{unit}</span>
        </div>
      ) : (
        control
      )}
      {(fault ?? hint) && (
        <span id={`${id}about`} className={fault === undefined ? "note" : "fault"}>
          {fault ?? hint}
        </span>
      )}
    </div>
  );
}

export function TextField({ value, onChange, ...about }: Common) {
  return (
    <Field {...about}>
      {(tied) => (
        <input
          {...tied}
          value={value}
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

/** The host's own calendar; days after today cannot be chosen, and are refused where they are typed. */
export function DateField({ value, onChange, today, ...about }: Common & { readonly today: number }) {
  return (
    <Field {...about}>
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

export function WordField({ value, onChange, of, blank = words.form.choose, ...about }: Choice) {
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
