import { useId } from "react";
import { recipeNamed } from "../../../src/columns/recipes/index";
import type { ColumnPreview, FormulaChoice } from "../../actions/add-columns/interface";
import { addColumns } from "../../texts/add-columns";
import { Sentences } from "../parts/Sentences";
import type { AddColumnsState } from "./useAddColumns";

const words = addColumns.formulas;
const choices = Object.keys(words.choices) as FormulaChoice[];

interface Props {
  readonly columns: readonly ColumnPreview[];
  readonly state: Pick<AddColumnsState, "choices" | "choose">;
}

/** Which columns are plain Excel and which need our functions, and why; a person may choose. */
export function FormulasField({ columns, state }: Props) {
  const id = useId();
  const chosen = state.choices?.formulas;
  const isOpen = columns.some(({ key }) => recipeNamed(key).functions.length > 0);
  return (
    <div className="field">
      {isOpen && (
        <>
          <label htmlFor={id}>{words.label}</label>
          <select
            id={id}
            value={chosen}
            aria-describedby={`${id}which`}
            onChange={(event) => state.choose({ formulas: event.target.value as FormulaChoice })}
          >
            {choices.map((choice) => (
              <option key={choice} value={choice}>
                {words.choices[choice]}
              </option>
            ))}
          </select>
        </>
      )}
      <div id={`${id}which`} className="note close-stack">
        <Sentences of={sentences(columns)} />
      </div>
    </div>
  );
}

function sentences(columns: readonly ColumnPreview[]): readonly string[] {
  const plain = columns.filter(({ written }) => written.dialect === "plain");
  const ours = columns.filter(({ written }) => written.dialect === "ours");
  const free = ours.filter(({ written }) => written.because === null);
  return [
    ...(plain.length > 0 ? [words.plain(plain.map(({ header }) => header))] : []),
    ...ours.flatMap(({ header, written: { because, rows } }) =>
      because === null ? [] : [words.needed(header, rows, because)],
    ),
    ...(free.length > 0 ? [words.ours(free.map(({ header }) => header))] : []),
  ];
}

/** Rows that get an error because plain Excel was chosen: never folded away. */
export function MissedRows({ columns }: Pick<Props, "columns">) {
  const missed = columns.flatMap(({ header, written: { dialect, rows } }) =>
    dialect === "plain" && rows.length > 0 ? [words.missed(header, rows)] : [],
  );
  return missed.length > 0 && <Sentences of={missed} />;
}
