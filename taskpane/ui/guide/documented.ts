/** Every function with what it says of itself: the pane's scripts are built without that (functions/documentation.ts). */
import { withDocumentation, type DocumentationByName } from "../../../functions/documentation";
import written from "../../../functions/generated/documentation.json";
import { functions as definitions } from "../../../src/index";

export const functions = withDocumentation(definitions, written as unknown as DocumentationByName);
