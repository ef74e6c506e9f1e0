import { useId, useState } from "react";
import { readLengths } from "../../../src/columns/stocked-lengths";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { Step } from "../parts/Step";

const words = addColumnsTexts.lengths;

interface Props {
  readonly number: number;
  readonly lengths: readonly number[];
  readonly onLengths: (lengths: readonly number[]) => void;
}

/** The clinic's own list of lengths: never assumed, shown as it will be used. */
export function LengthsStep({ number, lengths, onLengths }: Props) {
  const id = useId();
  const [typed, setTyped] = useState(lengths.join(", "));
  const read = readLengths(typed);

  function onType(text: string) {
    setTyped(text);
    const found = readLengths(text);
    onLengths(typeof found === "string" ? [] : found);
  }

  return (
    <Step number={number} title={words.title}>
      <div className="field">
        <label htmlFor={id}>{words.label}</label>
        <input
          id={id}
          autoComplete="off"
          value={typed}
          aria-invalid={(typed !== "" && typeof read === "string") || undefined}
          aria-describedby={`${id}about`}
          onChange={(event) => onType(event.target.value)}
        />
        <div id={`${id}about`} className="close-stack">
          <span className="note">{words.lead}</span>
          {typeof read === "string" ? (
            typed !== "" && <span className="fault">{read}</span>
          ) : (
            <span>{words.used(read)}</span>
          )}
        </div>
      </div>
    </Step>
  );
}
