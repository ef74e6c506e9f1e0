import { useDeferredValue, useEffect, useId, useRef, useState } from "react";
import { guide as guideTexts } from "../../texts/guide";
import { useAnnounce } from "../parts/announce";
import { functions } from "./documented";
import { FunctionEntry } from "./FunctionEntry";
import type { KeptArguments } from "../put-in-cell/PutInCellForm";
import { search } from "./search";
import type { JobProps } from "../pane/define-job";

type Props = Pick<JobProps, "workbook" | "overview" | "locale">;

/** The searchable guide, drawn from the functions' own definitions. */
export function Guide({ workbook, overview, locale }: Props) {
  const id = useId();
  const announce = useAnnounce();
  const [typed, setTyped] = useState("");
  const kept = useRef<KeptArguments>(new Map());
  const wanted = useDeferredValue(typed);
  const found = search(functions, wanted);
  const families = [...new Set(found.map(({ family }) => family))];
  const howMany = guideTexts.found(found.length, functions.length);

  useEffect(() => {
    if (wanted.trim() !== "") announce(found.length === 0 ? guideTexts.none : howMany);
  }, [announce, found.length, howMany, wanted]);

  return (
    <>
      <div className="field">
        <label htmlFor={id}>{guideTexts.search}</label>
        <input
          id={id}
          type="search"
          autoComplete="off"
          spellCheck={false}
          aria-describedby={`${id}hint`}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
        <span id={`${id}hint`} className="note">
          {guideTexts.searchHint}. {howMany}.
        </span>
      </div>
      {found.length === 0 && <p>{guideTexts.none}</p>}
      {families.map((family) => (
        <div className="stack" key={family}>
          <h3>{family}</h3>
          <ul className="entries">
            {found
              .filter((fn) => fn.family === family)
              .map((fn) => (
                <FunctionEntry
                  key={fn.name}
                  fn={fn}
                  workbook={workbook}
                  overview={overview}
                  locale={locale}
                  kept={kept.current}
                />
              ))}
          </ul>
        </div>
      ))}
    </>
  );
}
