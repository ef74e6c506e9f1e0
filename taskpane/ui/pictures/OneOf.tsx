/** One of many, in a list that opens. */
import { useId } from "react";

interface Props<K extends string> {
  readonly label: string;
  readonly hint?: string;
  readonly options: readonly { readonly key: K; readonly label: string }[];
  readonly chosen: K;
  readonly onChoose: (key: K) => void;
}

export function OneOf<K extends string>({ label, hint, options, chosen, onChoose }: Props<K>) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {hint !== undefined && (
        <span className="note" id={`${id}hint`}>
          {hint}
        </span>
      )}
      <select
        id={id}
        value={chosen}
        aria-describedby={hint === undefined ? undefined : `${id}hint`}
        onChange={({ target }) => onChoose(target.value as K)}
      >
        {options.map((one) => (
          <option key={one.key} value={one.key}>
            {one.label}
          </option>
        ))}
      </select>
    </div>
  );
}
