import { useId } from "react";
import { columnGroups, type SetUpChoices } from "../../actions/set-up/interface";
import { setUp as words } from "../../texts/set-up";
import { Choice } from "../parts/Choice";
import { Step } from "../parts/Step";

interface Props {
  readonly choices: SetUpChoices;
  readonly choose: (change: Partial<SetUpChoices>) => void;
}

export function ChooseSteps({ choices, choose }: Props) {
  return (
    <>
      <Step number={1} title={words.who.title}>
        <Choice
          legend={words.who.legend}
          options={[
            { key: "invented", label: words.who.invented, note: words.who.inventedNote },
            { key: "none", label: words.who.none, note: words.who.noneNote },
          ]}
          chosen={choices.people}
          onChoose={(people: SetUpChoices["people"]) => choose({ people })}
        />
      </Step>
      <Step number={2} title={words.columns.title}>
        <p>{words.columns.always}</p>
        <GroupTicks choices={choices} choose={choose} />
      </Step>
    </>
  );
}

/** In the order of the sheet, whatever the order in which they were ticked. */
function GroupTicks({ choices: { groups }, choose }: Props) {
  const id = useId();
  return (
    <ul className="plain-list">
      {columnGroups.map((key) => {
        const { label, note } = words.columns.groups[key];
        return (
          <li className="tick" key={key}>
            <input
              type="checkbox"
              id={`${id}${key}`}
              aria-describedby={`${id}${key}note`}
              checked={groups.includes(key)}
              onChange={() => choose({ groups: columnGroups.filter((one) => (one === key) !== groups.includes(one)) })}
            />
            <label htmlFor={`${id}${key}`}>{label}</label>
            <span className="note" id={`${id}${key}note`}>
              {note}
            </span>
          </li>
        );
      })}
    </ul>
  );
}
