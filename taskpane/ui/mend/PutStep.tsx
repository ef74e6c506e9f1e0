import { asTypedHeader, mendedHeader } from "../../../src/mending/headers";
import { mend as mendTexts } from "../../texts/mend";
import { Choice } from "../parts/Choice";
import { Step } from "../parts/Step";
import type { MendState } from "./useMend";

const words = mendTexts.put;

/** Beside the list, or into the cells with what stood there kept beside. */
export function PutStep({ number, state }: { readonly number: number; readonly state: MendState }) {
  const { survey, choices } = state;
  const column = choices?.what && survey?.list?.columns[choices.what.column];
  if (!choices || !column) return null;
  const header = column.header.trim() || mendTexts.plan.unnamed(column.letters);
  return (
    <Step number={number} title={words.title}>
      <Choice
        legend={words.title}
        isLegendForEars
        options={[
          { key: "beside", label: words.beside(mendedHeader(header)), note: words.besideNote },
          { key: "in place", label: words.inPlace, note: words.inPlaceNote(asTypedHeader(header)) },
        ]}
        chosen={choices.put}
        onChoose={(put) => state.choose({ put })}
      />
    </Step>
  );
}
