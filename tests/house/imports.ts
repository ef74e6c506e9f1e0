/** Who imports whom, read from the sources by the compiler that builds them: types and imports on demand count too. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import ts from "typescript";

export interface SourceText {
  /** From the project's folder, with "/": "taskpane/ui/pane/Pane.tsx". */
  readonly file: string;
  readonly tree: ts.SourceFile;
}

export interface Import {
  readonly from: string;
  readonly to: string;
  /** Gone once it is built. */
  readonly isType: boolean;
}

const isSource = (name: string): boolean => /\.tsx?$/.test(name) && !name.endsWith(".d.ts");

function filesIn(folder: string): readonly string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return entry.name === "node_modules" ? [] : filesIn(path);
    return isSource(entry.name) ? [path] : [];
  });
}

/** The sources in these folders of a project, in the order of their names. */
export function sourcesOf(root: string, folders: readonly string[]): readonly SourceText[] {
  return folders
    .flatMap((folder) => filesIn(join(root, folder)))
    .map((path) => ({
      file: relative(root, path).replaceAll("\\", "/"),
      tree: ts.createSourceFile(path, readFileSync(path, "utf8"), ts.ScriptTarget.Latest, true),
    }))
    .sort((a, b) => (a.file < b.file ? -1 : 1));
}

const ENDINGS = ["", ".ts", ".tsx", "/index.ts", "/index.tsx"];

/** What one file imports from others of the project; the same file may come more than once. */
export function importsOf(root: string, { file, tree }: SourceText): readonly Import[] {
  const found: Import[] = [];
  const add = (specifier: ts.Node | undefined, isType: boolean): void => {
    if (!specifier || !ts.isStringLiteralLike(specifier) || !specifier.text.startsWith(".")) return;
    const path = join(root, dirname(file), specifier.text);
    const target = ENDINGS.map((ending) => path + ending).find((one) => isSource(one) && existsSync(one));
    if (target) found.push({ from: file, to: relative(root, target).replaceAll("\\", "/"), isType });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node))
      add(node.moduleSpecifier, node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword);
    else if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      add(node.arguments[0], false);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) add(node.argument.literal, true);
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

/** Groups of files that reach each other in a circle, each in the order of names (Tarjan). */
export function circlesIn(imports: readonly Import[]): readonly (readonly string[])[] {
  const reads = new Map<string, Set<string>>();
  for (const { from, to } of imports) reads.set(from, (reads.get(from) ?? new Set()).add(to));
  const numbers = new Map<string, number>();
  const lowest = new Map<string, number>();
  const open: string[] = [];
  const circles: string[][] = [];
  const visit = (file: string): number => {
    const number = numbers.size;
    numbers.set(file, number);
    let low = number;
    open.push(file);
    for (const next of reads.get(file) ?? []) {
      if (!numbers.has(next)) low = Math.min(low, visit(next));
      else if (open.includes(next)) low = Math.min(low, lowest.get(next) ?? numbers.get(next)!);
    }
    lowest.set(file, low);
    if (low === number) {
      const circle = open.splice(open.indexOf(file));
      if (circle.length > 1 || reads.get(file)?.has(file)) circles.push(circle.sort());
    }
    return low;
  };
  for (const file of reads.keys()) if (!numbers.has(file)) visit(file);
  return circles;
}
