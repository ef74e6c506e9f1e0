import { useId, useMemo, type ReactNode } from "react";
import { asksOf } from "../../../src/columns/asks";
import { recipeNamed } from "../../../src/columns/recipes/index";
import { recipeGroups, type RecipeKey } from "../../../src/columns/recipes/recipe";
import { roleNamed } from "../../../src/columns/role";
import { atHand } from "../../actions/add-columns/at-hand";
import { isDateFormat } from "../../actions/list/samples";
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

/** Which columns to add or to write anew: those at hand in sight, the others one press away. What cannot be had says why. */
export function TickStep({ number, list, choices, choose }: Props) {
  const near = useMemo(() => atHand(list), [list]);
  const isTicked = ({ key }: RecipeSurvey) => choices.recipes.includes(key);
  const cautions = list.recipes.filter((recipe) => isTicked(recipe) && recipe.caution !== null);
  const here = list.recipes.filter(({ key }) => near.has(key));
  const others = list.recipes.filter(({ key }) => !near.has(key));
  const tick = (recipe: RecipeSurvey) => (
    <Tick
      key={recipe.key}
      recipe={recipe}
      isNear={near.has(recipe.key)}
      isTicked={isTicked(recipe)}
      onTick={() =>
        choose({
          recipes: isTicked(recipe)
            ? choices.recipes.filter((key) => key !== recipe.key)
            : [...choices.recipes, recipe.key],
        })
      }
    />
  );
  return (
    <Step number={number} title={words.title}>
      {near.size > 0 && <ul className="plain-list close">{here.map(tick)}</ul>}
      {list.recipes.length > 0 && (
        <details className="fold" open={near.size === 0 || undefined}>
          <summary>{near.size === 0 ? words.all(others.length) : words.others(others.length)}</summary>
          {here.length > 0 && (
            <dl className="close-stack">
              {here.map(({ key, label, help }) => (
                <div key={key}>
                  <dt>
                    <strong>{label}</strong>
                  </dt>
                  <dd className="note">{help}</dd>
                </div>
              ))}
            </dl>
          )}
          {recipeGroups.map((group) => (
            <Group key={group} title={words.groups[group]} recipes={others.filter((one) => one.group === group)}>
              {tick}
            </Group>
          ))}
        </details>
      )}
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

interface GroupProps {
  readonly title: string;
  readonly recipes: readonly RecipeSurvey[];
  readonly children: (recipe: RecipeSurvey) => ReactNode;
}

function Group({ title, recipes, children }: GroupProps) {
  const id = useId();
  if (recipes.length === 0) return null;
  return (
    <div className="close-stack">
      <h4 id={id}>{title}</h4>
      <ul className="plain-list" aria-labelledby={id}>
        {recipes.map(children)}
      </ul>
    </div>
  );
}

interface TickProps {
  readonly recipe: RecipeSurvey;
  /** All that it needs has been found: what it needs need not be read. */
  readonly isNear: boolean;
  readonly isTicked: boolean;
  readonly onTick: () => void;
}

function Tick({ recipe, isNear, isTicked, onTick }: TickProps) {
  const id = useId();
  const { present, refused } = recipe;
  const needs = recipe.needs.map(({ role, optional }) => {
    const { label } = roleNamed(role);
    return optional ? words.optional(label) : label;
  });
  if (recipe.needsKinds) needs.push(roleNamed("kind").label);
  const asked = [recipe.help, words.needs(needs.join(", "))].join(" ");
  const about = [
    ...(present ? [words.present(present.letters, present.header)] : []),
    isNear ? givesOf(recipe.key) : asked,
  ];
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
        {refused ?? about.join(" ")}
      </span>
    </li>
  );
}

/** So many words of a column are enough to know it by. */
const NAMED = 3;

/** What a column shows, in a few words: "past limit, overdue, due soon", "a date". */
function givesOf(key: RecipeKey): string {
  const { words: shows, format } = recipeNamed(key);
  const told = shows.filter((word) => asksOf(word) === "act" || asksOf(word) === "soon");
  if (told.length > 0) return told.slice(0, NAMED).join(", ");
  return isDateFormat(format) ? words.gives.date : words.gives.number;
}
