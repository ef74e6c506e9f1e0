import { useId } from "react";
import { recipeGroups } from "../../../src/columns/recipes/recipe";
import { roleNamed } from "../../../src/columns/role";
import type { Choices } from "../../actions/add-columns/interface";
import type { RecipeSurvey, SurveyedList } from "../../actions/list/interface";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { Notice } from "../parts/Notice";
import { Step } from "../parts/Step";

const words = addColumnsTexts.tick;

interface Props {
  readonly number: number;
  readonly list: SurveyedList;
  readonly choices: Choices;
  readonly choose: (change: Partial<Choices>) => void;
}

/** Which columns to add or to write anew, in groups. What cannot be had here says why. */
export function TickStep({ number, list, choices, choose }: Props) {
  const id = useId();
  const isTicked = ({ key }: RecipeSurvey) => choices.recipes.includes(key);
  const cautions = list.recipes.filter((recipe) => isTicked(recipe) && recipe.caution !== null);
  return (
    <Step number={number} title={words.title}>
      {recipeGroups.map((group) => (
        <div key={group} className="close-stack">
          <h4 id={`${id}${group}`}>{words.groups[group]}</h4>
          <ul className="plain-list" aria-labelledby={`${id}${group}`}>
            {list.recipes
              .filter((recipe) => recipe.group === group)
              .map((recipe) => (
                <Tick
                  key={recipe.key}
                  recipe={recipe}
                  isTicked={isTicked(recipe)}
                  onTick={() =>
                    choose({
                      recipes: isTicked(recipe)
                        ? choices.recipes.filter((key) => key !== recipe.key)
                        : [...choices.recipes, recipe.key],
                    })
                  }
                />
              ))}
          </ul>
        </div>
      ))}
      {cautions.length > 0 && (
        <Notice kind="caution">
          {cautions.map(({ key, label, caution }) => (
            <p key={key}>
              <strong>{label}.</strong> {caution}
            </p>
          ))}
        </Notice>
      )}
    </Step>
  );
}

interface TickProps {
  readonly recipe: RecipeSurvey;
  readonly isTicked: boolean;
  readonly onTick: () => void;
}

function Tick({ recipe, isTicked, onTick }: TickProps) {
  const id = useId();
  const { present, refused } = recipe;
  const needs = recipe.needs.map(({ role, optional }) => {
    const { label } = roleNamed(role);
    return optional ? words.optional(label) : label;
  });
  if (recipe.needsKinds) needs.push(roleNamed("kind").label);
  return (
    <li className="tick">
      <input
        type="checkbox"
        id={id}
        aria-describedby={`${id}help`}
        checked={isTicked}
        disabled={refused !== null}
        onChange={onTick}
      />
      <label htmlFor={id}>{recipe.label}</label>
      <span className="note" id={`${id}help`}>
        {refused ??
          `${present ? `${words.present(present.letters, present.header)} ` : ""}${recipe.help} ${words.needs(needs.join(", "))}`}
      </span>
    </li>
  );
}
