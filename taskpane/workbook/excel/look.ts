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
const edge = (index: "EdgeTop" | "EdgeBottom" | "EdgeLeft" | "EdgeRight" | "InsideHorizontal"): readonly Trait[] =>
  ["style", "weight", "color"].map(trait((format) => format.borders.getItem(index)));

const TRAITS: readonly Trait[] = [
  ...["name", "size", "color", "bold", "italic", "underline"].map(trait((format) => format.font)),
  ...["horizontalAlignment", "verticalAlignment", "wrapText"].map(trait((format) => format)),
  ...edge("EdgeTop"),
  ...edge("EdgeBottom"),
  ...edge("EdgeLeft"),
  ...edge("EdgeRight"),
];
/** Lines between rows, for ranges of more than one row. */
const BETWEEN = edge("InsideHorizontal");

const holderOf = (range: Excel.Range, one: Trait): Holder => one.holder(range.format) as Holder;

/** What was set, with what stood there before. */
export interface LookChange {
  readonly changed: readonly { readonly trait: Trait; readonly before: Property }[];
  /** The fill before; "" for none, null where the fill was not changed. */
  readonly fillBefore: string | null;
}

/** Gives a range the look of another one; the caller syncs afterwards. */
export async function follow(
  context: Excel.RequestContext,
  target: Excel.Range,
  neighbour: Excel.Range,
  rows: number,
): Promise<LookChange> {
  const loaded = [...TRAITS, ...(rows > 1 ? BETWEEN : [])].map((one) => {
    const [wanted, present] = [holderOf(neighbour, one), holderOf(target, one)];
    wanted.load(one.name);
    present.load(one.name);
    return { trait: one, wanted, present };
  });
  const fill = { wanted: neighbour.format.fill, present: target.format.fill };
  fill.wanted.load("color,pattern");
  fill.present.load("color,pattern");
  await context.sync();

  const changed: { trait: Trait; before: Property }[] = [];
  for (const { trait: one, wanted, present } of loaded) {
    const to = wanted[one.name] ?? null;
    const before = present[one.name] ?? null;
    if (to === null || before === null || to === before) continue;
    present[one.name] = to;
    changed.push({ trait: one, before });
  }
  /* Excel says "#FFFFFF" for no fill at all: only the pattern tells, and an outright white would hide the grid lines. */
  const isFilled = (one: Excel.RangeFill) => one.pattern !== "None" && one.pattern !== null;
  if (!isFilled(fill.wanted) || !fill.wanted.color || fill.wanted.color === fill.present.color)
    return { changed, fillBefore: null };
  const fillBefore = isFilled(fill.present) ? fill.present.color : "";
  fill.present.color = fill.wanted.color;
  return { changed, fillBefore };
}

/** Puts back what {@link follow} changed; the caller syncs. */
export function restore(target: Excel.Range, { changed, fillBefore }: LookChange): void {
  for (const { trait: one, before } of [...changed].reverse()) holderOf(target, one)[one.name] = before;
  if (fillBefore === "") target.format.fill.clear();
  else if (fillBefore !== null) target.format.fill.color = fillBefore;
}
