import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

/* The grid's packages in one bundle, which tests/bundle-grid.ts makes. */
const bundledGrid = fileURLToPath(new URL("node_modules/.cache/grid/", import.meta.url));

/*
 * Two kinds of test. "core" needs Node only; "browser" drives the built page (npm run build first) in a real browser,
 * one file at a time, because two browsers on two cores only slow each other down.
 */
export default defineConfig({
  test: {
    projects: [
      {
        resolve: { alias: [{ find: /^@univerjs\/(.*)$/, replacement: `${bundledGrid}$1.mjs` }] },
        test: {
          name: "core",
          include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
          exclude: ["tests/browser/**", "tests/bench/**"],
          globalSetup: "tests/bundle-grid.ts",
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          fileParallelism: false,
          testTimeout: 180_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
