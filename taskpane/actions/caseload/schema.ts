/** Which description this caseload was set up by, from what is at hand. */
import { FIRST_SCHEMA, SCHEMA, SCHEMA_NAME } from "../../../src/caseload/schema";
import type { Overview } from "../../workbook/port";
import { named, namesOf } from "./read";
import { recogniseCaseload } from "./recognise";

/** Null where the workbook is no caseload, or its number cannot be read. */
export function schemaOf(overview: Overview): number | null {
  if (recogniseCaseload(overview).is !== "caseload") return null;
  const isNamed = overview.names.some(({ name }) => name.toLowerCase() === SCHEMA_NAME.toLowerCase());
  if (!isNamed) return FIRST_SCHEMA;
  const number = named(namesOf(overview), SCHEMA_NAME);
  return typeof number === "number" && Number.isInteger(number) && number > FIRST_SCHEMA ? number : null;
}

/** Set up by an earlier description than this one: something here is not in it. */
export function isOlder(overview: Overview): boolean {
  const schema = schemaOf(overview);
  return schema !== null && schema < SCHEMA;
}
