import tseslint from "typescript-eslint";

/*
 * What the folders may import is part of the design (DEVELOPERS.md, "The house"): arrows point inward. One entry for each
 * file: of two, only the last would hold. Circles are held by tests/laws/house.
 */
const inward = (files, forbidden, why, ignores = []) => ({
  files,
  ignores,
  rules: {
    "no-restricted-imports": ["error", { patterns: forbidden.map((regex) => ({ regex, message: why })) }],
  },
});

/** Folders beside the one that imports, or the same from farther away. */
const room = (...names) => `(^|/)(${names.join("|")})(/|$)`;
const PAGE = ["^react", "^@univerjs/"];
const ADAPTERS = "/workbook/(excel|embedded|fake|package|file|xlsx)(/|$)";
const beside = (...names) => `^(\\.\\./)+(${names.join("|")})(/|$)`;

export default tseslint.config(
  { ignores: ["dist", "dist-library", "node_modules", "tests/bench/node_modules", "docs", "tests/workbooks/make"] },
  ...tseslint.configs.recommended,
  {
    rules: {
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_" }],
      "@typescript-eslint/consistent-type-imports": "error",
      eqeqeq: "error",
      "no-console": "error",
      "prefer-const": "error",
    },
  },
  inward(["src/**"], [room("functions", "taskpane"), ...PAGE], "src is pure: no host, no page"),
  {
    files: ["src/**"],
    rules: {
      "no-restricted-globals": [
        "error",
        ...["window", "document", "fetch", "Office", "Excel", "localStorage", "sessionStorage", "navigator"],
      ],
      "no-restricted-properties": [
        "error",
        { object: "Date", property: "now", message: "src has no clock: pass the date in" },
        { object: "Math", property: "random", message: "src is deterministic" },
      ],
    },
  },
  inward(["functions/**"], [room("taskpane")], "functions knows src, never the pane"),
  inward(["taskpane/texts/**"], ["^\\.\\./(?!\\.\\./src/)", ...PAGE], "texts knows nothing but src"),
  inward(
    ["taskpane/actions/**"],
    [ADAPTERS, room("ui", "styles"), ...PAGE],
    "actions know the port, never a host, a file or a screen",
  ),
  inward(
    ["taskpane/ui/**"],
    [ADAPTERS, "^@univerjs/"],
    "the pane knows the port; only the page's own bar knows the grid, by its interface",
    ["taskpane/ui/shell/**"],
  ),
  inward(
    ["taskpane/ui/shell/**"],
    [ADAPTERS.replace("embedded", "embedded(?!/interface$)"), "^@univerjs/"],
    "the page's own bar knows the grid by its interface alone",
  ),
  inward(
    ["taskpane/workbook/*.ts", "taskpane/workbook/change/**"],
    [
      beside("excel", "embedded", "fake", "package", "file", "xlsx", "ui", "actions"),
      "^\\./(excel|embedded|fake|package|file|xlsx)",
      ...PAGE,
    ],
    "what all hosts share knows none of them",
  ),
  ...[
    ["excel", ["embedded", "fake", "package", "file", "xlsx"]],
    ["embedded", ["excel", "fake", "file"]],
    ["fake", ["excel", "embedded", "package", "file", "xlsx"]],
    ["package", ["excel", "embedded", "fake", "file", "change", "port", "area"]],
    ["file", ["excel", "embedded", "fake", "package", "change", "port", "area"]],
    ["xlsx", ["excel", "embedded", "fake", "package", "file", "change", "port", "area"]],
  ].map(([own, others]) =>
    inward(
      [`taskpane/workbook/${own}/**`],
      [beside(...others, "ui", "actions"), "^react", ...(own === "embedded" ? [] : ["^@univerjs/"])],
      `${own} knows neither its neighbours nor the screen`,
    ),
  ),
  {
    // A function is read in one go; what is longer is several things. Tests and drawings of pages have their own measure.
    files: ["src/**", "functions/**", "taskpane/**"],
    // Stories of invented people: lists, not steps.
    ignores: ["src/caseload/invented/**"],
    rules: { "max-lines-per-function": ["error", { max: 95 }] },
  },
  { files: ["**/*.cjs"], rules: { "@typescript-eslint/no-require-imports": "off" } },
  { files: ["tests/**", "functions/generate.ts"], rules: { "no-console": "off" } },
);
