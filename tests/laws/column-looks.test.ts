/** What a word of our columns asks for is said once, agrees with the ready-made caseload, and no bad word looks quiet. */
import { describe, expect, it } from "vitest";
import { columnsOf } from "../../src/caseload/tables";
import { asksOf, wordsThatAsk } from "../../src/columns/asks";
import { looksOf } from "../../src/columns/looks";
import { recipes } from "../../src/columns/recipes/index";

describe("words of added columns", () => {
  const all = Object.values(wordsThatAsk).flat();
  it("ask for one thing each", () => expect(new Set(all).size).toBe(all.length));

  it.each(recipes.flatMap(({ key, words }) => words.map((word) => [key, word] as const)))(
    "%s: %s is one of them",
    (_, word) => expect(all).toContain(word),
  );

  /* The caseload's columns of states show the same words under rules of their own (columns by the same header or function). */
  const looks = columnsOf("tubes", ["fit", "plan", "spare"]).flatMap(({ rules, header }) =>
    header === "To do" || rules === undefined || typeof rules === "function" ? [] : rules,
  );
  it("agree with the caseload's colours", () => {
    const compared = looks.flatMap(({ look, words = [] }) =>
      words.flatMap((word) =>
        (all as readonly string[]).includes(word) && look !== "grey" ? [[word, look] as const] : [],
      ),
    );
    expect(compared.length).toBeGreaterThan(15);
    expect(compared.map(([word]) => [word, asksOf(word)])).toEqual(compared);
  });

  it("that nobody knows are missing, never quiet", () => expect(asksOf("#VALUE!")).toBe("missing"));

  it.each(recipes.map((recipe) => [recipe.key, recipe] as const))("%s colours all that is not quiet", (_, recipe) => {
    const coloured = looksOf(recipe).flatMap((look) => ("reads" in look ? [look.reads] : []));
    for (const word of recipe.words) expect(coloured.includes(word), word).toBe(asksOf(word) !== "quiet");
  });
});
