import { useMemo } from "react";
import { setUp } from "../../actions/set-up";
import { setUp as setUpTexts } from "../../texts/set-up";
import { Notice } from "../parts/Notice";
import { Sentences } from "../parts/Sentences";
import { Step } from "../parts/Step";
import type { SetUpState } from "./useSetUp";

const words = setUpTexts.preview;

/** What would be made, in numbers, before it is. */
export function MadeStep({ state: { book, failure, make } }: { readonly state: SetUpState }) {
  const preview = useMemo(() => book && setUp.preview(book), [book]);
  return (
    <Step number={3} title={words.title}>
      {failure !== null && (
        <Notice kind="problem">
          <p>{failure}</p>
        </Notice>
      )}
      {!preview && failure === null && <p>{setUpTexts.loading}</p>}
      {preview && (
        <>
          <Sentences of={preview.says} />
          <h4>{words.sheets}</h4>
          <ul className="bullets">
            {preview.sheets.map(({ name, purpose, holds }) => (
              <li key={name}>
                <strong>{name}</strong>: {purpose} {holds}
              </li>
            ))}
          </ul>
          <details className="fold">
            <summary>{words.settings}</summary>
            <Sentences of={preview.settings} />
          </details>
          <Notice kind="caution">
            <p>{words.caution}</p>
          </Notice>
          <p className="note">{words.inPlace}</p>
        </>
      )}
      <div className="presses">
        <button type="button" className="button primary" disabled={!preview} onClick={() => void make()}>
          {words.make}
        </button>
      </div>
    </Step>
  );
}
