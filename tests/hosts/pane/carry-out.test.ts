/** A change ends in words, whatever fails: the host, or our own words for it. */
import { describe, expect, test } from "vitest";
import type { Afterwards } from "../../../taskpane/actions/action";
import { carryOut } from "../../../taskpane/actions/carry-out";
import type { Change, Receipt } from "../../../taskpane/workbook/port";

const change = { steps: [] } as unknown as Change;
const watch = { report: () => undefined, signal: new AbortController().signal };
const receipt = (outcome: Receipt["outcome"], done: readonly unknown[] = []) =>
  ({ outcome, sentence: `It is ${outcome}.`, done }) as unknown as Receipt;
const host = (apply: () => Promise<Receipt>) => ({ apply });
const fine = ({ outcome, sentence, done }: Receipt): Afterwards => ({
  ...{ outcome, sentences: [sentence], where: null, canTakeBack: done.length > 0 },
});
const failing = (): Afterwards => {
  throw new Error("no words");
};

test("what the host says is said", async () => {
  const { words } = await carryOut(
    host(() => Promise.resolve(receipt("done", [{}]))),
    change,
    watch,
    fine,
  );
  expect(words).toEqual({ outcome: "done", sentences: ["It is done."], where: null, canTakeBack: true });
});

describe("a host that fails", () => {
  test.each([
    ["by a promise", () => Promise.reject(new Error("gone"))],
    [
      "at once",
      () => {
        throw new Error("gone");
      },
    ],
  ] as const)("%s", async (_, apply) => {
    const { words } = await carryOut(host(apply), change, watch, fine);
    expect(words.outcome).toBe("stopped");
    expect(words.sentences.join()).toContain("gone");
  });
});

describe("words that fail claim no success", () => {
  test.each([
    ["done", [{}], true],
    ["done", [], false],
    ["stopped", [{}], true],
    ["refused", [], false],
  ] as const)("after %s", async (outcome, done, canTakeBack) => {
    const carried = await carryOut(
      host(() => Promise.resolve(receipt(outcome, done))),
      change,
      watch,
      failing,
    );
    expect(carried.words.outcome).not.toBe("done");
    expect(carried.words).toMatchObject({ canTakeBack, where: null });
    expect(carried.words.sentences.join(" ")).toContain("no words");
    expect(carried.words.sentences.includes(carried.receipt.sentence)).toBe(outcome !== "done");
  });
});
