/**
 * What somebody chose when the columns of ours were made, read back from the formulas that stand there: which column is
 * what, the kind of each word, numbers and lengths. Written anew without a change of mind they then give what they gave.
 */
import { inA1 } from "../../../src/columns/formula";
import { guessKind } from "../../../src/columns/kind-guess";
import { recipeNamed } from "../../../src/columns/recipes/index";
import type { KindSource, Recipe, RecipeKey, Slots, Using } from "../../../src/columns/recipes/recipe";
import { balloonRoles } from "../../../src/columns/recipes/not-a-balloon";
import { roles, type Role } from "../../../src/columns/role";
import { wordKey } from "../../../src/columns/spelling";
import { KIND_NOT_KNOWN } from "../../../src/columns/state-words";
import { functionInCapitals, mentionsOurs } from "../../../src/formula/ours";
import { parse } from "../../../src/formula/parse";
import type { Node } from "../../../src/formula/tree";
import { columnNumber } from "../../../src/formula/words";
import { settingNamed, settings, type SettingName } from "../../../src/settings/index";
import { kindNamed, kinds, type KindKey } from "../../../src/settings/kinds";
import type { Choices } from "./interface";
import type { SurveyedList } from "../list/interface";
import { slotsOf } from "../list/our-formula";
import type { SheetNumbers } from "./sheet-numbers";

export type ReadBack = Partial<Pick<Choices, "columns" | "kinds" | "numbers" | "lengths">> & {
  /** Columns that were asked for signs of a balloon; the formula does not tell which sign each is. */
  readonly signs: readonly number[];
};

/** What one formula tells. */
interface Told {
  readonly columns: Map<Role, number>;
  /** Columns that tell of a balloon in one way or another. */
  readonly signs: Set<number>;
  readonly numbers: Map<SettingName, number>;
  lengths: readonly number[] | null;
}
const nothingTold = (): Told => ({ columns: new Map(), signs: new Set(), numbers: new Map(), lengths: null });

/** Columns that a formula only asks for any sign of a balloon look alike in it, whichever role they have. */
function signsApart({ needs }: Recipe, told: Told): Told {
  for (const role of balloonRoles) {
    const column = told.columns.get(role);
    if (column === undefined || needs.some((need) => need.role === role && !need.optional)) continue;
    told.columns.delete(role);
    told.signs.add(column);
  }
  return told;
}

const SETTINGS = new Map(settings.map(({ name }) => [name.toLowerCase(), name]));
/** Slots of the templates: the column letters tell the role. */
const roleAt = new Map(roles.map(({ key }, index) => [inA1([{ header: key, index }], 0, 0), key]));

const using = (source: KindSource, written: Using["written"]): Using => ({
  kinds: source,
  value: (name) => settingNamed(name).default,
  written,
  asOf: 0,
  lengths: [1],
});
const byName = (source: KindSource): Using => using(source, (name) => name);
const byDefault = (source: KindSource): Using => using(source, (name) => String(settingNamed(name).default));

/** A plain formula asks more of a number of the settings sheet than of one in it: figures that stand for no other are such. */
const FIGURE = 8e12;
const byFigure = (source: KindSource): Using =>
  using(source, (name) => String(FIGURE + settings.findIndex((setting) => setting.name === name)));
const settingAt = (figure: number): SettingName | undefined => settings[figure - FIGURE]?.name;

/** The ways in which a formula like `actual` may have been written. */
const usingsFor = (source: KindSource, actual: Node): readonly Using[] =>
  mentionsOurs(actual.text)
    ? [byName(source), byDefault(source)]
    : [byName(source), byFigure(source)].map((one) => ({ ...one, dialect: "plain" as const }));
const noWords: KindSource = { from: "words", words: new Map() };

/** Behind the question whether the settings that it names are filled in. */
function unasked(node: Node): Node {
  const [test, word, answer] = node.is === "call" && node.name.toUpperCase() === "IF" ? node.args : [];
  const isAsked = test?.is === "operator" && test.sign === "<" && /^COUNT\(/i.test(test.parts[0]!.text);
  return isAsked && word?.is === "text" && word.value === "no setting" ? answer! : node;
}

/** The setting whose number a template leaves open at this place. */
function openNumber(template: Node): SettingName | undefined {
  if (template.is === "name") return SETTINGS.get(template.text.toLowerCase());
  return template.is === "number" ? settingAt(template.value) : undefined;
}

class Reader {
  private readonly headers: ReadonlyMap<string, number>;

  constructor(private readonly list: Pick<SurveyedList, "columns" | "area">) {
    this.headers = new Map(list.columns.map(({ header, index }) => [header.trim().toLowerCase(), index]));
  }

  /** The list's column that a reference means: C7, [@Kind], Caseload[[#This Row],[Last change]]. */
  private columnOf(reference: string): number | undefined {
    const cell = /^\$?([A-Z]{1,3})\$?\d+$/i.exec(reference);
    if (cell) {
      const index = columnNumber(cell[1]!.toUpperCase()) - 1 - this.list.area.left;
      return this.list.columns.some((column) => column.index === index) ? index : undefined;
    }
    const header = /(?:^|[[@])((?:'.|[^'[\]@])+)\]+$/.exec(reference)?.[1];
    return header === undefined ? undefined : this.headers.get(header.replace(/'(.)/g, "$1").trim().toLowerCase());
  }

  /** Whether a formula is made by a template; what stands in its open places is told. */
  matches(template: Node, actual: Node, told: Told): boolean {
    if (template.is === "reference") {
      const [role, column] = [
        roleAt.get(template.text),
        actual.is === "reference" ? this.columnOf(actual.text) : undefined,
      ];
      if (role === undefined || column === undefined || (told.columns.get(role) ?? column) !== column) return false;
      told.columns.set(role, column);
      return true;
    }
    const setting = openNumber(template);
    if (setting !== undefined && actual.is === "number") {
      if ((told.numbers.get(setting) ?? actual.value) !== actual.value) return false;
      told.numbers.set(setting, actual.value);
      return true;
    }
    if (template.is === "array" && actual.is === "array") {
      const lengths = actual.rows.flat().filter((length): length is number => typeof length === "number");
      told.lengths = lengths.map(Math.abs).sort((one, other) => one - other);
      return true;
    }
    if (template.is === "call" && actual.is === "call")
      return (
        functionInCapitals(template.name) === functionInCapitals(actual.name) &&
        this.allMatch(template.args, actual.args, told)
      );
    if (template.is === "operator" && actual.is === "operator")
      return template.sign === actual.sign && this.allMatch(template.parts, actual.parts, told);
    if (template.is === "name" && actual.is === "name")
      return template.text.toLowerCase() === actual.text.toLowerCase();
    if (template.is === "error" && actual.is === "error") return template.code === actual.code;
    if (template.is === "nothing") return actual.is === "nothing";
    return "value" in template && "value" in actual && template.value === actual.value;
  }

  private allMatch(templates: readonly Node[], actuals: readonly Node[], told: Told): boolean {
    return (
      templates.length === actuals.length && templates.every((template, i) => this.matches(template, actuals[i]!, told))
    );
  }

  /** What the formula tells by one of the ways in which the recipe writes it; null where by none. */
  read(recipe: Recipe, slots: readonly Slots[], sources: readonly KindSource[], actual: Node): Told | null {
    for (const source of sources)
      for (const some of slots)
        for (const template of [recipe.template, ...(recipe.earlier ? [recipe.earlier] : [])])
          for (const with_ of usingsFor(source, actual)) {
            const told = nothingTold();
            if (this.matches(unasked(parse(inA1(template(some, with_), 0, 0))), unasked(actual), told))
              return signsApart(recipe, told);
          }
    return null;
  }
}

interface Branch {
  readonly kind: Node;
  readonly words: readonly string[];
  readonly outcome: Node;
}

/** "a"&CHAR(10)&"b", as formulas write words. */
function wordIn(node: Node): string | null {
  if (node.is === "text") return node.value;
  if (node.is === "call" && node.name.toUpperCase() === "CHAR" && node.args[0]?.is === "number")
    return String.fromCharCode(node.args[0].value);
  if (node.is !== "operator" || node.sign !== "&") return null;
  const parts = node.parts.map(wordIn);
  return parts.includes(null) ? null : parts.join("");
}

/** IF(OR(EXACT(LOWER(TRIM(kind)),"word"),...),outcome,IF(...,"kind not known")) */
function branchesOf(node: Node): readonly Branch[] | null {
  if (node.is === "text" && node.value === KIND_NOT_KNOWN) return [];
  if (node.is !== "call" || node.name.toUpperCase() !== "IF") return null;
  const [test, outcome, rest] = node.args as [Node, Node, Node];
  const tests = test.is === "call" && test.name.toUpperCase() === "OR" ? test.args : [test];
  const found = tests.map((one) => {
    if (one.is !== "call" || one.name.toUpperCase() !== "EXACT") return null;
    const cell = /^LOWER\(TRIM\(/i.test(one.args[0]!.text) ? one.args[0]! : undefined;
    const trim = cell?.is === "call" ? cell.args[0] : undefined;
    const kind = trim?.is === "call" ? trim.args[0] : undefined;
    const word = wordIn(one.args[1]!);
    return kind && word !== null ? { kind, word } : null;
  });
  const others = rest === undefined ? null : branchesOf(rest);
  if (others === null || found.some((one) => one === null)) return null;
  return [{ kind: found[0]!.kind, words: found.map((one) => one!.word), outcome }, ...others];
}

/** The columns whose formula depends on the kind, and where in it the kind is asked. */
const kindPart: { readonly [K in RecipeKey]?: (node: Node) => Node | undefined } = {
  changeDue: (node) => (node.is === "call" ? node.args[2] : undefined),
  atTheLatest: (node) => (node.is === "call" ? node.args[2] : undefined),
  checkDue: unasked,
};

const known = kinds.map(({ key }) => key).filter((key) => key !== "not known");

/** A kind that a word may have been given, and what it would say of columns and numbers. */
type Candidates = ReadonlyMap<KindKey, Told>;

function candidatesFor(reader: Reader, key: RecipeKey, word: string, outcome: Node, actual: Node): Candidates {
  const found = new Map<KindKey, Told>();
  const recipe = recipeNamed(key);
  for (const kind of known)
    for (const slots of slotsOf(recipe, true))
      for (const with_ of usingsFor({ from: "words", words: new Map([[word, kind]]) }, actual)) {
        if (found.has(kind)) continue;
        const part = kindPart[key]!(unasked(parse(inA1(recipe.template(slots, with_), 0, 0))));
        const branch = part && branchesOf(part)?.[0];
        const told = nothingTold();
        if (branch && reader.matches(branch.outcome, outcome, told)) found.set(kind, signsApart(recipe, told));
      }
  return found;
}

const merged = (into: Told, { columns, signs, numbers, lengths }: Told): void => {
  for (const column of signs) into.signs.add(column);
  for (const [role, column] of columns) if (!into.columns.has(role)) into.columns.set(role, column);
  for (const [name, value] of numbers) if (!into.numbers.has(name)) into.numbers.set(name, value);
  into.lengths ??= lengths;
};

/** Of the kinds that give a word what stands there: one whose numbers agree with those in use, a likely one first. */
function chooseKind(word: string, all: readonly Candidates[], inUse: (name: SettingName) => number, told: Told) {
  const possible = known.filter((kind) => all.every((candidates) => candidates.has(kind)));
  const likely = guessKind(word);
  // Of kinds that say the same here the likely one, else one for which *Check due* gives no day: a later column must not
  // hold more than was said.
  const rank = (kind: KindKey) => (kind === likely ? 0 : kindNamed(kind).hasBalloon === true ? 2 : 1);
  const order = [...possible].sort((a, b) => rank(a) - rank(b));
  const numbersOf = (kind: KindKey) => all.flatMap((candidates) => [...candidates.get(kind)!.numbers]);
  const agrees = (kind: KindKey, value: (name: SettingName) => number | undefined) =>
    numbersOf(kind).every(([name, number]) => (value(name) ?? number) === number);
  const kind =
    order.find((one) => agrees(one, (name) => told.numbers.get(name) ?? inUse(name))) ??
    order.find((one) => agrees(one, (name) => told.numbers.get(name)));
  if (kind) for (const candidates of all) merged(told, candidates.get(kind)!);
  return kind;
}

/**
 * @param formulas of the columns of ours that stand in the list, one of each
 * @param sheet numbers of the settings sheet, which are used whatever stands in a formula
 */
export function readBack(
  list: Pick<SurveyedList, "columns" | "area">,
  formulas: ReadonlyMap<RecipeKey, string>,
  sheet: SheetNumbers,
): ReadBack {
  const reader = new Reader(list);
  const told = nothingTold();
  const words = new Map<string, Map<RecipeKey, Candidates>>();
  const everyone: Candidates[] = [];
  /** *Check due* of everyone with a balloon reads as it does where no kind was said: it only narrows what others tell. */
  const narrowing: Candidates[] = [];
  for (const [key, formula] of formulas) {
    const recipe = recipeNamed(key);
    const actual = parse(formula);
    const part = kindPart[key]?.(unasked(actual));
    const branches = part && branchesOf(part);
    if (branches) {
      for (const { kind, words: spelt, outcome } of branches) {
        const column = nothingTold();
        const slot = parse(inA1([{ header: "kind", index: roles.findIndex((role) => role.key === "kind") }], 0, 0));
        if (reader.matches(slot, kind, column)) merged(told, column);
        for (const word of spelt) {
          const own = words.get(wordKey(word)) ?? new Map<RecipeKey, Candidates>();
          own.set(key, candidatesFor(reader, key, word, outcome, actual));
          words.set(wordKey(word), own);
        }
      }
      readGuard(reader, recipe, actual, told);
      continue;
    }
    const plain = reader.read(recipe, slotsOf(recipe, false), recipe.needsKinds ? [] : [noWords], actual);
    if (plain) merged(told, plain);
    if (kindPart[key]) {
      const found = known.flatMap((kind): [KindKey, Told][] => {
        const one = reader.read(recipe, slotsOf(recipe, false), [{ from: "everyone", kind }], actual);
        return one ? [[kind, one]] : [];
      });
      (plain ? narrowing : everyone).push(new Map(found));
    }
  }
  const inUse = (name: SettingName): number => sheet[name]?.value ?? settingNamed(name).default;
  const said = new Map<string, KindKey>();
  for (const [word, own] of words) {
    const kind = chooseKind(word, [...own.values()], inUse, told);
    if (kind) said.set(word, kind);
  }
  const one =
    said.size === 0 && everyone.length > 0 ? chooseKind("", [...everyone, ...narrowing], inUse, told) : undefined;
  return {
    columns: Object.fromEntries(told.columns),
    signs: [...told.signs],
    ...(said.size > 0 && { kinds: { from: "words" as const, words: Object.fromEntries(said) } }),
    ...(one && { kinds: { from: "everyone" as const, kind: one } }),
    numbers: Object.fromEntries([...told.numbers].filter(([name, value]) => value !== inUse(name))),
    ...(told.lengths && { lengths: told.lengths }),
  };
}

/** "Last change", which the formula asks for before it asks for the kind. */
function readGuard(reader: Reader, recipe: Recipe, actual: Node, told: Told): void {
  if (!recipe.needsKinds || actual.is !== "call") return;
  const [slots] = slotsOf(recipe, false);
  const template = parse(inA1(recipe.template(slots!, byName({ from: "everyone", kind: "gastrojejunal" })), 0, 0));
  const guard = nothingTold();
  if (template.is === "call" && reader.matches(template.args[0]!, actual.args[0]!, guard)) merged(told, guard);
}
