import { useId } from "react";
import { columnLetters } from "../../../src/columns/formula";
import { convertSizes as convertTexts } from "../../texts/convert-sizes";
import { right } from "../../workbook/area";
import { Choice } from "../parts/Choice";
import { Step } from "../parts/Step";
import type { StepProps } from "./SourceStep";

const words = convertTexts.put;

/** Where the answers go: beside the list, or filled down from one cell. */
export function PutStep({ number, survey, choices, choose }: StepProps) {
  const { list } = survey;
  const canBeside = list !== null && choices.from.of === "column";
  return (
    <Step number={number} title={words.title}>
      <Choice
        legend={words.title}
        isLegendForEars
        options={[
          {
            key: "beside",
            label: words.beside,
            note: canBeside ? words.besideNote(columnLetters(right(list.area))) : words.besideRefused,
            isRefused: !canBeside,
          },
          { key: "spill", label: words.spill, note: words.spillNote },
        ]}
        chosen={choices.put}
        onChoose={(put) => choose({ put })}
      />
      {choices.put === "spill" && <StartField start={choices.start} onStart={(start) => choose({ start })} />}
    </Step>
  );
}

function StartField({ start, onStart }: { readonly start: string; readonly onStart: (start: string) => void }) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{words.start}</label>
      <input
        id={id}
        autoComplete="off"
        spellCheck={false}
        aria-describedby={`${id}hint`}
        value={start}
        onChange={(event) => onStart(event.target.value)}
      />
      <span className="note" id={`${id}hint`}>
        {words.startHint}
      </span>
    </div>
  );
}
