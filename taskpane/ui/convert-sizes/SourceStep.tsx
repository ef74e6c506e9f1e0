import { useId } from "react";
import type { Choices, SizesSurvey, Way } from "../../actions/convert-sizes/interface";
import { convertSizes as convertTexts } from "../../texts/convert-sizes";
import { ownList } from "../../texts/own-list";
import { areaAddress } from "../../workbook/area";
import { Choice } from "../parts/Choice";
import { Step } from "../parts/Step";

const words = convertTexts.source;
const allWays: readonly Way[] = ["toMm", "toFr"];

export interface StepProps {
  readonly number: number;
  readonly survey: SizesSurvey;
  readonly choices: Choices;
  readonly choose: (change: Partial<Choices>) => void;
}

/** Which cells hold the sizes, and which way they go. */
export function SourceStep({ number, survey, choices, choose }: StepProps) {
  const { list, selected } = survey;
  const { from } = choices;
  const ofSelected = { of: "selected" } as const;
  const column =
    from.of === "column" ? from.column : survey.proposal.from.of === "column" ? survey.proposal.from.column : null;
  return (
    <Step number={number} title={words.title}>
      {list && selected && (
        <Choice
          legend={words.only}
          options={[
            { key: "column", label: words.wholeOfList },
            { key: "selected", label: words.selected(areaAddress(selected.area)) },
          ]}
          chosen={from.of}
          onChoose={(of) =>
            choose({
              from: of === "selected" ? ofSelected : { of: "column", column },
              put: of === "selected" ? "spill" : choices.put,
            })
          }
        />
      )}
      {!list && selected && <p>{words.selected(areaAddress(selected.area))}</p>}
      {list && from.of === "column" && <ColumnField survey={survey} choices={choices} choose={choose} />}
      <Choice
        legend={words.way}
        options={allWays.map((way) => ({ key: way, label: words.ways[way], note: words.notes[way] }))}
        chosen={choices.way}
        onChoose={(way) => choose({ way })}
      />
    </Step>
  );
}

function ColumnField({ survey, choices, choose }: Omit<StepProps, "number">) {
  const id = useId();
  const list = survey.list!;
  const chosen = choices.from.of === "column" ? choices.from.column : null;
  const samples = chosen === null ? [] : list.columns[chosen]!.samples;
  return (
    <div className="field">
      <label htmlFor={id}>{words.column}</label>
      <select
        id={id}
        aria-describedby={`${id}about`}
        value={chosen ?? ""}
        onChange={({ target: { value } }) =>
          choose({ from: { of: "column", column: value === "" ? null : Number(value) } })
        }
      >
        <option value="">{ownList.chooseColumn}</option>
        {list.columns.map(({ index, letters, header }) => (
          <option key={index} value={index}>
            {ownList.column(letters, header)}
          </option>
        ))}
      </select>
      <span className="samples" id={`${id}about`}>
        {chosen === null ? "" : ownList.samples(samples)}
      </span>
    </div>
  );
}
