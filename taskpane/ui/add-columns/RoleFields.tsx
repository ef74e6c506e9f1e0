import { useId } from "react";
import { takesRole } from "../../../src/columns/recipes/index";
import { roleNamed, roles, type Role } from "../../../src/columns/role";
import { guessedKinds } from "../../actions/add-columns/kind-words";
import type { Choices } from "../../actions/add-columns/interface";
import type { SurveyedList } from "../../actions/list/interface";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { ownList } from "../../texts/own-list";

const words = addColumnsTexts.columns;
const EVERYONE = "everyone";

interface Props {
  readonly list: SurveyedList;
  readonly choices: Choices;
  readonly choose: (change: Partial<Choices>) => void;
}

export interface NeededRole {
  readonly role: Role;
  readonly optional: boolean;
}

/** What the ticked columns need of the list, each once, in the order of the roles; not what is being added itself. */
export function neededRoles(list: SurveyedList, choices: Choices): readonly NeededRole[] {
  const ticked = list.recipes.filter(({ key }) => choices.recipes.includes(key));
  const needs = ticked.flatMap((recipe) => [
    ...recipe.needs,
    ...(recipe.needsKinds ? [{ role: "kind" as const, optional: false }] : []),
  ]);
  const added = Object.entries(takesRole).flatMap(([key, role]) =>
    choices.recipes.some((each) => each === key) ? [role] : [],
  );
  return roles
    .filter(({ key }) => needs.some(({ role }) => role === key) && !added.some((role) => role === key))
    .map(({ key }) => ({ role: key, optional: needs.every(({ role, optional }) => role !== key || optional) }));
}

/** Fields for what the ticked columns need of the list, with sample values. */
export function RoleFields({ needs, ...rest }: Props & { readonly needs: readonly NeededRole[] }) {
  return needs.map((need) => <RoleField key={need.role} need={need} {...rest} />);
}

function RoleField({ need, list, choices, choose }: Props & { readonly need: NeededRole }) {
  const id = useId();
  const { role, optional } = need;
  const { label, help } = roleNamed(role);
  const isEveryone = role === "kind" && choices.kinds.from === "everyone";
  const chosen = choices.columns[role] ?? null;
  const column = chosen === null ? undefined : list.columns[chosen];
  const guess = list.guesses[role];

  function onChoose(value: string) {
    if (value === EVERYONE)
      return choose({ kinds: { from: "everyone", kind: "not known" }, columns: { ...choices.columns, kind: null } });
    const columns = { ...choices.columns, [role]: value === "" ? null : Number(value) };
    if (role !== "kind") return choose({ columns });
    choose({ columns, kinds: guessedKinds(list, columns.kind ?? null) });
  }

  return (
    <div className="field">
      <label htmlFor={id}>
        {label} {optional && <span className="mark">{words.optional}</span>}{" "}
        {guess && guess.column === chosen && <span className="mark">{words.guess}</span>}
      </label>
      <select
        id={id}
        aria-describedby={`${id}about`}
        value={isEveryone ? EVERYONE : (chosen ?? "")}
        onChange={(event) => onChoose(event.target.value)}
      >
        <option value="">{optional ? ownList.noColumn : ownList.chooseColumn}</option>
        {list.columns.map(({ index, letters, header, sharesHeader }) => (
          <option key={index} value={index} disabled={sharesHeader}>
            {ownList.column(letters, header)}
            {sharesHeader ? ` (${words.shared})` : ""}
          </option>
        ))}
        {role === "kind" && <option value={EVERYONE}>{words.everyone}</option>}
      </select>
      <span className="close-stack" id={`${id}about`}>
        {column ? (
          <span className="samples">{ownList.samples(column.samples.slice(0, 3))}</span>
        ) : (
          <span className="note">{help}</span>
        )}
        {column && guess?.column === chosen && <span className="note">{words.because(guess.because)}</span>}
      </span>
    </div>
  );
}
