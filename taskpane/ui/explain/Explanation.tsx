import type { ReactNode, RefObject } from "react";
import type { CallExplained, ColumnExplained, Explanation as Said, Given } from "../../actions/explain/interface";
import { explain as words } from "../../texts/explain";
import { Notice } from "../parts/Notice";
import { Sentences } from "../parts/Sentences";

interface Props {
  readonly said: Said;
  /** The keyboard goes there when the answer has come. */
  readonly heading: RefObject<HTMLHeadingElement>;
  readonly moved: ReactNode;
}

/** What was found out about one cell: the answer first, then how it comes about. */
export function Explanation({ said, heading, moved }: Props) {
  return (
    <section className="stack">
      {moved}
      <Notice kind={said.isError ? "problem" : "plain"}>
        <h3 ref={heading} tabIndex={-1}>
          {said.where}
        </h3>
        <p>{said.headline}</p>
      </Notice>
      {said.notes.length > 0 && <Sentences of={said.notes} />}
      {said.column && <Column column={said.column} />}
      {said.calls.map((call, i) => (
        <Call key={i} call={call} />
      ))}
      {said.reads.length > 0 && (
        <div className="close-stack">
          <h4>{words.reads}</h4>
          <GivenList given={said.reads} />
        </div>
      )}
      {said.formula !== null && (
        <details className="fold">
          <summary>{words.formula}</summary>
          <code className="formula">{said.formula}</code>
        </details>
      )}
    </section>
  );
}

const Column = ({ column }: { readonly column: ColumnExplained }) => (
  <div className="close-stack">
    <h4>{words.column(column.header)}</h4>
    {column.help !== "" && <p>{column.help}</p>}
    {column.caution !== null && <p>{column.caution}</p>}
    {column.words.length > 0 && (
      <p className="note">
        {words.words[column.kind]}: {column.words.join(", ")}.
      </p>
    )}
  </div>
);

const Call = ({ call }: { readonly call: CallExplained }) => (
  <div className="step">
    <div className="close-stack">
      <h4>{call.name}</h4>
      <p>{call.summary}</p>
      <code className="formula">{call.formula}</code>
    </div>
    <GivenList given={call.given} />
    <p>
      {words.gives}: <strong>{call.result}</strong>
    </p>
    {call.cautions.length > 0 && (
      <div className="close-stack">
        <h5>{words.cautions}</h5>
        <Sentences of={call.cautions} />
      </div>
    )}
  </div>
);

const GivenList = ({ given }: { readonly given: readonly Given[] }) => (
  <ul className="rows">
    {given.map(({ name, help, value, from, isAtFault }) => (
      <li key={name} className="close-stack">
        <span>
          <span className="argument-name">{name}</span>: {value}{" "}
          {isAtFault && <span className="mark asks">{words.atFault}</span>}
        </span>
        <span className="note">{[from, help].filter((part) => part !== "").join("; ")}</span>
      </li>
    ))}
  </ul>
);
