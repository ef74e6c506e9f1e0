/** Names under which programs leave our functions behind, and what must stay as it is. */
import { describe, expect, it } from "vitest";
import { repaired } from "../../src/formula/repair";

const names = new Set(["FRTOMM", "RATE", "CHANGEDUE"]);

describe("a formula that lost our function", () => {
  it.each([
    ["=_xldudf_TUBE_FRTOMM(C2)", "=TUBE.FRTOMM(C2)"],
    ["=_xldudf_tube_frtomm(C2)", "=TUBE.FRTOMM(C2)"],
    ["=_xlfn._xldudf_TUBE_FRTOMM(C2)", "=TUBE.FRTOMM(C2)"],
    ["=_xlfn.TUBE.FRTOMM(C2)", "=TUBE.FRTOMM(C2)"],
    ["=_xludf.TUBE.FRTOMM(C2)", "=TUBE.FRTOMM(C2)"],
    ["=[1]!TUBE.FRTOMM(C2)", "=TUBE.FRTOMM(C2)"],
    ["='C:\\Tubes\\tubes.xlam'!TUBE.FRTOMM(C2)", "=TUBE.FRTOMM(C2)"],
    ["=tubes.xlam!TUBE.FRTOMM(C2)", "=TUBE.FRTOMM(C2)"],
    ['=IF(C2="","",FRTOMM(C2))', '=IF(C2="","",TUBE.FRTOMM(C2))'],
    ["=tube.frtomm(C2)+_xldudf_TUBE_CHANGEDUE(D2,3)", "=TUBE.FRTOMM(C2)+TUBE.CHANGEDUE(D2,3)"],
    ["=TUBE.FRTOMM(C2)", "=TUBE.FRTOMM(C2)"],
  ])("%s", (lost, found) => {
    expect(repaired(lost, names)).toBe(found);
  });

  it.each([
    ["Excel's own RATE", "=RATE(C2,D2,E2)"],
    ["a text", '="_xldudf_TUBE_FRTOMM(C2)"'],
    ["a function that we do not have", "=TUBE.NONE(C2)"],
    ["another's function", "=_xldudf_OTHER_FRTOMM(C2)"],
    ["a name", "=FRTOMM+1"],
  ])("leaves alone %s", (_, formula) => {
    expect(repaired(formula, names)).toBeNull();
  });
});
