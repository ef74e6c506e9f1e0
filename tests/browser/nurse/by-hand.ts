/**
 * What a careful person would write into the added columns, worked out from the list's own cells by rules of the
 * catalogue, with an independent calendar: nothing here calls the project's functions.
 */
import { Temporal } from "temporal-polyfill";

/** How this test's nurse maps the words of the invented lists; a word left out is not known. */
export const KINDS: readonly {
  readonly matches: RegExp;
  readonly label: RegExp;
  readonly due: number | null;
  readonly latest: number;
  /** No balloon holds it, so that water in a balloon contradicts the kind. */
  readonly isWithoutBalloon?: true;
}[] = [
  { matches: /^(bgt|balloon( button)?|バルーン|بالون)$/i, label: /^balloon, gastrostomy/, due: 3, latest: 6 },
  { matches: /^gj$/i, label: /^gastrojejunal/, due: 3, latest: 6 },
  { matches: /^bumper$/i, label: /^bumper, adult/, due: null, latest: 24, isWithoutBalloon: true },
];

/** Excel's TRIM: outer spaces off, inner ones single. */
export const trimmed = (text: string): string =>
  text
    .replace(/\u00a0/g, " ")
    .trim()
    .replace(/ {2,}/g, " ");

export const kindOf = (word: string | null) => KINDS.find(({ matches }) => matches.test(trimmed(word ?? "")));

const EPOCH = Temporal.PlainDate.from("1899-12-30");
export const serialOf = (date: Temporal.PlainDate): number => EPOCH.until(date, { largestUnit: "days" }).days;

export interface RowFacts {
  /** The date that a careful person reads; null where there is none. */
  readonly lastChange: string | null;
  /** The cell holds something, readable or not. */
  readonly hasLastChange: boolean;
  /** The cell holds a number, date or not. */
  readonly lastNumber: number | null;
  readonly kind: string | null;
  /** An error in the cell of the last change, or else of the kind: it shows through. */
  readonly error: string | null;
  readonly sizeFr: number | null;
  readonly hasSize: boolean;
  readonly waterIn: number | null;
  readonly hasWaterIn: boolean;
  readonly waterOut: number | null;
  readonly hasWaterOut: boolean;
}

export interface Expected {
  readonly due: number | string;
  readonly latest: number | string;
  readonly change: string;
  readonly size: number | string;
  readonly balloon: string;
}

export function expectedOf(row: RowFacts, today: Temporal.PlainDate): Expected {
  const kind = kindOf(row.kind);
  const plus = (months: number | null): number | string => {
    if (!row.hasLastChange) return "no date";
    if (row.error !== null) return row.error;
    if (kind === undefined || (kind.isWithoutBalloon && hasWater(row))) return "kind not known";
    if (months === null) return "no set change";
    return row.lastChange === null
      ? "#VALUE!"
      : serialOf(Temporal.PlainDate.from(row.lastChange).add({ months }, { overflow: "constrain" }));
  };
  const due = plus(kind?.due ?? null);
  const latest = plus(kind?.latest ?? null);
  return {
    due,
    latest,
    change: changeOf(row, due, latest, serialOf(today)),
    size: sizeOf(row),
    balloon: kind?.isWithoutBalloon ? "no balloon" : balloonOf(row),
  };
}

const hasWater = ({ waterIn, waterOut }: RowFacts): boolean => (waterIn ?? 0) > 0 || (waterOut ?? 0) > 0;

/** Far more than any interval: 60 months from today. */
const FAR = 60;

function changeOf(row: RowFacts, due: number | string, latest: number | string, today: number): string {
  if (row.error !== null || due === "#VALUE!" || latest === "#VALUE!") return "check date";
  if (row.lastNumber !== null && row.lastNumber > today) return "check date";
  if (row.lastChange !== null && serialOf(Temporal.PlainDate.from(row.lastChange)) > today) return "check date";
  const far = serialOf(EPOCH.add({ days: today }).add({ months: FAR }));
  if (typeof due === "number" && due > far) return "check date";
  if (typeof latest === "number" && latest > far) return "check date";
  if (typeof latest === "number" && latest < today) return "past limit";
  if (typeof due !== "number") return due;
  if (due < today) return "overdue";
  return due - today <= 14 || (typeof latest === "number" && latest - today <= 14) ? "due soon" : "later";
}

function sizeOf({ hasSize, sizeFr }: RowFacts): number | string {
  if (!hasSize) return "";
  return sizeFr === null ? "#VALUE!" : sizeFr / 3;
}

/** In hundredths of a millilitre, where nothing is rounded. Arguments are read left to right: out, then put in. */
function balloonOf({ waterIn, hasWaterIn, waterOut, hasWaterOut }: RowFacts): string {
  if (!hasWaterOut) return "not measured";
  if (waterOut === null) return "#VALUE!";
  if (!hasWaterIn) return "not measured";
  if (waterIn === null) return "#VALUE!";
  const [put, out] = [Math.round(waterIn * 100), Math.round(waterOut * 100)];
  if (out === 0) return "empty";
  if (out > put + 50) return "more than put in";
  if (2 * out <= put) return "half or less";
  return put - out > (put <= 500 ? 50 : 100) ? "low" : "as filled";
}
