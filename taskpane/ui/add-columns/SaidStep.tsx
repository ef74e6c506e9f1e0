import { useMemo } from "react";
import { roleNamed } from "../../../src/columns/role";
import type { Choices, KindWord } from "../../actions/add-columns/interface";
import type { SurveyedList } from "../../actions/list/interface";
import { kindWords } from "../../actions/add-columns/kind-words";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { Step } from "../parts/Step";
import { neededRoles, RoleFields, type NeededRole } from "./RoleFields";
import { WordFields } from "./WordFields";

const words = addColumnsTexts.said;

interface Props {
  readonly number: number;
  readonly list: SurveyedList;
  /** As the list was guessed, before anybody chose. */
  readonly proposal: Choices;
  readonly choices: Choices;
  readonly choose: (change: Partial<Choices>) => void;
}

/** Which column is what, which word is which kind: what only a person can say is asked, what was guessed is one line. */
export function SaidStep({ number, list, proposal, choices, choose }: Props) {
  const column = choices.columns.kind ?? null;
  const found = useMemo(() => (column === null ? [] : kindWords(list, column)), [column, list]);
  const needed = neededRoles(list, choices);
  const needsWords = needed.some(({ role }) => role === "kind");
  const isForEveryone = choices.kinds.from === "everyone";

  /* What was guessed stays folded when it is corrected: nothing moves under somebody's hands. */
  const known = proposal.kinds.from === "words" ? proposal.kinds.words : {};
  const isKnown = ({ key, refused }: KindWord) => refused === null && known[key] !== undefined;
  const isGuessed = ({ role, optional }: NeededRole) => optional || (proposal.columns[role] ?? null) !== null;
  const roles = [needed.filter((need) => !isGuessed(need)), needed.filter(isGuessed)] as const;
  const texts = needsWords ? found : [];
  const kinds = [texts.filter((word) => !isKnown(word)), texts.filter(isKnown)] as const;

  const isOpen = ({ role, optional }: NeededRole) =>
    !optional && !isForEveryone && (choices.columns[role] ?? null) === null;
  const chosen = choices.kinds.from === "words" ? choices.kinds.words : {};
  const open =
    needed.filter(isOpen).length +
    (isForEveryone ? 0 : texts.filter(({ key, refused }) => refused === null && chosen[key] === undefined).length);
  const taken = roles[1].flatMap(({ role }) => {
    const at = list.columns[choices.columns[role] ?? -1];
    return at ? [words.taken(roleNamed(role).label, at.letters)] : [];
  });
  const fields = { list, choices, choose };
  return (
    <Step number={number} title={open > 0 ? words.asks(open) : words.title}>
      <RoleFields needs={roles[0]} {...fields} />
      {needsWords && <WordFields words={kinds[0]} {...fields} />}
      {needsWords && column !== null && found.length === 0 && <p>{words.noWords}</p>}
      {roles[1].length > 0 && (
        <>
          {taken.length > 0 && <p className="note">{taken.join(" · ")}</p>}
          <details className="fold">
            <summary>{words.guessed(taken.length, kinds[1].length)}</summary>
            <RoleFields needs={roles[1]} {...fields} />
            {!isForEveryone && kinds[1].length > 0 && (
              <>
                <p className="note">{words.lead}</p>
                <WordFields words={kinds[1]} {...fields} />
              </>
            )}
          </details>
        </>
      )}
    </Step>
  );
}
