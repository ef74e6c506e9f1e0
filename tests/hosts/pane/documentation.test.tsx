/** The guide's data is what the definitions say, through JSON and back. */
import { expect, test } from "vitest";
import { documentation, withDocumentation, type DocumentationByName } from "../../../functions/documentation";
import written from "../../../functions/generated/documentation.json";
import { functions } from "../../../src/index";

test("the written file is current: npm run generate", () => {
  expect(written).toEqual(JSON.parse(JSON.stringify(documentation(functions))));
});

test("nothing is lost on the way into the guide", () => {
  const bare = functions.map((each) => ({ ...each, documentation: undefined }));
  const back = withDocumentation(bare, written as unknown as DocumentationByName);
  expect(back.map((each) => each.documentation)).toEqual(functions.map((each) => each.documentation));
});
