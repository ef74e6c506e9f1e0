import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

/*
 * Two kinds of test. "core" needs Node only; "browser" drives the built page (npm run build first) in a real browser.
 * Left to itself, Vitest keeps one processor free, which is half of two: with both, core took 200 seconds for 350 and the
 * browser 412 for 511, on a machine that did other work too. More than four browsers would want too much memory.
 */
export default defineConfig({
  test: {
    maxWorkers: Math.min(availableParallelism(), 4),
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
          testTimeout: 180_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
