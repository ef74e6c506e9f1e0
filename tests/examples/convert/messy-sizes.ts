/**
 * A column of 1,402 sizes as twenty people type them, and 18 blanks among them; invented, shuffled by a fixed seed. What
 * each means follows from how it is made (shared catalogue, "Sizes": what FRTOMM reads, what it refuses), never from our
 * own reader. One French is a third of a millimetre.
 */
export interface Messy {
  /** As it stands in the cell; null is an empty cell. */
  readonly cell: string | number | null;
  /** The French size that the person meant, where it can be read. */
  readonly french?: number;
  readonly is: "read" | "doubtful" | "not read" | "blank";
  /** Why it is not read, by the catalogue's own grouping. */
  readonly because?: Because;
}

export type Because = "two sizes" | "in doubt" | "gauge" | "no French size" | "outside";

const wide = (n: number): string =>
  String(n).replace(/\d/g, (digit) => String.fromCharCode(digit.charCodeAt(0) + 0xfee0));

/** Ways in which one readable size is written. */
const spellings: readonly ((n: number) => string | number)[] = [
  (n) => n,
  (n) => `${n} Fr`,
  (n) => `CH${n}`,
  (n) => `${n}FR`,
  (n) => `${n}F`,
  (n) => `Ch. ${n}`,
  (n) => `FG ${n}`,
  (n) => `${n} French`,
  (n) => `Charrière ${n}`,
  (n) => `${n},0`,
  (n) => `${n}.0 fr`,
  (n) => `  ${n}  `,
  (n) => `${n}\u00a0Fr`,
  (n) => `CH\u00a0${n}\u00a0`,
  (n) => wide(n),
  (n) => `${wide(n)} Fr`,
  (n) => `${n} Fr x 2.3 cm`,
  (n) => `${n} Fr (${n} FR)`,
  (n) => `fr ${n} balloon`,
  (n) => String(n),
];
const sizes = [10, 12, 14, 15, 16, 18, 20, 22, 24];

/** 1,380 are read; the last six of them want a look: below 5 or above 30 Fr. */
const READ = 1374;
const doubtful: readonly Messy[] = [
  { cell: 4.7, french: 4.7, is: "doubtful" },
  { cell: "4,7", french: 4.7, is: "doubtful" },
  { cell: "4 Fr", french: 4, is: "doubtful" },
  { cell: 36, french: 36, is: "doubtful" },
  { cell: "CH 45", french: 45, is: "doubtful" },
  { cell: "31 fr", french: 31, is: "doubtful" },
];

/** 22 are not read. */
const notRead: readonly [Because, readonly (string | number)[]][] = [
  ["two sizes", ["12/14", "14-16 Fr", "14 Fr or 16 Fr", "12/14", "CH14 / CH16", "14 16"]],
  ["in doubt", ["14?", "?", "16 Fr ?", "12 or 14?"]],
  ["gauge", ["14G", "16 gauge", "14 G"]],
  ["no French size", ["see letter", "ask the family", "14 mm", "4.7mm", "button", "2.3 cm"]],
  ["outside", [75, "0 Fr", "-14"]],
];

/** 18 blanks: empty, only spaces, only no-break spaces, and the number 0, which a link to an empty cell gives. */
const blanks: readonly Messy["cell"][] = [
  ...new Array<null>(10).fill(null),
  "  ",
  " ",
  "\u00a0",
  "\u00a0 ",
  0,
  0,
  0,
  0,
];

/** Numerical Recipes' quick generator: enough to shuffle by. */
function shuffled<T>(all: readonly T[], seed: number): T[] {
  const cards = [...all];
  let state = seed;
  for (let i = cards.length - 1; i > 0; i--) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const j = Math.floor((state / 2 ** 32) * (i + 1));
    [cards[i], cards[j]] = [cards[j]!, cards[i]!];
  }
  return cards;
}

export const messySizes: readonly Messy[] = shuffled<Messy>(
  [
    ...Array.from({ length: READ }, (_, i): Messy => {
      const french = sizes[i % sizes.length]!;
      return { cell: spellings[i % spellings.length]!(french), french, is: "read" };
    }),
    ...doubtful,
    ...notRead.flatMap(([because, cells]) => cells.map((cell): Messy => ({ cell, is: "not read", because }))),
    ...blanks.map((cell): Messy => ({ cell, is: "blank" })),
  ],
  20261126,
);
