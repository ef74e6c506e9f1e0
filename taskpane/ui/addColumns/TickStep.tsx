import { useId } from "react";
import type { Choices, SurveyedList } from "../../actions/add-columns/interface";
import { roleNamed } from "../../../src/columns/role";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { Step } from "../parts/Step";

const words = addColumnsTexts.tick;

interface Props {
  readonly number: number;
  readonly list: SurveyedList;
  readonly choices: Choices;
  readonly choose: (change: Partial<Choices>) => void;
}

/** Which columns to add. What cannot be had here says why. */
export function TickStep({ number, list, choices, choose }: Props) {
  const id = useId();
  return (
    <Step number={number} title={words.title}>
      <ul className="plain-list">
        {list.recipes.map((recipe) => {
          const isTicked = choices.recipes.includes(recipe.key);
          const needs = recipe.needs.map(({ role, optional }) => {
            const { label } = roleNamed(role);
            return optional ? words.optional(label) : label;
          });
          if (recipe.needsKinds) needs.push(roleNamed("kind").label);
          return (
            <li className="tick" key={recipe.key}>
              <input
                type="checkbox"
                id={`${id}${recipe.key}`}
                aria-describedby={`${id}${recipe.key}help`}
                checked={isTicked}
                disabled={recipe.refused !== null}
                onChange={() =>
                  choose({
                    recipes: isTicked
                      ? choices.recipes.filter((key) => key !== recipe.key)
                      : [...choices.recipes, recipe.key],
                  })
                }
              />
              <label htmlFor={`${id}${recipe.key}`}>{recipe.label}</label>
              <span className="note" id={`${id}${recipe.key}help`}>
                {recipe.refused ?? `${recipe.help} ${words.needs(needs.join(", "))}`}
              </span>
            </li>
          );
        })}
      </ul>
    </Step>
  );
}
