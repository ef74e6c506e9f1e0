/**
 * Every text that a person may read, with the file and line where it stands: `npm run sentences`. Texts of the screen
 * itself stand in taskpane/texts and are all listed; elsewhere what reads like a sentence is (DEVELOPERS.md,
 * "Sentences").
 */
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { sourcesOf, type SourceText } from "./imports";

export interface Sentence {
  readonly file: string;
  readonly line: number;
  /** What is filled in stands in braces. */
  readonly text: string;
}

/** Where sentences of the screen itself stand; a job's own label and lead stand in the job. */
export const SCREEN = "taskpane/texts/";
const JOB = /^taskpane\/ui\/[^/]+\/job\.ts$/;
export const isOfScreen = (file: string): boolean => file.startsWith(SCREEN) || JOB.test(file);

const WORD = /\p{L}[\p{L}’'-]+/gu;
/** A formula, a selector, a path, a name of a command: nobody reads these. */
const FOR_PROGRAMS =
  /<\/?\w|:not\(|\bxmlns|\b[A-Z][A-Z0-9.]+\(|^[=<.#/@[{]|^[\w$]+[.-][\w.-]+(?: [\w$]+[.-][\w.-]+)*$|[{};]\s*$|=>|\[/;

/** At least three words that begin like a sentence, or end like one. */
export function readsLikeSentence(text: string): boolean {
  const bare = text.replace(/\{[^}]*\}/g, " x ").trim();
  if (FOR_PROGRAMS.test(bare) || (bare.match(WORD) ?? []).length < 3 || !bare.includes(" ")) return false;
  return /^[\p{Lu}"“‘{]/u.test(text.trim()) || /[.?!:)]$/.test(bare);
}

function textOf(node: ts.Node): string | undefined {
  if (ts.isStringLiteralLike(node)) return node.text;
  if (ts.isJsxText(node)) return node.text.replace(/\s+/g, " ").trim();
  if (!ts.isTemplateExpression(node)) return undefined;
  const parts = node.templateSpans.map(
    ({ expression, literal }) => `{${expression.getText().replace(/\s+/g, " ")}}${literal.text}`,
  );
  return node.head.text + parts.join("");
}

/** Told to programmers only: imports, types, names of attributes, faults of the code itself, patterns. */
function isForPrograms(node: ts.Node): boolean {
  const { parent } = node;
  if (ts.isImportDeclaration(parent) || ts.isExportDeclaration(parent) || ts.isLiteralTypeNode(parent)) return true;
  if (ts.isPropertyAssignment(parent)) return parent.name === node || parent.name.getText() === "key";
  if (ts.isJsxAttribute(parent)) return /^(?:className|id|key|type|role|href|d)$|^data-/.test(parent.name.getText());
  if (ts.isNewExpression(parent))
    return /^(?:Error|RangeError|TypeError|RegExp|URL)$/.test(parent.expression.getText());
  return ts.isCallExpression(parent) && parent.expression.kind === ts.SyntaxKind.ImportKeyword;
}

/** What one file says. Of the screen's own texts, single words too. */
export function sentencesOf({ file, tree }: SourceText): readonly Sentence[] {
  const found: Sentence[] = [];
  const isScreen = isOfScreen(file);
  const visit = (node: ts.Node): void => {
    const text = textOf(node);
    if (text !== undefined && /\p{L}/u.test(text) && !isForPrograms(node)) {
      const isRead = isScreen || ts.isJsxText(node) || readsLikeSentence(text);
      const line = tree.getLineAndCharacterOfPosition(node.getStart()).line + 1;
      if (isRead) found.push({ file, line, text });
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

export const sentences = (root = ROOT): readonly Sentence[] =>
  sourcesOf(root, ["taskpane", "src", "functions"])
    .filter(({ file }) => !file.includes("/generated/"))
    .flatMap(sentencesOf);

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const { file, line, text } of sentences(process.argv[2]))
    process.stdout.write(`${file}:${line}\t${JSON.stringify(text)}\n`);
