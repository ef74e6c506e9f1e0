/**
 * No device drops out of a count unseen: a row whose other cell is blank is skipped only where the rest may be a blank
 * too. Excel hands a blank over as the number 0; "no" or a typed "0" is somebody's answer.
 */
import { describe, expect, test } from "vitest";
import { SheetError } from "../../src/worksheet/error";
import { column, tube } from "./caller";

const sentence = (answer: unknown): string => {
  const first = [answer].flat(2)[0];
  return first instanceof SheetError ? first.message : JSON.stringify(answer);
};

describe("days is blank beside an answer", () => {
  test.each(["no", "No", "n", false, "0", "yes", 1])("failed %j", (failed) => {
    const days = column([10, "", 30]);
    const answers = column(["yes", failed, "no"]);
    expect(sentence(tube("LIFETABLE", days, answers))).toBe("days is missing in row 2");
    expect(sentence(tube("LIFEQUANTILE", days, answers))).toBe("days is missing in row 2");
  });

  test("a 0 that Excel may have made of a blank is one", () => {
    const answer = tube("LIFETABLE", column([10, 0, 30]), column(["yes", 0, "no"]));
    expect(answer).toEqual(tube("LIFETABLE", column([10, 30]), column(["yes", "no"])));
  });

  test("an answer for one list is not kept for another that differs only in that", () => {
    const days = column([10, "", 30]);
    expect(tube("LIFETABLE", days, column([1, 0, 0]))).toBeInstanceOf(Array);
    expect(sentence(tube("LIFETABLE", days, column([1, "no", 0])))).toBe("days is missing in row 2");
    expect(tube("LIFETABLE", days, column([1, 0, 0]))).toBeInstanceOf(Array);
  });
});

test("a check with volumes but without its day is named", () => {
  const dates = column(["2026-01-01", "", "2026-01-15", "2026-01-22"]);
  const answer = tube("BALLOONTREND", dates, column([5, "0 mL", 4, 4]), column([5, 0, 5, 5]));
  expect(sentence(answer)).toBe("date is missing in row 2");
});
