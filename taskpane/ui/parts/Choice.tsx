import { useId } from "react";

interface Props<K extends string> {
  readonly legend: string;
  /** The step's own heading says the same to those who see it. */
  readonly isLegendForEars?: boolean;
  readonly options: readonly {
    readonly key: K;
    readonly label: string;
    readonly note?: string;
    readonly isRefused?: boolean;
  }[];
  readonly chosen: K;
  readonly onChoose: (key: K) => void;
}

/** One of a few, all in sight. */
export function Choice<K extends string>({ legend, isLegendForEars = false, options, chosen, onChoose }: Props<K>) {
  const id = useId();
  return (
    <fieldset>
      <legend className={isLegendForEars ? "for-ears" : undefined}>{legend}</legend>
      {options.map(({ key, label, note, isRefused }) => (
        <div className="tick" key={key}>
          <input
            type="radio"
            id={`${id}${key}`}
            name={id}
            checked={chosen === key}
            disabled={isRefused}
            {...(note !== undefined && { "aria-describedby": `${id}${key}note` })}
            onChange={() => onChoose(key)}
          />
          <label htmlFor={`${id}${key}`}>{label}</label>
          {note !== undefined && (
            <span className="note" id={`${id}${key}note`}>
              {note}
            </span>
          )}
        </div>
      ))}
    </fieldset>
  );
}
