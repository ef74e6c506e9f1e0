/** The guide's search: what a person means stands first. */
import { expect, test } from "vitest";
import { functions } from "../../../src/index";
import { search } from "../../../taskpane/ui/guide/search";

const names = (typed: string) => search(functions, typed).map(({ name }) => name);

test.each([
  ["change due", "CHANGEDUE"],
  ["TUBE.CHANGEDUE", "CHANGEDUE"],
  ["check due", "CHECKDUE"],
  ["balloon state", "BALLOONSTATE"],
])("%s: %s first", (typed, first) => expect(names(typed)[0]).toBe(first));

test("nothing typed finds all, in their own order", () => {
  expect(names(" ")).toEqual(functions.map(({ name }) => name));
});
