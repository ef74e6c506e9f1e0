/** Functions that files spell with a prefix. */
import { NEW_EXCEL_FUNCTIONS } from "@univerjs/engine-formula";
import { expect, it } from "vitest";
import { filePrefix } from "../../../src/formula/newer";

/** Rows of the table in [MS-XLSX] 2.2.3, as they stand there. */
const TABLE = `_xlfn._xlws.FILTER _xlfn._xlws.PY _xlfn._xlws.SORT _xlfn.ACOT _xlfn.AGGREGATE _xlfn.BINOM.DIST.RANGE
  _xlfn.BYROW _xlfn.CEILING.PRECISE _xlfn.CHISQ.INV.RT _xlfn.CHOOSECOLS _xlfn.CONCAT _xlfn.DAYS _xlfn.DROP ECMA.CEILING
  _xlfn.ERF.PRECISE _xlfn.FIELDVALUE _xlfn.FILTERXML _xlfn.FLOOR.MATH _xlfn.FORECAST.ETS.CONFINT _xlfn.FORMULATEXT
  _xlfn.GAMMALN.PRECISE _xlfn.HSTACK _xlfn.IFNA _xlfn.IFS _xlfn.IMSEC`.split(/\s+/);

it.each(TABLE)("%s", (written) => {
  const name = written.replace(/^_xlfn\.(?:_xlws\.)?/, "");
  expect(filePrefix(name) + name).toBe(written);
});

it.each(["SUM", "VLOOKUP", "IFERROR", "NETWORKDAYS.INTL", "WORKDAY.INTL", "ISO.CEILING", "TUBE.FRTOMM"])(
  "%s is as old as the format, or nobody's",
  (name) => expect(filePrefix(name)).toBe(""),
);

it("knows every name that the grid's engine calls new", () => {
  expect([...(NEW_EXCEL_FUNCTIONS as ReadonlySet<string>)].filter((name) => filePrefix(name) === "")).toEqual([]);
});
