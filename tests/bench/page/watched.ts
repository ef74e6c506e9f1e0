/** A page that is watched from outside: how long until it is quiet, how long it was blocked, what memory it holds. */
import type { Browser, Page } from "playwright-core";

/** How often the browser is asked what the page's main thread has done, in milliseconds. */
const LOOK = 50;
/** Busy is who works for more than this share of the time between two looks. */
const BUSY = 0.3;
/** Quiet is who has not been busy for so many milliseconds. */
const QUIET = 500;

declare const window: { blocks: number[] };

export interface Waited {
  /** Milliseconds from the start until `until` had come. */
  readonly untilSeen: number;
  /** Milliseconds from the start until the page was quiet; the quiet stretch is not counted. */
  readonly untilQuiet: number;
  /** The longest time in which the page could not answer; 0 if none was over 50 ms (W3C, Long Tasks API). */
  readonly longestBlock: number;
  /** What the page's main thread did, in milliseconds. */
  readonly work: number;
}

export interface Watched {
  readonly page: Page;
  /**
   * Does something and waits until the page is quiet.
   * @param until waits for what a person would see
   */
  readonly waited: (work: () => Promise<unknown>, until?: () => Promise<unknown>) => Promise<Waited>;
  /** Megabytes of the page's scripts after clearing up. */
  readonly megabytes: () => Promise<number>;
  readonly close: () => Promise<void>;
}

export async function openWatched(browser: Browser): Promise<Watched> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    acceptDownloads: true,
    reducedMotion: "reduce",
    locale: "en-GB",
  });
  // tsx names functions by a helper that no page has.
  await context.addInitScript({ content: "globalThis.__name = (given) => given;" });
  await context.addInitScript(() => {
    window.blocks = [];
    new PerformanceObserver((list) => window.blocks.push(...list.getEntries().map(({ duration }) => duration))).observe(
      {
        type: "longtask",
      },
    );
  });
  const page = await context.newPage();
  const devTools = await context.newCDPSession(page);
  await devTools.send("Performance.enable");

  /** By the browser's clock, in milliseconds. */
  async function look(): Promise<{ readonly now: number; readonly done: number }> {
    const { metrics } = await devTools.send("Performance.getMetrics");
    const metric = (wanted: string) => 1000 * metrics.find(({ name }) => name === wanted)!.value;
    return { now: metric("Timestamp"), done: metric("TaskDuration") };
  }

  const waited: Watched["waited"] = async (work, until) => {
    const isFirst = page.url() === "about:blank";
    if (!isFirst) await page.evaluate(() => (window.blocks = []));
    const start = await look();
    await work();
    await until?.();
    let last = await look();
    const seen = last.now;
    let busyUntil = seen;
    while (last.now - busyUntil < QUIET) {
      await new Promise((resolve) => setTimeout(resolve, LOOK));
      const next = await look();
      if (next.done - last.done > BUSY * (next.now - last.now)) busyUntil = next.now;
      last = next;
    }
    return {
      untilSeen: seen - start.now,
      untilQuiet: busyUntil - start.now,
      longestBlock: await page.evaluate(() => Math.max(0, ...window.blocks)),
      // A page that is loaded may come to stand in a process of its own, which counts from 0.
      work: isFirst ? last.done : last.done - start.done,
    };
  };
  return {
    page,
    waited,
    async megabytes() {
      await devTools.send("HeapProfiler.enable");
      await devTools.send("HeapProfiler.collectGarbage");
      const { usedSize } = await devTools.send("Runtime.getHeapUsage");
      return usedSize / 1e6;
    },
    close: () => context.close(),
  };
}
