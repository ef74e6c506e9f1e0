/** Serves our own modules to a page as they are written, one file at a time: no bundle to build for a test. */
import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import ts from "typescript";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const compiled = new Map<string, Promise<string>>();

/** Where the page is; nothing listens there. */
export const ORIGIN = "http://workbook.test";

export function compileSource(source: string): string {
  const compilerOptions = { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext };
  return ts.transpileModule(source, { compilerOptions }).outputText;
}

function compile(path: string): Promise<string> {
  const code = compiled.get(path) ?? readFile(ROOT + path, "utf8").then(compileSource);
  compiled.set(path, code);
  return code;
}

/**
 * Answers every request of the page: "/" with `html`, `files` by name, modules by their path in the house without
 * extension, and nothing else.
 */
export async function serveModules(page: Page, html: string, files: Readonly<Record<string, string>>): Promise<void> {
  await page.route("**/*", async (route) => {
    const { pathname } = new URL(route.request().url());
    const contentType = "text/javascript";
    const file = files[pathname.slice(1)];
    const module = `${pathname.slice(1)}.ts`;
    if (pathname === "/") await route.fulfill({ contentType: "text/html", body: html });
    else if (file !== undefined) await route.fulfill({ contentType, body: file });
    else if (existsSync(ROOT + module)) await route.fulfill({ contentType, body: await compile(module) });
    else await route.abort();
  });
}
