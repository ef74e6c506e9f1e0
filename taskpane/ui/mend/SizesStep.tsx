import { useId } from "react";
import { FRTOMM } from "../../../src/sizes/frtomm";
import { call } from "../../../src/worksheet/call";
import { sizeSaid, type SizeWording } from "../../../src/mending/sizes";
import { mend as mendTexts } from "../../texts/mend";
import { capital } from "../../texts/pieces";
import { CellList } from "../parts/CellGroups";
import { Step } from "../parts/Step";
import { cellAddress } from "../../../src/columns/formula";
import type { MendState } from "./useMend";

const words = mendTexts.sizes;

interface Props {
  readonly number: number;
  readonly state: MendState;
  readonly wordings: readonly SizeWording[];
}

const french = (size: number): string => String(Number(size.toFixed(1)));
const millimetres = (size: number): string => Number(call(FRTOMM, [size])).toFixed(1);

/** Each wording that is not read, once, with what a person says that it is; what is read, folded away. */
export function SizesStep({ number, state, wordings }: Props) {
  const unread = wordings.filter(({ reads }) => reads === null);
  const read = wordings.filter(({ reads, isPlain }) => reads !== null && !isPlain);
  return (
    <Step number={number} title={words.title}>
      {unread.length > 0 && <p className="note">{words.unread(unread.length)}</p>}
      <ul className="rows">
        {unread.map((wording) => (
          <UnreadWording key={wording.key} wording={wording} state={state} />
        ))}
      </ul>
      {read.length > 0 && (
        <details className="fold">
          <summary>{words.read(read.length)}</summary>
          <ul className="rows">
            {read.map(({ key, text, reads, rows }) => (
              <li key={key}>{words.readAs(text, french(reads!), rows.length)}</li>
            ))}
          </ul>
        </details>
      )}
    </Step>
  );
}

function UnreadWording({ wording, state }: { readonly wording: SizeWording; readonly state: MendState }) {
  const id = useId();
  const { key, text, rows, reason, asMillimetres } = wording;
  const { sizes, what } = state.choices!;
  const said = sizes[key] ?? "";
  const becomes = sizeSaid(said);
  const list = state.survey!.list!;
  const cells = rows.map((row) => ({
    address: cellAddress(list.area.top + 1 + row, list.area.left + what!.column),
    text,
  }));
  return (
    <li className="close-stack">
      <div className="row-field">
        <label htmlFor={id}>
          <strong>{words.write(text)}</strong> <span className="note">{words.cells(rows.length)}</span>
        </label>
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={said}
          aria-describedby={`${id}about`}
          aria-invalid={typeof becomes === "string" || undefined}
          onChange={(event) => state.choose({ sizes: { ...sizes, [key]: event.target.value } })}
        />
      </div>
      <span id={`${id}about`} className={typeof becomes === "string" ? "fault" : "note"}>
        {typeof becomes === "number"
          ? words.becomes(french(becomes), millimetres(becomes))
          : capital(becomes ?? reason ?? "")}
        {becomes === null && asMillimetres !== null && ` ${words.hint(french(asMillimetres))}`}
      </span>
      <CellList cells={cells} sheet={list.sheet} reveal={state.reveal} />
    </li>
  );
}
