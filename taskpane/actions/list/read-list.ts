/** Reads one list through the port: its rows, its columns, and what stands in the way. */
import { columnLetters } from "../../../src/columns/formula";
import { mentionsOurs } from "../../../src/formula/ours";
import { guessRoles } from "../../../src/columns/guess";
import { recipes } from "../../../src/columns/recipes/index";
import type { Recipe, RecipeKey } from "../../../src/columns/recipes/recipe";
import { roleNamed, type Role } from "../../../src/columns/role";
import { textOf } from "../../../src/columns/sheet-block";
import { bottom, right, SHEET_COLUMNS, SHEET_ROWS } from "../../workbook/area";
import { asText } from "../../workbook/change/expectations";
import type { Area, Block, Overview, Place, SheetId, Value, Workbook } from "../../workbook/port";
import { problem, type Problem } from "../action";
import { hiddenRows, lookBeside, type Beside } from "./beside";
import type { Located } from "./find";
import type { AsOf, ColumnSurvey, Notice, PresentColumn, RecipeSurvey, SurveyedList } from "./interface";
import { laidTo, readMemory } from "./memory";
import { recipesOf, recipesOfMany } from "./our-formula";
import { presentColumns, type Present } from "./present";
import { samplesOf } from "./samples";
import { readShownDates } from "./shown-dates";
import { count, FROM_1904, inQuotes, notEmptyBeside } from "../../texts/pieces";
import { sheetProtected } from "./sentences";
import { NO_COLUMN_LEFT } from "../../workbook/change/refusal";

/** Formats and formulas of so many rows tell what a column is. */
const ROWS_SAMPLED = 40;
const isOurFormula = (formula: string | null): boolean =>
  formula !== null && (mentionsOurs(formula) || /\bAs_of\b/i.test(formula) || recipesOf(formula).length > 0);

interface Geometry {
  /** From the header row to the last data row. */
  readonly area: Area;
  /** With the totals row: what must be free to the right of. */
  readonly whole: Area;
  readonly headers: readonly string[];
  readonly hasHeader: boolean;
}

function geometryOf(located: Located): Geometry {
  if (located.in === "sheet") {
    const { area, headers } = located.found;
    return { area, whole: area, headers, hasHeader: true };
  }
  const { area, columns, hasHeader, hasTotals } = located.table;
  return { area: { ...area, rows: area.rows - (hasTotals ? 1 : 0) }, whole: area, headers: columns, hasHeader };
}

export async function readList(
  workbook: Workbook,
  overview: Overview,
  located: Located,
  asOf: AsOf,
): Promise<SurveyedList> {
  const { sheet, choice } = located;
  const { area, whole, headers, hasHeader } = geometryOf(located);
  const block = await workbook.read({ sheet: sheet.id, area }, ["values"]);
  const [header = [], ...body] = block.values ?? [];
  const rows = hasHeader ? body : [header, ...body];
  const firstBelow = area.top + (hasHeader ? 1 : 0);
  const sampled = { ...area, top: firstBelow, rows: Math.min(ROWS_SAMPLED, rows.length) };
  const sample: Partial<Block> =
    sampled.rows > 0 ? await workbook.read({ sheet: sheet.id, area: sampled }, ["formulas", "formats"]) : {};
  const beside = await lookBeside(workbook, overview, sheet.id, whole, recipes.length);
  const isAloneBelow = bottom(whole) >= SHEET_ROWS || (await isEmpty(workbook, located, below(whole)));
  const hidden = hasHeader ? await hiddenRows(workbook, sheet.id, area) : 0;
  const columns = headers.map((text, index) => columnOf(text, index, { headers, area, rows, sample, overview }));
  const found = presentColumns(
    columns.map(({ index, header: text }) => ({
      index,
      header: text,
      formulas: sample.formulas?.map((row) => row[index] ?? null) ?? [],
    })),
  );
  const present = await readPresent(
    workbook,
    sheet.id,
    { ...area, top: firstBelow, rows: rows.length },
    found,
    columns,
    rows,
  );
  const table = located.in === "table" ? located.table.name : null;
  const guessed = guessRoles(
    columns.map((column) => ({ ...column, values: rows.map((row) => row[column.index] ?? null) })),
  );
  const memory = await readMemory(workbook, overview);
  const { guesses, remembered, notices } = laidTo(memory, { table, sheetName: sheet.name }, columns, rows, guessed);
  const datesIn = new Set(
    Object.entries(guesses).flatMap(([role, guess]) =>
      roleNamed(role as Role).content === "date" ? [guess.column] : [],
    ),
  );
  const shownDates = await readShownDates(
    workbook,
    sheet.id,
    { ...area, top: firstBelow },
    rows,
    columns.map(({ index }) => index).filter((index) => !datesIn.has(index)),
    overview.dateSystem,
  );
  const firstRow = located.in === "sheet" ? located.found.firstRow : firstBelow;
  const list = {
    key: choice.key,
    label: choice.label,
    in: located.in,
    table,
    sheet: sheet.id,
    sheetName: sheet.name,
    area,
    headerRow: area.top + 1,
    firstRow: firstRow + 1,
    lastRow: bottom(area),
    found:
      located.in === "sheet"
        ? { sentence: located.found.sentence, sure: located.found.sure }
        : { sentence: `Header in row ${area.top + 1}.`, sure: true },
    columns,
    guesses,
    remembered,
    recipes: recipes.map((recipe) => recipeSurvey(recipe, { columns, present, overview, asOf })),
    rows,
    rowNumbers: rows.map((_, i) => firstBelow + i + 1),
    shownDates,
    ...beside,
    hasTotals: located.in === "table" && located.table.hasTotals,
    headerTexts: header.map(asText),
    isEmptyBelow: located.in === "sheet" && isAloneBelow,
  };
  return {
    ...list,
    obstacles: obstaclesTo(located, { area, whole, rows, beside, canRefresh: present.size > 0 }),
    notices: [
      ...noticesOn(located, hidden),
      ...(isAloneBelow ? [] : rowBelow(located, whole)),
      ...found.unclear.map((column) => unclear(columns[column]!)),
      ...notices,
    ],
  };
}

const below = (area: Area): Area => ({ ...area, top: bottom(area), rows: 1 });

async function isEmpty(workbook: Workbook, { sheet }: Located, area: Area): Promise<boolean> {
  const { values = [], formulas = [] } = await workbook.read({ sheet: sheet.id, area }, ["values", "formulas"]);
  return [...(values[0] ?? []), ...(formulas[0] ?? [])].every((cell) => cell === null);
}

interface ColumnContext {
  readonly headers: readonly string[];
  readonly area: Area;
  readonly rows: readonly (readonly Value[])[];
  readonly sample: Partial<Block>;
  readonly overview: Overview;
}

function columnOf(header: string, index: number, context: ColumnContext): ColumnSurvey {
  const { headers, area, rows, sample, overview } = context;
  const same = (text: string) => text.trim().toLowerCase();
  const values = rows.map((row) => row[index] ?? null);
  return {
    index,
    header,
    letters: columnLetters(area.left + index),
    samples: samplesOf(values, sample.formats?.map((row) => row[index] ?? "") ?? [], overview.dateSystem),
    filled: values.filter((value) => textOf(value).trim() !== "").length,
    sharesHeader: header.trim() !== "" && headers.filter((other) => same(other) === same(header)).length > 1,
    isOurs: sample.formulas?.some((row) => isOurFormula(row[index] ?? null)) ?? false,
  };
}

interface RecipeContext {
  readonly columns: readonly ColumnSurvey[];
  readonly present: ReadonlyMap<RecipeKey, PresentColumn>;
  readonly overview: Overview;
  readonly asOf: AsOf;
}

function recipeSurvey(recipe: Recipe, { columns, present, overview, asOf }: RecipeContext): RecipeSurvey {
  const { key, group, label, header, help, caution = null, needs, needsKinds, needsLengths = false } = recipe;
  const ours = present.get(key) ?? null;
  const theirs = columns.find((column) => column.header.trim().toLowerCase() === header.toLowerCase());
  let refused: string | null = null;
  if (!ours && theirs)
    refused = `A column ${inQuotes(theirs.header)} is there already (column ${theirs.letters}). It does not hold our formula, so it is left alone.`;
  else if (recipe.usesDates && overview.dateSystem === 1904) refused = FROM_1904;
  else if (recipe.usesAsOf) refused = asOf.refused;
  return { key, group, label, header, help, caution, needs, needsKinds, needsLengths, refused, present: ours };
}

/** The columns that are ours, and where something has been typed into them. */
async function readPresent(
  workbook: Workbook,
  sheet: SheetId,
  data: Area,
  { columns: found }: Present,
  columns: readonly ColumnSurvey[],
  rows: readonly (readonly Value[])[],
): Promise<ReadonlyMap<RecipeKey, PresentColumn>> {
  const present = new Map<RecipeKey, PresentColumn>();
  const recipesIn = recipesOfMany();
  for (const [key, column] of found) {
    const area = { ...data, left: data.left + column, columns: 1 };
    const { formulas = [] } = await workbook.read({ sheet, area }, ["formulas"]);
    const isOfColumn = (formula: string | null) => formula !== null && recipesIn(formula).includes(key);
    const typed = rows.flatMap((row, i) =>
      isOfColumn(formulas[i]?.[0] ?? null) || (!formulas[i]?.[0] && asText(row[column] ?? null) === "")
        ? []
        : [data.top + i + 1],
    );
    const { header, letters } = columns[column]!;
    const formula = formulas.map((row) => row[0] ?? null).find(isOfColumn) ?? "";
    present.set(key, { column, header, letters, typed, formula });
  }
  return present;
}

const unclear = ({ header, letters }: ColumnSurvey): Notice => ({
  sentence: `Column ${inQuotes(header)} (column ${letters}) holds a formula of ours, but not which one can be told. Name it "Change due" or "At the latest", then look again, to have it refreshed.`,
});

interface Situation {
  readonly area: Area;
  readonly whole: Area;
  readonly rows: readonly unknown[];
  readonly beside: Beside;
  /** Columns of ours are there: much can be done without room for new ones. */
  readonly canRefresh: boolean;
}

function obstaclesTo(located: Located, { area, whole, rows, beside, canRefresh }: Situation): readonly Problem[] {
  const { sheet } = located;
  const where: Place = { sheet: sheet.id, area };
  const found: Problem[] = [];
  if (sheet.isProtected) found.push(problem(sheetProtected(sheet.name)));
  if (located.in === "table" && !located.table.hasHeader)
    found.push(
      problem(`The table ${inQuotes(located.table.name)} shows no header row. Turn its header row on first.`, where),
    );
  if (rows.length === 0)
    found.push(problem("There is no row below the header. Enter the first row, then look again.", where));
  if (canRefresh) return found;
  if (right(whole) >= SHEET_COLUMNS) found.push(problem(NO_COLUMN_LEFT, where));
  else if (beside.room === 0) found.push(noRoom(sheet.id, whole, beside));
  return found;
}

function noRoom(sheet: string, whole: Area, { inTheWay }: Beside): Problem {
  const next = { ...whole, left: right(whole), columns: 1 };
  return problem(notEmptyBeside(wayText(inTheWay)), { sheet, area: next });
}

/** "H5, H6 and 4 more" */
export function wayText(addresses: readonly string[]): string {
  const named = addresses.slice(0, 3).join(", ");
  return addresses.length > 3 ? `${named} and ${addresses.length - 3} more` : named;
}

/** A row typed under a table here does not become part of it, and would be left without a date in silence. */
const rowBelow = (located: Located, whole: Area): readonly Notice[] =>
  located.in === "sheet"
    ? []
    : [
        {
          sentence: `Row ${bottom(whole) + 1} stands right below the table ${inQuotes(located.table.name)} and is no part of it: it gets no columns. Draw the table over it in Excel first.`,
        },
      ];

function noticesOn(located: Located, hidden: number): readonly Notice[] {
  const found: Notice[] = [];
  if (hidden > 0) {
    const why = located.in === "table" && located.table.isFiltered ? "A filter is on: " : "";
    const rows = count(hidden, "row");
    const verb = hidden === 1 ? "is" : "are";
    found.push({ sentence: `${why}${rows} of this list ${verb} hidden now. Hidden rows get the columns too.` });
  }
  return found;
}
