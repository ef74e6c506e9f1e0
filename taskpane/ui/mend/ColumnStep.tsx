import { useId } from "react";
import type { MendAs } from "../../actions/mend/interface";
import { mend as mendTexts } from "../../texts/mend";
import { ownList } from "../../texts/own-list";
import { Choice } from "../parts/Choice";
import { Step } from "../parts/Step";
import type { MendState } from "./useMend";

const words = mendTexts.column;
const ways: readonly MendAs[] = ["dates", "sizes", "kinds"];

/** Which column, and what stands in it. */
export function ColumnStep({ number, state }: { readonly number: number; readonly state: MendState }) {
  const id = useId();
  const { survey, choices } = state;
  const list = survey?.list;
  if (!list || !choices) return null;
  const { what } = choices;
  const mendable = new Map(survey.mendable.map((one) => [one.column, one]));
  const chosen = what ? list.columns[what.column] : undefined;
  return (
    <Step number={number} title={words.title}>
      {mendable.size === 0 && <p>{words.none}</p>}
      <div className="field">
        <label htmlFor={id}>{words.column}</label>
        <select
          id={id}
          aria-describedby={`${id}about`}
          value={what?.column ?? ""}
          onChange={({ target: { value } }) => {
            if (value === "") return state.chooseColumn(null);
            const column = Number(value);
            state.chooseColumn({ column, as: mendable.get(column)?.as ?? what?.as ?? "dates" });
          }}
        >
          <option value="">{words.choose}</option>
          {list.columns.map(({ index, letters, header }) => (
            <option key={index} value={index}>
              {words.option(letters, header, mendable.get(index)?.open ?? 0)}
            </option>
          ))}
        </select>
        <span className="samples" id={`${id}about`}>
          {chosen ? ownList.samples(chosen.samples) : ""}
        </span>
      </div>
      {what && (
        <Choice
          legend={words.as}
          options={ways.map((way) => ({ key: way, label: words.ways[way] }))}
          chosen={what.as}
          onChoose={(as) => state.chooseColumn({ column: what.column, as })}
        />
      )}
    </Step>
  );
}
