/**
 * Which of our columns a formula belongs to, told by its shape: references, numbers and setting names left open, texts
 * and functions compared. Somebody's own formula that only uses one of our functions has another shape.
 */
import { inA1, type ColumnSlot } from "../../../src/columns/formula";
import { recipes } from "../../../src/columns/recipes/index";
import type { KindSource, Recipe, RecipeKey, Slots, Using } from "../../../src/columns/recipes/recipe";
import { roles } from "../../../src/columns/role";
import { settingNamed, settings, type SettingName } from "../../../src/settings/index";
import { kinds } from "../../../src/settings/kinds";
import { functionInCapitals } from "../../../src/formula/ours";
import { isFunctionName, tokens, type Token } from "../../../src/formula/tokens";

const SETTINGS: ReadonlySet<string> = new Set(settings.map(({ name }) => name.toLowerCase()));
const ADDRESS = /^\$?[A-Za-z]{1,3}\$?\d+$/;
const NUMBER = /^[\d.]+(?:E\d+)?$/i;

function pieceOf(all: readonly Token[], at: number): string {
  const { kind, text } = all[at]!;
  if (kind === "text") return text;
  if (kind === "bracket") return "@";
  if (kind !== "word") return text.trim() === "" || text === "@" ? "" : text;
  if (isFunctionName(all, at)) return functionInCapitals(text);
  if (NUMBER.test(text) || SETTINGS.has(text.toLowerCase())) return "#";
  // The name of a table stands before its bracket, which is the reference.
  if (all[at + 1]?.kind === "bracket") return "";
  return ADDRESS.test(text) ? "@" : text.toUpperCase();
}

/** `=IF(LEN(TRIM([@Size]))=0,"",...)` and `=IF(LEN(TRIM(C7))=0,"",...)` have one shape. */
function shapeOf(formula: string): string {
  const all = tokens(formula.replace(/^=/, ""));
  const shape = all
    .map((_, at) => pieceOf(all, at))
    .join("")
    .replace(/\{[#;,-]*\}/g, "#");
  return withSettings(shape);
}

/** Settings by their names stand behind a question whether they are filled in. */
const withSettings = (shape: string): string => /^IF\(COUNT\([#,]+\)<#,"no setting",(.*)\)$/.exec(shape)?.[1] ?? shape;

/** Change due and At the latest: words, months and their number are each clinic's own. */
const BY_KIND =
  /^IF\(OR\(LEN\(TRIM\(@\)\)=#,EXACT\(TRIM\(@\),"0"\)\),"no date",(?:TUBE\.CHANGEDUE\(@,#\)|IF\(AND\(N\(@\)>=#,N\(@\)<#[^"]*\),EDATE\(@,#\),#VALUE!\)|"[^"]*"|IF\((?:OR\()?IF\(ISNUMBER\(FIND\(LEFT\(TRIM\(@\).*|IF\((?:OR\()?EXACT\(LOWER\(TRIM\(@\)\),.*"kind not known"\)+)\)$/;

/** Check due on a list that says what holds each tube in; words again each clinic's own. */
const CHECK_BY_KIND =
  /^IF\((?:OR\()?EXACT\(LOWER\(TRIM\(@\)\),.*(?:\bTUBE\.CHECKDUE\(|MAX\(INT\(N\(@\)\)\+#,IF\(INT\(N\().*"kind not known"\)+$/;

/** Balloon and Balloon loss on a list that says what holds each tube in; the rest is their formula without it. */
const UNLESS_NO_BALLOON = /^IF\(IFERROR\(OR\(EXACT\(LOWER\(TRIM\(@\)\),.*\),FALSE\),"no balloon",(.*)\)$/;
const OF_WATER: readonly RecipeKey[] = ["balloon", "balloonLoss"];

/** A kind said of everyone changes some formulas wholly. */
const kindSources: readonly KindSource[] = [
  { from: "words", words: new Map() },
  ...kinds.filter(({ key }) => key !== "not known").map(({ key }) => ({ from: "everyone" as const, kind: key })),
];

const usingsOf = (source: KindSource): readonly Using[] => {
  const one: Using = {
    kinds: source,
    value: defaultOf,
    written: (name) => String(defaultOf(name)),
    asOf: 0,
    lengths: [1],
  };
  const other = { ...one, written: (name: SettingName) => String(defaultOf(name) + 1) };
  const plain = { ...one, dialect: "plain" as const };
  return [one, other, plain, { ...plain, written: (name) => name }];
};

const defaultOf = (name: SettingName): number => settingNamed(name).default;

/**
 * Every role a column has, and for "Change" every choice of the columns it may stand on. A role's slot stands in the
 * column of its place among all roles.
 */
export function slotsOf({ needs, needsKinds }: Recipe, withKind: boolean): readonly Slots[] {
  const all: Slots = Object.fromEntries(roles.map(({ key, label }, index) => [key, { header: label, index }]));
  const kind = withKind || needsKinds ? { kind: all.kind! } : {};
  const required = {
    ...Object.fromEntries(needs.filter((one) => !one.optional).map(({ role }) => [role, all[role]!])),
    ...kind,
  };
  const optional = needs.filter((one) => one.optional && one.role !== "kind").map(({ role }) => role);
  const some = optional.reduce<readonly Slots[]>(
    (found, role) => [...found, ...found.map((slots) => ({ ...slots, [role]: all[role]! }))],
    [required],
  );
  const added = (slots: Slots): Slots =>
    Object.fromEntries(Object.entries(slots).map(([role, slot]) => [role, { ...(slot as ColumnSlot), isAdded: true }]));
  return [...some, ...some.map(added)];
}

let known: ReadonlyMap<string, RecipeKey> | null = null;

function knownShapes(): ReadonlyMap<string, RecipeKey> {
  known ??= new Map(
    recipes
      .filter(({ needsKinds }) => !needsKinds)
      .flatMap((recipe) =>
        slotsOf(recipe, false).flatMap((slots) =>
          kindSources
            .flatMap(usingsOf)
            .flatMap((using) =>
              [recipe.template, ...(recipe.earlier ? [recipe.earlier] : [])].map(
                (template) => [shapeOf(inA1(template(slots, using), 0, 0)), recipe.key] as const,
              ),
            ),
        ),
      ),
  );
  return known;
}

/** As `recipesOf`, for a column of formulas that differ in their row numbers only: each sort is looked at once. */
export function recipesOfMany(): (formula: string) => readonly RecipeKey[] {
  const found = new Map<string, readonly RecipeKey[]>();
  return (formula) => {
    const sort = formula.replace(/\d+/g, "0");
    const keys = found.get(sort) ?? recipesOf(formula);
    found.set(sort, keys);
    return keys;
  };
}

/** The columns that a formula may belong to: two for a date by kind, one for others, none for somebody's own. */
export function recipesOf(formula: string): readonly RecipeKey[] {
  const shape = shapeOf(formula);
  if (BY_KIND.test(shape)) return recipes.filter(({ needsKinds }) => needsKinds).map(({ key }) => key);
  if (CHECK_BY_KIND.test(shape)) return ["checkDue"];
  const water = UNLESS_NO_BALLOON.exec(shape)?.[1];
  if (water !== undefined) {
    const own = knownShapes().get(withSettings(water));
    return own !== undefined && OF_WATER.includes(own) ? [own] : [];
  }
  const key = knownShapes().get(shape);
  return key === undefined ? [] : [key];
}
