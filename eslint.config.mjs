import tseslint from "typescript-eslint";

/* What the folders may import is part of the design (DEVELOPERS.md, "The house"): arrows point inward. */
const inward = (files, forbidden, why) => ({
  files,
  rules: {
    "no-restricted-imports": ["error", { patterns: [{ group: forbidden, message: why }] }],
  },
});

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
  inward(["src/**"], ["**/functions/**", "**/taskpane/**", "@univerjs/*", "react*"], "src is pure: no host, no page"),
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
  inward(["functions/**"], ["**/taskpane/**"], "functions knows src, never the pane"),
  inward(
    ["taskpane/actions/**", "taskpane/texts/**"],
    ["**/workbook/excel/**", "**/workbook/embedded/**", "**/workbook/fake/**", "@univerjs/*", "**/ui/**", "react*"],
    "actions know the port, never a host or a screen",
  ),
  inward(
    ["taskpane/workbook/*.ts", "taskpane/workbook/change/**"],
    ["**/excel/**", "**/embedded/**", "**/fake/**", "@univerjs/*"],
    "what all hosts share knows none of them",
  ),
  { files: ["**/*.cjs"], rules: { "@typescript-eslint/no-require-imports": "off" } },
  { files: ["tests/**", "functions/generate.ts"], rules: { "no-console": "off" } },
);
