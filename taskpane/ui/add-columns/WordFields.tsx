import { useId } from "react";
import { readAs } from "../../../src/columns/kind-guess";
import { kinds, type KindKey } from "../../../src/settings/kinds";
import type { Choices, KindWord } from "../../actions/add-columns/interface";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { without } from "../parts/without";

const words = addColumnsTexts.kinds;

interface Props {
  readonly words: readonly KindWord[];
  readonly choices: Choices;
  readonly choose: (change: Partial<Choices>) => void;
}

/** Each word of their list with its count and the kind it is taken for; never one kind for all unless somebody says so. */
export function WordFields({ words: found, choices, choose }: Props) {
  const { kinds: chosen } = choices;
  if (chosen.from === "everyone")
    return <Everyone kind={chosen.kind} onKind={(kind) => choose({ kinds: { from: "everyone", kind } })} />;
  if (found.length === 0) return null;
  return (
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
  );
}

interface WordFieldProps {
  readonly word: KindWord;
  readonly kind: KindKey | null;
  readonly onKind: (kind: KindKey | null) => void;
}

export function WordField({ word, kind, onKind }: WordFieldProps) {
  const id = useId();
  const reading = kind !== null && kind === word.guess ? readAs(word.word) : null;
  return (
    <li className="close-stack">
      <div className="row-field">
        <label htmlFor={word.refused === null ? id : undefined}>
          <strong>{word.word === "" ? words.blank : word.word}</strong>{" "}
          <span className="note">{words.rows(word.rows.length)}</span>{" "}
          {kind !== null && kind === word.guess && <span className="mark">{words.guess}</span>}
          {reading !== null && <span className="note"> {words.readAs(reading)}</span>}
        </label>
        {word.refused !== null && <span className="note">{word.refused}</span>}
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
