/** A change whose reason or dates are missing is said beside every count of changes. */
import { expect, test } from "vitest";
import type { Pictured } from "../../../taskpane/actions/pictures";
import { uncounted } from "../../../taskpane/ui/pictures/uncounted";

const pictured = (leftOut: Pictured["leftOut"]) => ({ leftOut }) as Pictured;

test("past devices are counted, tubes in use are not", () => {
  expect(uncounted(pictured([]))).toEqual([]);
  expect(uncounted(pictured([{ table: "tubes", row: 0, why: "no ID" }]))).toEqual([]);
  const [sentence] = uncounted(
    pictured([
      { table: "changes", row: 0, why: "reason missing or not known" },
      { table: "changes", row: 4, why: "dates missing or wrong" },
    ]),
  );
  expect(sentence).toMatch(/^2 past devices cannot be counted .*there may have been more\.$/);
});
