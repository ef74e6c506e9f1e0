/**
 * The house in figures: `npm run figures`, or of another copy of the project `npm run figures -- FOLDER`. A room is a
 * folder; a loose file lies beside the rooms of its folder.
 */
import { fileURLToPath } from "node:url";
import { dirname } from "node:path";
import ts from "typescript";
import { circlesIn, importsOf, sourcesOf, type SourceText } from "./imports";
import { isOfScreen, SCREEN, sentencesOf } from "./sentences";

const root = process.argv[2] ?? fileURLToPath(new URL("../../", import.meta.url));
const sources = sourcesOf(root, ["src", "functions", "taskpane"]).filter(({ file }) => !file.includes("/generated/"));
const imports = sources.flatMap((source) => importsOf(root, source));
const say = (line = ""): void => void process.stdout.write(`${line}\n`);

function counted<T>(things: readonly T[], keyOf: (thing: T) => string): readonly (readonly [string, number])[] {
  const counts = new Map<string, number>();
  for (const thing of things) counts.set(keyOf(thing), (counts.get(keyOf(thing)) ?? 0) + 1);
  return [...counts].sort(([a], [b]) => (a < b ? -1 : 1));
}

const folderOf = ({ file }: Pick<SourceText, "file">): string => dirname(file);
const folders = new Set(sources.map(folderOf));
const hasRooms = (folder: string): boolean => [...folders].some((one) => one.startsWith(`${folder}/`));

say(`files ${sources.length}, folders ${folders.size}`);
say("\nfiles per folder, of more than twelve:");
for (const [folder, count] of counted(sources, folderOf)) if (count > 12) say(`  ${folder} ${count}`);
say("\nloose files beside rooms:");
for (const [folder, count] of counted(
  sources.filter((source) => hasRooms(folderOf(source))),
  folderOf,
))
  say(`  ${folder} ${count}`);

/** Arrows between folders, not from a folder into its own rooms or out of them. */
const crossing = new Set(
  imports
    .map(({ from, to }) => `${dirname(from)} -> ${dirname(to)}`)
    .filter((arrow) => {
      const [from, to] = arrow.split(" -> ") as [string, string];
      return from !== to;
    }),
);
say(`\narrows between folders: ${crossing.size}`);
const within = "taskpane/workbook/embedded";
const topOf = (file: string): string => file.slice(within.length + 1).split("/")[0]!;
const inside = new Set(
  imports
    .filter(({ from, to }) => from.startsWith(`${within}/`) && to.startsWith(`${within}/`))
    .map(({ from, to }) => `${topOf(from)} -> ${topOf(to)}`)
    .filter((arrow) => arrow.split(" -> ")[0] !== arrow.split(" -> ")[1]),
);
const rooms = new Set(sources.filter(({ file }) => file.startsWith(`${within}/`)).map(({ file }) => topOf(file)));
say(`the grid's folder: ${rooms.size} rooms and loose files, ${inside.size} arrows between them`);

const circles = circlesIn(imports);
const atWork = circlesIn(imports.filter(({ isType }) => !isType));
say(`\ncircles: ${circles.length}, of them not by types alone: ${atWork.length}`);
for (const circle of circles) say(`  ${circle.join(" ")}`);

const sentences = sources.filter(({ file }) => file.startsWith("taskpane/")).flatMap(sentencesOf);
const isFull = ({ text }: { readonly text: string }): boolean => text.split(" ").length >= 3;
say("\nsentences of the pane and the page (three words and more):");
for (const [place, count] of counted(sentences.filter(isFull), ({ file }) =>
  isOfScreen(file) ? SCREEN : file.split("/").slice(0, 2).join("/"),
))
  say(`  ${place} ${count}`);

interface Long {
  readonly name: string;
  readonly lines: number;
}

/** Lines of each function from its first to its last. */
function functionsOf({ file, tree }: SourceText): readonly Long[] {
  const found: Long[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node) && "body" in node && node.body) {
      const line = (at: number): number => tree.getLineAndCharacterOfPosition(at).line;
      const named = node.name ?? (ts.isVariableDeclaration(node.parent) ? node.parent.name : undefined);
      const lines = line(node.end) - line(node.getStart()) + 1;
      found.push({ name: `${file} ${named?.getText() ?? "(unnamed)"}`, lines });
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

const functions = sources.flatMap(functionsOf).sort((a, b) => b.lines - a.lines);
say(
  `\nfunctions ${functions.length}, median ${functions[Math.floor(functions.length / 2)]!.lines} lines; the longest:`,
);
for (const { name, lines } of functions.slice(0, 12)) say(`  ${lines} ${name}`);
