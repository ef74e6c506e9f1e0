/**
 * The look of new cells follows their left neighbours'. Each property is set by itself, and only where it differs:
 * copying whole formats would drag conditional formats along, and a colour set outright would hide a table's style.
 */

type Property = string | number | boolean | null;
type Holder = Record<string, Property> & { load(names: string): unknown };

/** One property of a look, and how to reach it. Cells that differ among themselves say null: then it is left alone. */
interface Trait {
  readonly holder: (format: Excel.RangeFormat) => unknown;
  readonly name: string;
}

const trait =
  (holder: (format: Excel.RangeFormat) => unknown) =>
  (name: string): Trait => ({ holder, name });

/** The style goes first: a line of style "None" takes no colour. */
type Edge = "EdgeTop" | "EdgeBottom" | "EdgeLeft" | "EdgeRight" | "InsideHorizontal" | "InsideVertical";
const edge = (index: Edge): readonly Trait[] =>
  ["style", "weight", "color"].map(trait((format) => format.borders.getItem(index)));

/** The edges of a range are those of its outermost cells. */
const EDGES: readonly Trait[] = [...edge("EdgeTop"), ...edge("EdgeBottom"), ...edge("EdgeLeft"), ...edge("EdgeRight")];

const TRAITS: readonly Trait[] = [
  ...["name", "size", "color", "bold", "italic", "underline"].map(trait((format) => format.font)),
  ...["horizontalAlignment", "verticalAlignment", "wrapText"].map(trait((format) => format)),
  ...EDGES,
];
/** Lines between rows and between columns, for ranges of more than one. */
const BETWEEN_ROWS = edge("InsideHorizontal");
const BETWEEN_COLUMNS = edge("InsideVertical");

const holderOf = (range: Excel.Range, one: Trait): Holder => one.holder(range.format) as Holder;

/** A look as Excel tells it. Null where the cells differ among themselves. */
export interface Look {
  readonly traits: readonly (readonly [Trait, Property])[];
  /** "" for none. */
  readonly fill: string | null;
}

/** What was set, with what stood there before. */
export interface LookChange {
  readonly changed: readonly { readonly trait: Trait; readonly before: Property }[];
  /** The fill before; "" for none, null where the fill was not changed. */
  readonly fillBefore: string | null;
}

/** Asks for a range's look; the answer may be called after the next sync. */
export function ask(range: Excel.Range, size: { readonly rows?: number; readonly columns?: number }): () => Look {
  const { rows = 1, columns = 1 } = size;
  const traits = [...TRAITS, ...(rows > 1 ? BETWEEN_ROWS : []), ...(columns > 1 ? BETWEEN_COLUMNS : [])];
  const [told, fill] = [askFor(range, traits), askForFill(range)];
  return () => ({ traits: told(), fill: fill() });
}

/** Asks for the look of one cell of a range whose look is known: only for what that leaves open. */
export function askWithin(cell: Excel.Range, whole: Look): () => Look {
  const known = new Map(whole.traits);
  const hasLines = whole.traits.some(([one, value]) => one.name === "style" && value !== "None");
  const isOpen = (one: Trait) => (known.get(one) ?? null) === null || (hasLines && EDGES.includes(one));
  const told = askFor(cell, TRAITS.filter(isOpen));
  const fill = whole.fill === null ? askForFill(cell) : () => whole.fill;
  return () => {
    const found = new Map([...known, ...told()]);
    return { traits: TRAITS.map((one) => [one, found.get(one) ?? null] as const), fill: fill() };
  };
}

function askFor(range: Excel.Range, traits: readonly Trait[]): () => Look["traits"] {
  const loaded = traits.map((one) => {
    const holder = holderOf(range, one);
    holder.load(one.name);
    return { one, holder };
  });
  return () => loaded.map(({ one, holder }) => [one, holder[one.name] ?? null] as const);
}

function askForFill(range: Excel.Range): () => Look["fill"] {
  const { fill } = range.format;
  fill.load("color,pattern");
  return () => fillOf(fill);
}

/** Excel says "#FFFFFF" for no fill at all: only the pattern tells, and an outright white would hide the grid lines. */
function fillOf({ color, pattern }: Excel.RangeFill): string | null {
  if (pattern === Excel.FillPattern.none) return "";
  return pattern === null || !color ? null : color;
}

/** Gives a range another look where the two differ; the caller syncs. */
export function wear(target: Excel.Range, wanted: Look, present: Look): LookChange {
  const changed: { trait: Trait; before: Property }[] = [];
  const now = new Map(present.traits);
  wanted.traits.forEach(([one, to]) => {
    const before = now.get(one) ?? null;
    if (to === null || before === null || to === before) return;
    holderOf(target, one)[one.name] = to;
    changed.push({ trait: one, before });
  });
  const isSameFill = wanted.fill === null || present.fill === null || wanted.fill === present.fill;
  if (isSameFill) return { changed, fillBefore: null };
  paint(target, wanted.fill!);
  return { changed, fillBefore: present.fill };
}

/** Cells that differ among themselves say nothing of a look: they have to be asked one by one. */
export const isMixed = ({ traits, fill }: Look): boolean => fill === null || traits.some(([, value]) => value === null);

/** Gives a range the look of another one; the caller syncs afterwards. */
export async function follow(
  context: Excel.RequestContext,
  target: Excel.Range,
  neighbour: Excel.Range,
  rows: number,
): Promise<LookChange> {
  const [wanted, present] = [ask(neighbour, { rows }), ask(target, { rows })];
  await context.sync();
  return wear(target, withoutBareFill(wanted()), present());
}

/** New columns do not lose a fill that was there because their neighbours have none. */
const withoutBareFill = (look: Look): Look => ({ ...look, fill: look.fill || null });

/** Puts back what {@link wear} changed; the caller syncs. */
export function restore(target: Excel.Range, { changed, fillBefore }: LookChange): void {
  for (const { trait: one, before } of [...changed].reverse()) holderOf(target, one)[one.name] = before;
  if (fillBefore !== null) paint(target, fillBefore);
}

function paint(target: Excel.Range, fill: string): void {
  if (fill === "") target.format.fill.clear();
  else target.format.fill.color = fill;
}
