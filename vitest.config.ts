import { defineConfig } from "vitest/config";

/*
 * Two kinds of test. "core" needs Node only; "browser" drives the built page (npm run build first) in a real browser,
 * one file at a time, because two browsers on two cores only slow each other down.
 */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "core",
          include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
          exclude: ["tests/browser/**", "tests/bench/**"],
          testTimeout: 60_000,
          server: { deps: { inline: [/@univerjs/, "numfmt", /ot-/] } },
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
