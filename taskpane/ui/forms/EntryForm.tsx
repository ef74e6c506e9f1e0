/**
 * The frame of every form: what has to be put right stands at its top once somebody has tried, each line a way to its
 * field, and the fields below say the same beside themselves.
 */
import { createContext, useContext, useEffect, useId, useRef, useState, type ReactNode } from "react";
import type { Fault } from "../../actions/caseload/typed";
import { entryForm as words } from "../../texts/entry-form";
import { Notice } from "../parts/Notice";

export interface Fields {
  idOf(name: string): string;
  /** Only once somebody has tried. */
  faultOf(name: string): string | undefined;
}

const Showing = createContext<Fields | null>(null);

/** Null outside of a form. */
export const useFields = (): Fields | null => useContext(Showing);

interface Props {
  /** As the fields stand now, in their order. */
  readonly faults: readonly Fault[];
  /** Pressed with nothing to put right. */
  readonly onSubmit: () => void;
  /** What became of the last press, before anything else. */
  readonly top?: ReactNode;
  readonly children: ReactNode;
}

export function EntryForm({ faults, onSubmit, top, children }: Props) {
  const base = useId();
  const [attempts, setAttempts] = useState(0);
  const summary = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (attempts > 0) summary.current?.focus();
  }, [attempts]);
  const shown = attempts > 0 ? faults : [];
  const fields: Fields = {
    idOf: (name) => `${base}${name}`,
    faultOf: (name) => shown.find(({ field }) => field === name)?.sentence,
  };
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        if (faults.length > 0) return setAttempts((n) => n + 1);
        setAttempts(0);
        onSubmit();
      }}
    >
      {top}
      {shown.length > 0 && (
        <Notice kind="problem">
          <div className="stack" ref={summary} tabIndex={-1} role="group" aria-labelledby={`${base}faults`}>
            <p id={`${base}faults`}>{words.mend(shown.length)}</p>
            <ul className="bullets">
              {shown.map(({ field, sentence }) => (
                <li key={`${field} ${sentence}`}>
                  <FieldLink id={fields.idOf(field)}>{sentence}</FieldLink>
                </li>
              ))}
            </ul>
          </div>
        </Notice>
      )}
      <Showing.Provider value={fields}>{children}</Showing.Provider>
    </form>
  );
}

/** Moves the keyboard and the view; the page's address stays. */
const FieldLink = ({ id, children }: { readonly id: string; readonly children: ReactNode }) => (
  <a
    href={`#${id}`}
    onClick={(event) => {
      event.preventDefault();
      document.getElementById(id)?.focus();
    }}
  >
    {children}
  </a>
);
