import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

/* The grid's packages in one bundle, which tests/bundle-grid.ts makes. */
const bundledGrid = fileURLToPath(new URL("node_modules/.cache/grid/", import.meta.url));

/*
 * These limits end what hangs, and nothing else: on a machine four times as slow as an ordinary one all is green. Tests
 * and helpers set no limits of their own. How fast things are is for `npm run bench`.
 */
const ONE_WAIT = 120_000;
const ONE_TEST = 600_000;

/* Two files more than there are processors: two thirds of the time a test in the browser waits for its page. */
const AT_ONCE = availableParallelism() + 2;

/*
 * Two kinds of test. "core" needs Node only; "browser" drives the built page (npm run build first) in one real browser
 * for the whole run.
 */
export default defineConfig(({ mode }) => {
  const common = {
    testTimeout: ONE_TEST,
    hookTimeout: ONE_TEST,
    expect: { poll: { timeout: ONE_WAIT } },
    /* `npm run endurance`: tests/budget.ts reads it. `npm run shots`: tests/browser/shots.ts. */
    env: { ENDURANCE: mode === "endurance" ? "1" : "", SHOTS: mode === "shots" ? "1" : "" },
  };
  return {
    test: {
      maxWorkers: AT_ONCE,
      projects: [
        {
          resolve: { alias: [{ find: /^@univerjs\/(.*)$/, replacement: `${bundledGrid}$1.mjs` }] },
          test: {
            ...common,
            name: "core",
            /* Two hundred files, each a thread instead of a process. */
            pool: "threads",
            include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
            exclude: ["tests/browser/**", "tests/bench/**"],
            globalSetup: "tests/bundle-grid.ts",
          },
        },
        {
          test: {
            ...common,
            name: "browser",
            include: ["tests/browser/**/*.test.ts"],
            globalSetup: "tests/browser/one-browser.ts",
          },
        },
      ],
    },
  };
});
