/** The house (DEVELOPERS.md): nothing goes round in a circle, and each sentence stands where it is looked for, once. */
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { describe, expect, it } from "vitest";
import { shownHeaders } from "../../src/caseload/headers";
import { call, places } from "../../taskpane/ui/pane/places";
import { recordings } from "../../taskpane/ui/today/recordings";
import { circlesIn, importsOf, sourcesOf, type SourceText } from "../house/imports";
import { isOfScreen, readsLikeSentence, SCREEN, sentencesOf } from "../house/sentences";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const sources = sourcesOf(ROOT, ["src", "functions", "taskpane"]);

const written = (file: string, text: string): SourceText => ({
  file,
  tree: ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX),
});

describe("imports", () => {
  it("go round in no circle, by types and on demand included", () => {
    const imports = sources.flatMap((source) => importsOf(ROOT, source));
    expect(imports.length).toBeGreaterThan(1000);
    expect(circlesIn(imports)).toEqual([]);
  });

  it("are looked at closely enough: a circle is found, and by its members alone", () => {
    const arrow = (from: string, to: string) => ({ from, to, isType: false });
    const ring = [arrow("a", "b"), arrow("b", "c"), arrow("c", "a"), arrow("c", "d"), arrow("x", "a")];
    expect(circlesIn(ring)).toEqual([["a", "b", "c"]]);
    expect(circlesIn([arrow("a", "a")])).toEqual([["a"]]);
    expect(circlesIn([arrow("a", "b"), arrow("a", "c"), arrow("b", "d"), arrow("c", "d")])).toEqual([]);
  });

  it("are found in every spelling", () => {
    const text = `import type { A } from "./imports"; export * from "./sentences"; const b = import("./imports");
      type C = import("./sentences").Sentence;`;
    const found = importsOf(ROOT, written("tests/house/some.ts", text));
    expect(found.map(({ to, isType }) => [to, isType])).toEqual([
      ["tests/house/imports.ts", true],
      ["tests/house/sentences.ts", false],
      ["tests/house/imports.ts", false],
      ["tests/house/sentences.ts", true],
    ]);
  });
});

describe("a job", () => {
  const camel = (name: string): string => name.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());
  const inPlaces = [call, ...places].flatMap(({ jobs }) => jobs);

  it("has one name in its folder, its object and its texts, and stands in the pane once", () => {
    const folders = sources.flatMap(({ file }) => /^taskpane\/ui\/([^/]+)\/job\.ts$/.exec(file)?.[1] ?? []);
    expect([...inPlaces, ...recordings].map(({ key }) => key).sort()).toEqual(folders.map(camel).sort());
    const texts = sources.map(({ file }) => file).filter((file) => file.startsWith(SCREEN));
    for (const folder of folders) expect(texts).toContain(`${SCREEN}${folder}.ts`);
  });
});

/** The invented list of the first screen: people's words, not ours. */
const INVENTED = "taskpane/ui/shell/example-list.ts";
const headers = new Set<string>(Object.values(shownHeaders).flat());
const isScreen = (file: string): boolean => /^taskpane\/(?:ui\/|[^/]+\.tsx$)/.test(file) && file !== INVENTED;

describe("sentences", () => {
  it("are known from what programs read", () => {
    for (const text of ['The table "{name}" is gone.', "Not written down: {labels}. Ask."])
      expect(readsLikeSentence(text), text).toBe(true);
    for (const text of ['IF([@Fill]="","",1)', "sheet.command.set-range-values", "a b c", "button:not(:disabled)"])
      expect(readsLikeSentence(text), text).toBe(false);
  });

  it("of the screen itself stand in taskpane/texts or in a job: none in a component", () => {
    const stray = sources
      .filter(({ file }) => isScreen(file) && !isOfScreen(file))
      .flatMap(sentencesOf)
      .filter(({ text }) => !headers.has(text));
    expect(stray).toEqual([]);
    const component = written("taskpane/ui/some/Some.tsx", `export const Some = () => <p>Look again</p>;`);
    expect(sentencesOf(component)).toHaveLength(1);
  });

  it("are said in one place", () => {
    const places = new Map<string, Set<string>>();
    for (const { file, line, text } of sources
      .filter(({ file }) => file.startsWith("taskpane/"))
      .flatMap(sentencesOf)) {
      const plain = text.replace(/\{[^{}]*\}/g, "{}");
      if (plain.split(" ").length < 4 || !/[.?!]$/.test(plain)) continue;
      places.set(plain, (places.get(plain) ?? new Set()).add(`${file}:${line}`));
    }
    expect(places.size).toBeGreaterThan(300);
    const twice = [...places].filter(([, where]) => where.size > 1).map(([text, where]) => [text, ...where]);
    expect(twice).toEqual([]);
  });

  it("of the screen are read by a component, an action or a page", () => {
    const texts = sources.filter(({ file }) => file.startsWith(SCREEN));
    const read = new Set(sources.flatMap((source) => importsOf(ROOT, source)).map(({ to }) => to));
    expect(texts.map(({ file }) => file).filter((file) => file !== `${SCREEN}index.ts` && !read.has(file))).toEqual([]);
  });
});
