import { useId, useMemo } from "react";
import { kinds, type KindKey } from "../../../src/settings/kinds";
import { kindWords } from "../../actions/add-columns/kind-words";
import type { Choices, KindWord } from "../../actions/add-columns/interface";
import type { SurveyedList } from "../../actions/list/interface";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { Step } from "../parts/Step";
import { without } from "../parts/without";

const words = addColumnsTexts.kinds;

interface Props {
  readonly number: number;
  readonly list: SurveyedList;
  readonly choices: Choices;
  readonly choose: (change: Partial<Choices>) => void;
}

/** Each word of their list with its count and the kind it is taken for; never one kind for all unless somebody says so. */
export function KindsStep({ number, list, choices, choose }: Props) {
  const column = choices.columns.kind ?? null;
  const found = useMemo(() => (column === null ? [] : kindWords(list, column)), [column, list]);
  const { kinds: chosen } = choices;
  if (chosen.from === "everyone") {
    return (
      <Step number={number} title={words.title}>
        <Everyone kind={chosen.kind} onKind={(kind) => choose({ kinds: { from: "everyone", kind } })} />
      </Step>
    );
  }
  const open = found.filter(({ key, refused }) => chosen.words[key] === undefined && refused === null).length;
  return (
    <Step number={number} title={words.title}>
      <p className="note">{words.lead}</p>
      {found.length === 0 && <p>{words.none}</p>}
      {found.length > 0 && (
        <ul className="rows">
          {found.map((word) => (
            <WordField
              key={word.key}
              word={word}
              kind={chosen.words[word.key] ?? null}
              onKind={(kind) => {
                const others = without(chosen.words, word.key) as Readonly<Record<string, KindKey>>;
                choose({ kinds: { from: "words", words: kind === null ? others : { ...others, [word.key]: kind } } });
              }}
            />
          ))}
        </ul>
      )}
      {open > 0 && <p className="note">{words.opened(open)}</p>}
    </Step>
  );
}

interface WordFieldProps {
  readonly word: KindWord;
  readonly kind: KindKey | null;
  readonly onKind: (kind: KindKey | null) => void;
}

export function WordField({ word, kind, onKind }: WordFieldProps) {
  const id = useId();
  return (
    <li className="close-stack">
      <div className="row-field">
        <label htmlFor={id}>
          <strong>{word.word === "" ? words.blank : word.word}</strong>{" "}
          <span className="note">{words.rows(word.rows.length)}</span>{" "}
          {word.refused === null && kind === null && <span className="mark asks">{words.open}</span>}
          {kind !== null && kind === word.guess && <span className="mark">{words.guess}</span>}
        </label>
        {word.refused === null && (
          <select
            id={id}
            value={kind ?? ""}
            onChange={(event) => onKind(event.target.value === "" ? null : (event.target.value as KindKey))}
          >
            <KindOptions />
          </select>
        )}
      </div>
      {word.refused !== null && <span className="note">{word.refused}</span>}
    </li>
  );
}

function KindOptions() {
  return (
    <>
      <option value="">{words.choose}</option>
      {kinds.map(({ key, label }) => (
        <option key={key} value={key}>
          {label}
        </option>
      ))}
    </>
  );
}

function Everyone({ kind, onKind }: { readonly kind: KindKey; readonly onKind: (kind: KindKey) => void }) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{words.everyone}</label>
      <select
        id={id}
        aria-describedby={`${id}lead`}
        value={kind === "not known" ? "" : kind}
        onChange={(event) => onKind(event.target.value === "" ? "not known" : (event.target.value as KindKey))}
      >
        <KindOptions />
      </select>
      <span id={`${id}lead`} className="note">
        {words.everyoneLead}
      </span>
    </div>
  );
}
