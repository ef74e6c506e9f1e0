/** A workbook that cannot be read is asked again, and said to be unread; nothing waits quietly for ever. */
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { watchOverview } from "../../../taskpane/ui/pane/overview-watch";
import type { Overview } from "../../../taskpane/workbook/port";

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const named = (title: string) => ({ title }) as unknown as Overview;

function watched() {
  const answers: (() => Promise<Overview>)[] = [];
  let changed = () => undefined as void;
  const told: unknown[] = [];
  const book = {
    overview: () => (answers.length > 1 ? answers.shift()! : answers[0]!)(),
    onChange: (listen: () => void) => {
      changed = listen;
      return () => (changed = () => undefined);
    },
  };
  const start = () =>
    watchOverview(
      book,
      (fresh) => told.push(fresh),
      (reason) => reason !== null && told.push(reason),
    );
  return { answers, told, start, change: () => changed() };
}

const busy = () => Promise.reject(new Error("busy"));

test("a host that fails once is asked again, and nothing is said", async () => {
  const { answers, told, start } = watched();
  answers.push(busy, () => Promise.resolve(named("A")));
  start();
  await vi.advanceTimersByTimeAsync(10_000);
  expect(told).toEqual([named("A")]);
});

test("a host that goes on failing is said to be unread, without a change or a press", async () => {
  const { answers, told, start } = watched();
  answers.push(busy);
  start();
  await vi.advanceTimersByTimeAsync(10_000);
  expect(told[0]).toBe("Error: busy");
});

test("an answer that comes late does not come in over a newer one", async () => {
  const { answers, told, start, change } = watched();
  let late = (_: Overview) => undefined as void;
  answers.push(
    () => new Promise((resolve) => (late = resolve)),
    () => Promise.resolve(named("new")),
  );
  start();
  change();
  await vi.advanceTimersByTimeAsync(1000);
  late(named("old"));
  await vi.advanceTimersByTimeAsync(1000);
  expect(told).toEqual([named("new")]);
});

test("stopped, it asks no more", async () => {
  const { answers, told, start } = watched();
  answers.push(busy);
  const watch = start();
  watch.stop();
  await vi.advanceTimersByTimeAsync(10_000);
  expect(told).toEqual([]);
});
