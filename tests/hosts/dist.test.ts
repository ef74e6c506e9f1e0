/** The built files (npm run build first): what Excel and a hospital's web server get. */
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join, sep } from "node:path";
import { runInNewContext } from "node:vm";
import { gzipSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { functions } from "../../src/index";
import { sources } from "../../src/sources";

const dist = new URL("../../dist/", import.meta.url);
const bytes = (file: string) => readFileSync(new URL(file, dist));
const text = (file: string) => bytes(file).toString("utf8");
const kilobytes = (file: string) => gzipSync(bytes(file), { level: 9 }).length / 1000;

test("the build has run", () => {
  expect(existsSync(new URL("functions.js", dist)), "run npm run build").toBe(true);
});

describe("functions.js", () => {
  const associated = new Map<string, (...cells: unknown[]) => unknown>();
  runInNewContext(text("functions.js"), {
    CustomFunctions: { associate: (id: string, f: (...cells: unknown[]) => unknown) => associated.set(id, f) },
  });

  test("associates every function of functions.json with nothing but a CustomFunctions global", () => {
    const described = JSON.parse(text("functions.json")).functions.map((f: { id: string }) => f.id);
    expect([...associated.keys()].sort()).toEqual([...described].sort());
    expect(associated.size).toBe(functions.length);
    expect(associated.get("FRTOMM")!(12)).toBe(4);
  });

  test("carries no examples, sources or long help", () => {
    const script = text("functions.js");
    for (const source of Object.values(sources)) expect(script).not.toContain(source);
    for (const { documentation } of functions) expect(script).not.toContain(documentation!.details.slice(0, 60));
  });

  test("weighs at most 42 KB on the wire", () => expect(kilobytes("functions.js")).toBeLessThanOrEqual(42));
});

describe("the pages", () => {
  test("the pane in Excel weighs at most 90 KB on the wire and knows nothing of the grid", () => {
    expect(kilobytes("taskpane.js")).toBeLessThanOrEqual(90);
    expect(text("taskpane.js")).not.toMatch(/univerjs/i);
  });

  test("the browser workbook's first screen weighs at most 150 KB on the wire, and comes without the grid", () => {
    const asked = [...text("index.html").matchAll(/ (?:src|href)="?([^"#> ]+\.(?:js|css))/g)].map(([, file]) => file!);
    expect(asked).toEqual(expect.arrayContaining(["browser.js", "browser.css"]));
    const sum = asked.reduce((total, file) => total + kilobytes(file), kilobytes("index.html"));
    expect(sum).toBeLessThanOrEqual(150);
    for (const file of asked) expect(text(file), file).not.toMatch(/univerjs/i);
  });

  test("load scripts and styles of their own only, under a strict policy", () => {
    for (const page of ["index.html", "taskpane.html", "reference.html"]) {
      const html = text(page);
      expect(html, page).toMatch(/Content-Security-Policy/);
      expect(html, page).toContain("default-src 'none'");
      expect(html, page).not.toContain("unsafe-eval");
      for (const [, address] of html.matchAll(/ (?:src|href)="?([^"#> ]+)/g)) {
        expect(address, page).not.toMatch(/^(https?:)?\/\//);
        expect(existsSync(new URL(address!, dist)), `${page}: ${address}`).toBe(true);
      }
    }
    expect(text("index.html")).not.toContain("office");
  });

  test("Excel's web client sets inline styles (office-js issue 1687): its page allows styles, and only those", () => {
    const policyOf = (page: string) =>
      new Map(
        /http-equiv="?Content-Security-Policy"? content="([^"]+)"/
          .exec(text(page))![1]!
          .split(";")
          .map((rule) => rule.trim().split(/ +/))
          .map(([name, ...of]) => [name!, of.join(" ")]),
      );
    expect(policyOf("taskpane.html").get("style-src")).toBe("'self' 'unsafe-inline'");
    expect(policyOf("taskpane.html").get("script-src")).toBe("'self'");
    expect(policyOf("index.html").get("style-src")).toBe("'self'");
    expect(policyOf("index.html").get("script-src")).toBe("'self'");
  });

  test("Excel's page loads Office first, then the functions, then the pane", () => {
    const scripts = [...text("taskpane.html").matchAll(/<script[^>]* src="?([^" >]+)/g)].map(([, src]) => src);
    expect(scripts).toEqual(["office/office.js", "functions.js", "taskpane.js"]);
  });

  test("every help link leads to a part of the reference", () => {
    const html = text("reference.html");
    for (const { helpUrl } of JSON.parse(text("functions.json")).functions as { helpUrl: string }[]) {
      expect(html).toMatch(new RegExp(`id="?${new URL(helpUrl).hash.slice(1)}["> ]`));
    }
  });
});

describe("the whole folder", () => {
  const files = readdirSync(dist, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
  const own = files.filter((file) => !file.includes(`${sep}office${sep}`));

  test("weighs at most 9.2 MB without Microsoft's files", () => {
    const megabytes = own.reduce((sum, file) => sum + statSync(file).size, 0) / 1e6;
    expect(megabytes).toBeLessThanOrEqual(9.2);
  });

  test("holds none of the grid's tables that a sheet never asks for", () => {
    const grid = new URL("../../node_modules/@univerjs/engine-render/lib/es/", import.meta.url);
    const languages = readdirSync(grid).filter((file) => file !== "index.js" && file.endsWith(".js"));
    expect(languages.length).toBeGreaterThan(70);
    const beginnings = languages.map((file) => {
      const levels = /"(?:\d+,){4,}[\d,]*"/.exec(readFileSync(new URL(file, grid), "utf8"));
      return levels ? levels[0].slice(0, 60) : "";
    });
    expect(beginnings.filter((levels) => levels.length === 60).length).toBeGreaterThan(50);
    // a guess at languages, a reader of fonts' files, the characters of every script: words that only they hold
    const marks = [
      ...beginnings.filter((levels) => levels.length === 60),
      "Latin:{",
      "Unsupported OpenType",
      "Bopomofo",
    ];
    for (const file of own.filter((name) => name.endsWith(".js"))) {
      const script = readFileSync(file, "utf8");
      for (const mark of marks) expect(script.includes(mark), `${file}: ${mark}`).toBe(false);
    }
  });
});

test("Microsoft's files are copied unchanged", () => {
  const folder = new URL("../../node_modules/@microsoft/office-js/dist/", import.meta.url);
  const copied = readdirSync(new URL("office/", dist), { recursive: true, encoding: "utf8" }).filter((f) =>
    f.endsWith(".js"),
  );
  expect(copied.length).toBeGreaterThanOrEqual(6);
  for (const file of copied)
    expect(bytes(`office/${file}`).equals(readFileSync(new URL(file, folder))), file).toBe(true);
});

test("the licences of what is bundled lie beside it", () => {
  const licences = text("third-party-licenses.txt");
  for (const name of ["react", "react-dom", "rxjs", "fflate", "hucre", "@univerjs/core"])
    expect(licences).toContain(name);
});
