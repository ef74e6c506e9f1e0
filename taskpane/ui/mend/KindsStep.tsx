import type { KindWord } from "../../actions/add-columns/interface";
import { mend as mendTexts } from "../../texts/mend";
import { WordField } from "../add-columns/WordFields";
import { without } from "../parts/without";
import { Step } from "../parts/Step";
import type { MendChoices } from "../../actions/mend/interface";
import type { MendState } from "./useMend";

const words = mendTexts.kinds;

interface Props {
  readonly number: number;
  readonly state: MendState;
  readonly found: readonly KindWord[];
}

/** Each word once, with the kind that it is. */
export function KindsStep({ number, state, found }: Props) {
  const { kinds } = state.choices!;
  return (
    <Step number={number} title={words.title}>
      <p className="note">{words.lead}</p>
      <ul className="rows">
        {found
          .filter(({ refused }) => refused === null)
          .map((word) => (
            <WordField
              key={word.key}
              word={word}
              kind={kinds[word.key] ?? null}
              onKind={(kind) => {
                const others = without(kinds, word.key) as MendChoices["kinds"];
                state.choose({ kinds: kind === null ? others : { ...others, [word.key]: kind } });
              }}
            />
          ))}
      </ul>
    </Step>
  );
}
