import { utils } from "@e965/xlsx";
import { describe, expect, it } from "vitest";
import { guessKind, readAs } from "../../../src/columns/kind-guess";
import { guessRoles, type ColumnLook } from "../../../src/columns/guess";
import { headerWords } from "../../../src/columns/header-words";
import type { Role } from "../../../src/columns/role";
import type { SheetValue } from "../../../src/columns/sheet-block";
import type { KindKey } from "../../../src/settings/kinds";
import { expectedFiles, openFixture, readSheet } from "./fixtures";

const look = (header: string, values: readonly SheetValue[], isOurs = false): Omit<ColumnLook, "index"> => ({
  header,
  values,
  isOurs,
});
const columnsGuessed = (...looks: Omit<ColumnLook, "index">[]) => {
  const found = guessRoles(looks.map((one, index) => ({ ...one, index })));
  return Object.fromEntries(Object.entries(found).map(([role, guess]) => [role, guess.column]));
};
const days = [46001, 46002, "2026-02-11", "see letter"];
const words = ["balloon", "PEG", null, "GJ"];
const sizes = [14, "14FR", 12, "?"];
const volumes = [5, "4,5", "5 mL", "n/k"];
const lengths = [2.3, "2,5 cm", 1.7, null, "?"];

describe("guessing columns", () => {
  it("finds what headers name and values bear out", () => {
    const looks = [look("Type of\ntube", words), look("Size (Fr)", sizes), look("LAST CHANGE:", days)];
    expect(columnsGuessed(...looks, look("Put in", volumes), look("Came out", volumes))).toEqual({
      kind: 0,
      size: 1,
      last: 2,
      putIn: 3,
      out: 4,
    });
  });
  it("says why", () => {
    const found = guessRoles([{ index: 0, ...look("Last change", days) }]);
    expect(found.last?.because).toBe('header "Last change"; 3 of 4 values are dates');
  });
  it.each([
    ["Letzter Wechsel", days, "last"],
    ["Sondenart", words, "kind"],
    ["Größe", sizes, "size"],
    ["Dernier changement", days, "last"],
    ["Type de sonde", words, "kind"],
    ["Último cambio", days, "last"],
    ["Próximo cambio", days, "due"],
    ["Laatste vervanging", days, "last"],
    ["Ultima sostituzione", days, "last"],
    ["Spätestens", days, "latest"],
    ["Stoma made", days, "stomaMade"],
    ["Stoma angelegt am", days, "stomaMade"],
    ["Première pose", days, "stomaMade"],
    ["Last check", days, "lastCheck"],
    ["Letzte Ballonkontrolle", days, "lastCheck"],
    ["Length cm", lengths, "length"],
    ["Schaftlänge", lengths, "length"],
    ["Lying cm", lengths, "lying"],
    ["Im Liegen", lengths, "lying"],
    ["Sitting cm", lengths, "sitting"],
    ["Zittend", lengths, "sitting"],
    ["Play mm", [8, "12 mm", 2, "?"], "gap"],
    ["Mark then cm", [4, 3.5, "4 cm"], "markThen"],
    ["Mark now cm", [4, 3.5, 0], "markNow"],
    ["Diameter (mm)", [4.7, "4,0 mm"], "diameter"],
    ["Size (mm)", [4.7, "4,0 mm"], "diameter"],
    ["Shape", ["long", "low-profile"], "shape"],
    ["Access", ["G", "GJ", "J"], "access"],
    ["Changed by", ["carer", "nurse in clinic"], "changedBy"],
    ["Status", ["active", "left"], "status"],
    ["Balloon water (put in) ml", volumes, "putIn"],
    ["Balloon vol", volumes, "putIn"],
    ["Ballonvolumen (ml)", volumes, "putIn"],
    ["Volume du ballonnet", volumes, "putIn"],
    ["Volumen del balón", volumes, "putIn"],
    ["Ballonvulling", volumes, "putIn"],
    ["Datum letzter Wechsel", days, "last"],
    ["Date dernier changement", days, "last"],
    ["Fecha del último recambio", days, "last"],
    ["Datum laatste wissel", days, "last"],
    ["Type de gastrostomie", words, "kind"],
    ["Tipo de gastrostomía", words, "kind"],
    ["Soort katheter", words, "kind"],
    ["Change", ["overdue", "Due soon", "later", "no date"], "state"],
  ])("%s", (header, values, role) => expect(columnsGuessed(look(header, values))).toEqual({ [role]: 0 }));

  it.each([
    ["a header that may mean two things", look("Date", days)],
    ["the next or the last change?", look("Change date", days)],
    ["in or out?", look("Volume", volumes)],
    ["a header without the values", look("Size", ["see letter", "large", "small"])],
    ["dates where words should be", look("Type", [46001, 46002, 46003])],
    ["numbers that are no dates", look("Last change", [1, 2, 3])],
    ["words for volumes", look("Out", ["Monday", "Tuesday"])],
    ["a date out", look("Out", days)],
    ["millimetres that we worked out", look("Size mm", [4.7, 4], true)],
    ["words of ours, without the formulas", look("Tract", ["immature"])],
    ["a change of what?", look("Change", ["size 14", "new kind"])],
    ["a status that says when a change is due", look("Status", ["overdue", "later"])],
    ["then or now?", look("Mark", [4, 3])],
    ["of the opening or the tube?", look("Stoma length", lengths)],
    ["millimetres for a length in cm", look("Length (mm)", [8, 9, 10])],
    ["centimetres for a gap in mm", look("Gap (cm)", [0.5, 1, 2])],
    ["a length of a long tube", look("Length", [23, 120, 35])],
    ["a check of something else", look("Last check of weight", days)],
    ["a change of something else", look("Water changed on", days)],
    ["somebody who changes something else", look("Dressing changed by", ["carer", "nurse"])],
    ["a change of water", look("Last change of water", days)],
  ])("gives no guess: %s", (_, one) => expect(columnsGuessed(one)).toEqual({}));

  it("gives no guess where two columns fit alike", () => {
    expect(columnsGuessed(look("Last change", days), look("Last changed", days))).toEqual({});
    expect(columnsGuessed(look("Size", sizes), look("Size", sizes))).toEqual({});
  });
  it("takes what was put in before the agreed fill", () => {
    expect(columnsGuessed(look("Agreed fill", volumes), look("Water put in", volumes))).toEqual({ putIn: 1 });
  });
  it("reads due dates and words for a change that we made ourselves, and nothing else of ours", () => {
    const ours = [look("Change due", ["no date", 46001, "kind not known"], true), look("Change", ["later"], true)];
    expect(columnsGuessed(...ours, look("Balloon", ["low"], true))).toEqual({ due: 0, state: 1 });
  });
  it("names every header word for one role only", () => {
    const all = Object.values(headerWords).flat();
    expect(all.filter((word, i) => all.indexOf(word) !== i)).toEqual([]);
  });
});

const ROLE_OF: Readonly<Record<string, Role>> = {
  lastChange: "last",
  kind: "kind",
  size: "size",
  waterIn: "putIn",
  waterOut: "out",
};
const UNREADABLE = ["prefixed-single-quoted.xlsx", "utf16-part.xlsx", "ten-thousand-rows.xlsx"];

describe("guesses on the committed workbooks", () => {
  const lists = Object.entries(expectedFiles)
    .filter(([file]) => !UNREADABLE.includes(file))
    .flatMap(([file, { lists: all = [] }]) => all.map((list) => ({ ...list, file })))
    .filter((list) => list.headerRow !== null);
  let right = 0;
  it.each(lists)("are never wrong: $file, $sheet", ({ file, sheet: name, range, columns, lastRow, firstRow }) => {
    const { used, values } = readSheet(openFixture(file).Sheets[name]!);
    const { s, e } = utils.decode_range(range);
    const looks = Array.from({ length: e.c - s.c + 1 }, (_, index) => {
      const column = (row: number) => values[row - used!.top]?.[s.c + index - used!.left] ?? null;
      const cells = Array.from({ length: lastRow - firstRow + 1 }, (__, i) => column(firstRow - 1 + i));
      return { index, header: String(column(s.r) ?? ""), values: cells, isOurs: false };
    });
    const guessed = guessRoles(looks);
    for (const [meaning, role] of Object.entries(ROLE_OF)) {
      const guess = guessed[role];
      if (!guess) continue;
      expect([role, utils.encode_col(s.c + guess.column)]).toEqual([role, columns[meaning]]);
      right += 1;
    }
    expect([guessed.due, guessed.latest]).toEqual([undefined, undefined]);
  });
  it("and there are enough of them", () => expect(right).toBeGreaterThan(4 * 20));
});

describe("guessing kinds", () => {
  const guessed: readonly (readonly [string, KindKey])[] = [
    ["balloon", "balloon gastrostomy"],
    [" BALLOON ", "balloon gastrostomy"],
    ["balloon G", "balloon gastrostomy"],
    ["Balloon gastrostomy", "balloon gastrostomy"],
    ["Balloon button", "balloon gastrostomy"],
    ["low-profile balloon", "balloon gastrostomy"],
    ["balloon jejunostomy", "balloon jejunostomy"],
    ["GJ", "gastrojejunal"],
    ["G-J", "gastrojejunal"],
    ["PEG-J", "gastrojejunal"],
    ["balloon GJ", "gastrojejunal"],
    ["transgastric jejunal", "gastrojejunal"],
    ["bumper, adult", "bumper adult"],
    ["child bumper", "bumper child"],
    ["Bumper PEG, adult", "bumper adult"],
    ["PEG tube, internal bumper (child)", "bumper child"],
    ["winged", "placing team"],
    ["catheter", "placing team"],
    ["Ballonsonde", "balloon gastrostomy"],
    ["Button mit Ballon", "balloon gastrostomy"],
    ["Ballon-Button", "balloon gastrostomy"],
    ["bouton à ballonnet", "balloon gastrostomy"],
    ["Sonde de gastrostomie à ballonnet", "balloon gastrostomy"],
    ["botón con balón", "balloon gastrostomy"],
    ["sonda de balón", "balloon gastrostomy"],
    ["button met ballon", "balloon gastrostomy"],
    ["gastrojejunale Sonde", "gastrojejunal"],
    ["sonde gastro-jéjunale", "gastrojejunal"],
    ["sonda gastroyeyunal", "gastrojejunal"],
    ["PEG, innere Halteplatte, Erwachsener", "bumper adult"],
    ["PEG à collerette interne, enfant", "bumper child"],
  ];
  it.each(guessed)("%s: %s", (word, kind) => expect(guessKind(word)).toBe(kind));
  it.each([
    ...["PEG", "RIG", "button", "G-tube", "bumper", "PEG disc", "BGT", "J", "balloon J", "jejunostomy", "", "?", "n/k"],
    ...[
      "ohne Ballon",
      "kein Ballon",
      "sans ballonnet",
      "sin balón",
      "geen ballon",
      "Ballonkatheter",
      "ancien ballonnet",
      "PEG-Sonde",
      "Knopf",
      "no balloon",
      "non-balloon",
      "not a balloon",
      "balloon?",
      "was balloon",
      "balloon or bumper",
      "see letter",
      "14",
    ],
  ])("no guess: %s", (word) => expect(guessKind(word)).toBeNull());
  it("says how a word of another language was read", () => {
    expect(readAs("bouton à ballonnet")).toBe("button balloon");
    expect(readAs("Balloon button")).toBeNull();
  });
});
