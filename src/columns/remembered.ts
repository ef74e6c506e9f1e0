/**
 * What a person has said of a list, as it is kept in the workbook: on a sheet of plain rows that anybody can read, mend or
 * delete. Columns are kept by their headers, so that they may move. What contradicts itself there is not used, and is told.
 */
import { settingNamed, settings, type SettingName } from "../settings/index";
import { kindNamed, kinds, type KindKey } from "../settings/kinds";
import { refuseNumber } from "../settings/setting";
import type { Cell } from "../worksheet/cell";
import { roleNamed, roles, type Role } from "./role";
import { textOf, type SheetValue } from "./sheet-block";
import { wordKey } from "./spelling";
import { readLengths } from "./stocked-lengths";

export const MEMORY_SHEET = "About the lists";
export const MEMORY_HEADERS = ["List", "What is said", "In the list", "Means", "Name in formulas"] as const;

export interface Remembered {
  /** The header of the column; null: the list has none. */
  readonly columns: { readonly [R in Role]?: string | null };
  /** By the word in small letters. */
  readonly words: Readonly<Record<string, KindKey>>;
  /** The kind of every row, where no column says it. */
  readonly everyone: KindKey | null;
  readonly numbers: { readonly [N in SettingName]?: number };
  /** Lengths of low-profile tubes in stock, cm. */
  readonly lengths: readonly number[];
}

export const NOTHING_REMEMBERED: Remembered = { columns: {}, words: {}, everyone: null, numbers: {}, lengths: [] };

const COLUMN = "column";
const NO_COLUMN = "no column";
const KIND = "kind";
const EVERYONE = "kind of every row";
const NUMBER = "number";
const LENGTHS = "lengths in stock";

type Row = readonly [list: string, says: string, inList: Cell, means: Cell, name: Cell];

/** Rows for one list, in an order that can be read. */
function rowsOf(list: string, { columns, words, everyone, numbers, lengths }: Remembered): readonly Row[] {
  const row = (says: string, inList: Cell, means: Cell, name: Cell = null): Row => [list, says, inList, means, name];
  return [
    ...roles.flatMap(({ key, label }) => {
      const header = columns[key];
      if (header === undefined) return [];
      return [header === null ? row(NO_COLUMN, null, label) : row(COLUMN, header, label)];
    }),
    ...Object.entries(words).map(([word, kind]) => row(KIND, word, kind)),
    ...(everyone === null ? [] : [row(EVERYONE, null, everyone)]),
    ...settings.flatMap(({ name, label }) => {
      const value = numbers[name];
      return value === undefined ? [] : [row(NUMBER, label, value, name)];
    }),
    ...(lengths.length === 0 ? [] : [row(LENGTHS, null, lengths.join("; "))]),
  ];
}

export const memoryRows = (lists: ReadonlyMap<string, Remembered>): readonly Row[] =>
  [...lists].flatMap(([list, remembered]) => rowsOf(list, remembered));

/** A row that is not used, and why. */
export interface UnfitRow {
  readonly list: string;
  readonly text: string;
  readonly why: "said twice" | "not known" | "not allowed";
}

export interface ReadMemory {
  readonly lists: ReadonlyMap<string, Remembered>;
  readonly unfit: readonly UnfitRow[];
}

interface Draft {
  readonly columns: Map<Role, Set<string | null>>;
  readonly words: Map<string, Set<KindKey>>;
  readonly everyone: Set<KindKey>;
  readonly numbers: Map<SettingName, Set<number>>;
  readonly lengths: Set<string>;
}

const emptyDraft = (): Draft => ({
  columns: new Map(),
  words: new Map(),
  everyone: new Set(),
  numbers: new Map(),
  lengths: new Set(),
});

function add<K, V>(all: Map<K, Set<V>>, key: K, value: V): void {
  const known = all.get(key);
  if (known) known.add(value);
  else all.set(key, new Set([value]));
}

const same = (one: string, other: string): boolean => wordKey(one) === wordKey(other);

/** One row into the draft; false where it cannot be understood. */
function take(draft: Draft, says: string, inList: string, means: SheetValue, name: string): true | UnfitRow["why"] {
  const role = roles.find(({ label }) => same(label, textOf(means)))?.key;
  const kind = kinds.find(({ key, label }) => same(key, textOf(means)) || same(label, textOf(means)))?.key;
  if (same(says, COLUMN) || same(says, NO_COLUMN)) {
    if (role === undefined || (same(says, COLUMN) && inList === "")) return "not known";
    add(draft.columns, role, same(says, COLUMN) ? inList : null);
    return true;
  }
  if (same(says, KIND) || same(says, EVERYONE)) {
    if (kind === undefined || (same(says, KIND) && inList === "")) return "not known";
    if (same(says, KIND)) add(draft.words, wordKey(inList), kind);
    else draft.everyone.add(kind);
    return true;
  }
  if (same(says, NUMBER)) {
    const setting = settings.find((one) => one.name === name || same(one.label, inList));
    if (!setting || typeof means !== "number") return "not known";
    if (refuseNumber(settingNamed(setting.name), means) !== null) return "not allowed";
    add(draft.numbers, setting.name, means);
    return true;
  }
  if (!same(says, LENGTHS)) return "not known";
  if (typeof readLengths(textOf(means)) === "string") return "not allowed";
  draft.lengths.add(textOf(means));
  return true;
}

/**
 * @param rows below the headers, as the sheet holds them
 * @returns what is said once and can be understood; the rest is told
 */
export function readMemoryRows(rows: readonly (readonly SheetValue[])[]): ReadMemory {
  const drafts = new Map<string, Draft>();
  const unfit: UnfitRow[] = [];
  for (const row of rows) {
    const [list = "", says = "", inList = "", , name = ""] = row.map((cell) => textOf(cell).trim());
    if (list === "" && says === "") continue;
    const draft = drafts.get(list) ?? emptyDraft();
    drafts.set(list, draft);
    const taken = take(draft, says, inList, row[3] ?? null, name);
    const text = [says, inList, textOf(row[3] ?? null)].filter((part) => part.trim() !== "").join(", ");
    if (taken !== true) unfit.push({ list, text, why: taken });
  }
  const lists = new Map([...drafts].map(([list, draft]) => [list, settled(list, draft, unfit)] as const));
  return { lists, unfit };
}

/** What is said once; two columns for one meaning, or two meanings for one column, are neither. */
function settled(list: string, draft: Draft, unfit: UnfitRow[]): Remembered {
  const once = <K, V>(all: ReadonlyMap<K, ReadonlySet<V>>, named: (key: K) => string): [K, V][] =>
    [...all].flatMap(([key, values]): [K, V][] => {
      if (values.size === 1) return [[key, [...values][0]!]];
      unfit.push({ list, text: named(key), why: "said twice" });
      return [];
    });
  const columns = once(draft.columns, (role) => roleNamed(role).label);
  const meanings = new Map<string, Role[]>();
  for (const [role, header] of columns)
    if (header !== null) meanings.set(wordKey(header), [...(meanings.get(wordKey(header)) ?? []), role]);
  const isClear = ([, header]: [Role, string | null]): boolean =>
    header === null || meanings.get(wordKey(header))!.length === 1;
  for (const [header, meant] of meanings) if (meant.length > 1) unfit.push({ list, text: header, why: "said twice" });
  const [everyone, ...others] = [...draft.everyone];
  if (others.length > 0) unfit.push({ list, text: EVERYONE, why: "said twice" });
  const [lengths, ...more] = [...draft.lengths];
  if (more.length > 0) unfit.push({ list, text: LENGTHS, why: "said twice" });
  const read = lengths === undefined || more.length > 0 ? [] : readLengths(lengths);
  return {
    columns: Object.fromEntries(columns.filter(isClear)),
    words: Object.fromEntries(once(draft.words, (word) => word)),
    everyone: others.length > 0 ? null : (everyone ?? null),
    numbers: Object.fromEntries(once(draft.numbers, (name) => settingNamed(name).label)),
    lengths: typeof read === "string" ? [] : read,
  };
}

/** The kind that a word was said to be; undefined where nothing was said of it. */
export function kindRemembered({ words }: Remembered, word: string): KindKey | undefined {
  const key = wordKey(word);
  return Object.hasOwn(words, key) ? kindNamed(words[key]!).key : undefined;
}
