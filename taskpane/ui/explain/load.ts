/** What an explanation needs beside the pane: every function with what it says of itself. Fetched with the guide's data. */
import { withDocumentation, type DocumentationByName } from "../../../functions/documentation";
import written from "../../../functions/generated/documentation.json";
import { functions as definitions } from "../../../src/index";
import { explainCell } from "../../actions/explain";
import type { Explained } from "../../actions/explain/interface";
import type { Workbook } from "../../workbook/port";

const functions = withDocumentation(definitions, written as unknown as DocumentationByName);

export const explainSelected = (workbook: Workbook): Promise<Explained> => explainCell(workbook, functions);
