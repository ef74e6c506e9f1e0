/** Record a change: the old tube goes to Changes, the list takes the new one, and both sheets stay in step. */
import { describe, expect, test } from "vitest";
import { day } from "../../../src/worksheet/dates";
import {
  afterChange,
  planChange,
  retyped,
  startOfChange,
  surveyChange,
  type ChangeForm,
} from "../../../taskpane/actions/record-change";
import { addressOf, type Parts, type RowOf } from "./book";
import { apply, everything, faultsOf, open, planned, rowsIn } from "./kit";

const TODAY = day("2026-11-26");
const person: RowOf = {
  ID: "03-04",
  Status: "active",
  Born: day("2019-05-04"),
  Access: "G",
  "Stoma made": day("2024-01-08"),
  "Held by": "balloon",
  "Known from": "record",
  Shape: "low-profile",
  "Size Fr": "14FR",
  "Length cm": 2.3,
  "Device in": day("2026-09-01"),
  Lot: "1E5",
  Item: "09876543210987",
  "Fill mL": 5,
  "Most mL": 7,
  "Booked for": day("2026-12-01"),
  "Lying cm": 2,
  "Sitting cm": 2.2,
  "Measured on": day("2026-09-01"),
  "Weight then kg": 18.4,
  "Date set by placing team": day("2026-11-30"),
  Notes: "quiet",
};
const names = { PH_Max: 5, Size_Least: 5, Size_Most: 30, Length_Most: 10, First_Days: 14 };
const typed: Partial<ChangeForm> = {
  ...{ reason: "planned", where: "home", unplanned: "no", changedBy: "carer", confirmedBy: "pH", pH: "4.5" },
  ...{ knownFrom: "label", size: "14", lot: "=A1" },
};

async function change(more: Partial<ChangeForm> = {}, cells: RowOf = {}, parts: Parts = {}) {
  const tubes = [
    { ...person, ID: "D-009" },
    { ...person, ...cells },
  ];
  const opened = await open({ tubes, names, ...parts }, "03-04");
  const survey = await surveyChange(opened.workbook, opened.caseload, opened.device);
  const form = { ...startOfChange(opened.device, TODAY), ...typed, ...more };
  return { ...opened, survey, plan: planChange(survey, form, TODAY) };
}

describe("what is written", () => {
  test("the old tube in Changes as it stood, the new one in the list", async () => {
    const { workbook, survey, plan } = await change({ out: "2026-11-25", deviceIn: "2026-11-26", hoursOut: "20" });
    const recording = planned(plan);
    const before = await everything(workbook);
    const receipt = await apply(workbook, recording.change);
    expect(receipt.outcome).toBe("done");
    expect(await rowsIn(workbook, "changes")).toEqual([
      {
        ...{
          ID: "03-04",
          Access: "G",
          "Held by": "balloon",
          Shape: "low-profile",
          "Size Fr": "14FR",
          "Length cm": 2.3,
        },
        ...{
          "Fill mL": 5,
          Lot: "1E5",
          In: day("2026-09-01"),
          Out: day("2026-11-25"),
          Reason: "planned",
          Where: "home",
        },
        ...{ "Unplanned visit": "no", "Hours out": 20, "Changed by": "carer", "Position confirmed by": "pH", pH: 4.5 },
        ...{ "New held by": "balloon", "New shape": "low-profile", "New size Fr": 14, "New length cm": 2.3 },
        ...{ "New lot": "=A1", "New fill put in mL": 5 },
      },
    ]);
    const [other, changed] = await rowsIn(workbook, "tubes");
    expect(other).toEqual({ ...person, ID: "D-009" });
    const kept = Object.fromEntries(
      Object.entries(person).filter(([header]) => !["Item", "Booked for"].includes(header)),
    );
    expect(changed).toEqual({
      ...kept,
      ...{ "Size Fr": 14, "Device in": day("2026-11-26"), Lot: "=A1", "Known from": "label" },
    });
    const said = afterChange(survey, recording, receipt);
    expect(said.canTakeBack).toBe(true);
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(await everything(workbook)).toBe(before);
  });

  test("what goes out is what comes into the log, cell by cell, for every kind of cell", async () => {
    for (const cells of [
      {},
      { "Device in": "n/k" },
      { "Size Fr": "12/14" },
      { Lot: null },
      { "Held by": "PEG" },
    ] as RowOf[]) {
      const { workbook, plan } = await change({ heldBy: "balloon", fill: "5", most: "7" }, cells);
      await apply(workbook, planned(plan).change);
      const [log] = await rowsIn(workbook, "changes");
      const old = { ...person, ...cells };
      for (const header of ["Held by", "Shape", "Size Fr", "Length cm", "Fill mL", "Lot"])
        expect(log![header] ?? null).toEqual(old[header]);
      expect(log!.In ?? null).toEqual(old["Device in"]);
    }
  });

  test("a change of type empties what belongs to the old type", async () => {
    const { device } = await change();
    const start = { ...startOfChange(device, TODAY), ...typed };
    const form = retyped(device, start, { heldBy: "bumper", shape: "long" });
    expect([form.length, form.fill, form.most]).toEqual(["", "", ""]);
    const { workbook, plan } = await change(form);
    await apply(workbook, planned(plan).change);
    const row = (await rowsIn(workbook, "tubes"))[1]!;
    for (const header of ["Length cm", "Fill mL", "Most mL", "Lying cm", "Sitting cm", "Measured on", "Weight then kg"])
      expect(row[header], header).toBeUndefined();
    expect(row).toMatchObject({ "Held by": "bumper", Shape: "long", Notes: "quiet" });
  });

  test("the same type keeps the fit, but not marks that were read at the old tube", async () => {
    const { workbook, plan } = await change({}, { "Mark then cm": 3, "Mark now cm": 3.5, "Play mm": 8 });
    await apply(workbook, planned(plan).change);
    const row = (await rowsIn(workbook, "tubes"))[1]!;
    expect([row["Lying cm"], row["Mark then cm"], row["Mark now cm"], row["Play mm"]]).toEqual([
      2,
      undefined,
      undefined,
      undefined,
    ]);
  });

  test("a date of the placing team that has come is emptied, a later one is told", async () => {
    const spent = await change({}, { "Date set by placing team": day("2026-11-26") });
    await apply(spent.workbook, planned(spent.plan).change);
    expect((await rowsIn(spent.workbook, "tubes"))[1]!["Date set by placing team"]).toBeUndefined();
    expect(planned((await change()).plan).says.join(" ")).toContain("stays as it is");
  });

  test("a change of type also empties what was agreed for the old type, and says so", async () => {
    const agreed = { "Own interval months": 24, "Date set by placing team": day("2028-05-01") };
    const same = await change({}, agreed);
    await apply(same.workbook, planned(same.plan).change);
    expect((await rowsIn(same.workbook, "tubes"))[1]).toMatchObject(agreed);
    const other = await change({ heldBy: "loop", fill: "", most: "", changedBy: "radiology" }, agreed);
    expect(planned(other.plan).says.join(" ")).toMatch(/agreed for another type of tube.*emptied/);
    expect(planned(other.plan).says.join(" ")).not.toContain("stays as it is");
    await apply(other.workbook, planned(other.plan).change);
    for (const header of Object.keys(agreed))
      expect((await rowsIn(other.workbook, "tubes"))[1]).not.toHaveProperty([header]);
  });

  test.each([
    [{ size: "12" }, "same size"],
    [{ length: "2.7" }, "both"],
    [{ size: "" }, "smaller"],
    [{ heldBy: "not known" }, "same size"],
  ])("a spare for the tube before is not known to be one for a tube with %j", async (more, spare) => {
    const { workbook, plan } = await change(more, { "Spare at home": spare, "Spare Fr": 14 });
    expect(planned(plan).says.join(" ")).toContain("spare at home was for the tube before");
    await apply(workbook, planned(plan).change);
    expect((await rowsIn(workbook, "tubes"))[1]).toMatchObject({ "Spare at home": "not known", "Spare Fr": 14 });
  });

  test.each([
    [{}, "same size"],
    [{ size: "12" }, "none"],
  ])("with %j the spare stays %s", async (more, spare) => {
    const { workbook, plan } = await change(more, { "Spare at home": spare });
    await apply(workbook, planned(plan).change);
    expect((await rowsIn(workbook, "tubes"))[1]).toMatchObject({ "Spare at home": spare });
  });

  test("no longer needed: the list's row is put on left and its tube emptied", async () => {
    const { workbook, plan } = await change({ reason: "no longer needed" });
    expect(planned(plan).asks.join(" ")).toContain('put on "left"');
    await apply(workbook, planned(plan).change);
    const row = (await rowsIn(workbook, "tubes"))[1]!;
    expect(row).toEqual({
      ...{
        ID: "03-04",
        Status: "left",
        Born: person.Born,
        Access: "G",
        "Stoma made": person["Stoma made"],
        Notes: "quiet",
      },
    });
    expect((await rowsIn(workbook, "changes"))[0]).not.toHaveProperty("New held by");
  });

  test("columns that hold formulas are not written, columns that are gone are told", async () => {
    const { workbook, plan } = await change({}, { "Length cm": { formula: "=1+1", value: 2 } });
    expect((await apply(workbook, planned(plan).change)).outcome).toBe("done");
    const without = await change({}, {}, { columns: { changes: ["ID", "Access", "Held by", "In", "Out", "Reason"] } });
    expect(planned(without.plan).says.join(" ")).toMatch(/Not written: Changes has no column "Shape".*"New lot"/);
    expect((await apply(without.workbook, planned(without.plan).change)).outcome).toBe("done");
  });

  test.each([
    ["the row was changed meanwhile", addressOf("tubes", "Device in", 6), day("2026-11-01")],
    ["another person stands there now", "A6", "D-010"],
  ])("nothing is written on either sheet when %s", async (_, address, value) => {
    const { workbook, plan } = await change();
    workbook.type("Tubes in use", address, value);
    const before = await everything(workbook);
    expect((await apply(workbook, planned(plan).change)).outcome).toBe("refused");
    expect(await everything(workbook)).toBe(before);
  });

  test("nothing is written on either sheet when there is no room below Changes", async () => {
    const { workbook, plan } = await change({}, {}, { changes: [{ ID: "D-002", Access: "G", Reason: "planned" }] });
    workbook.type("Changes", "A6", "a remark of the clinic");
    const before = await everything(workbook);
    expect((await apply(workbook, planned(plan).change)).outcome).toBe("refused");
    expect(await everything(workbook)).toBe(before);
  });
});

describe("a new tube that ends elsewhere", () => {
  /* Great Ormond Street, Starship and the cautions: never turned, never changed at home, no bolus into the bowel. */
  const toBowel = { access: "GJ", changedBy: "radiology", confirmedBy: "X-ray or contrast", pH: "" } as const;
  const arranged = {
    ...{ "Changed by": "carer", Turning: "weekly", "Own tube-out plan": "yes", "Trained for tube out": "put in spare" },
    ...{ "Own interval months": 3, "Spare at home": "same size", "Checked by": "nurse" },
  };

  test("the list's row takes the new access, the log keeps the old one, and both go back", async () => {
    const { workbook, plan } = await change(toBowel, arranged);
    const before = await everything(workbook);
    const recording = planned(plan);
    expect(recording.rows.map(({ lines }) => lines.find(({ header }) => header === "Access")?.text)).toEqual([
      "G",
      "GJ",
    ]);
    const receipt = await apply(workbook, recording.change);
    expect(receipt.outcome).toBe("done");
    const [other, row] = await rowsIn(workbook, "tubes");
    expect(other).toEqual({ ...person, ID: "D-009" });
    expect((await rowsIn(workbook, "changes"))[0]).toMatchObject({ ID: "03-04", Access: "G", In: person["Device in"] });
    expect(row).toMatchObject({
      ...{ ID: "03-04", Access: "GJ", "Held by": "balloon", "Checked by": "nurse", Notes: "quiet" },
      ...{ "Changed by": "not decided", Turning: "never", "Spare at home": "not known", "Own tube-out plan": "yes" },
    });
    const emptied = ["Own interval months", "Date set by placing team", "Booked for", "Lying cm", "Measured on"];
    for (const header of emptied) expect(row, header).not.toHaveProperty([header]);
    const said = recording.says.join(" ");
    expect(said).toMatch(/Own interval months and Date set by placing team: agreed for another type.*emptied/);
    expect(said).toMatch(/GJ tube is never changed by a carer, so it is put on “not decided”/);
    expect(said).toMatch(/must not be turned, so it is put on “never”/);
    expect(said).toContain("As before: Trained for tube out and Own tube-out plan.");
    expect(recording.advice.join(" ")).toMatch(/no bolus.*never turn, never change at home/);
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(await everything(workbook)).toBe(before);
  });

  test("fill, label and length of the old tube are not offered for it", async () => {
    const { device } = await change();
    const start = startOfChange(device, TODAY);
    const other = retyped(device, start, { access: "J" });
    expect([other.length, other.fill, other.most]).toEqual(["", "", ""]);
    expect(retyped(device, start, { access: "G" })).toEqual({ ...start, access: "G" });
  });

  test.each([{}, { access: "G" }])("with %j Access is not written, and nothing is emptied for it", async (more) => {
    const { workbook, plan } = await change(more, arranged);
    const recording = planned(plan);
    expect(recording.rows[1]!.lines.map(({ header }) => header)).not.toContain("Access");
    await apply(workbook, recording.change);
    expect((await rowsIn(workbook, "tubes"))[1]).toMatchObject({ Access: "G", ...arranged });
    expect(recording.asks).toEqual([]);
  });

  test("who changes it stays where it is not the carer, and is told", async () => {
    const { workbook, plan } = await change(toBowel, { "Changed by": "nurse in clinic", Turning: "never" });
    expect(planned(plan).says.join(" ")).toContain("As before: Changed by.");
    expect(planned(plan).says.join(" ")).not.toContain("Turning");
    await apply(workbook, planned(plan).change);
    expect((await rowsIn(workbook, "tubes"))[1]).toMatchObject({ "Changed by": "nurse in clinic", Turning: "never" });
  });

  test("back into the stomach: turning is not known any more, and the feed plan is doubtful", async () => {
    const cells = { Access: "GJ", Turning: "never", "Changed by": "radiology" };
    const { workbook, plan } = await change({ access: "G", changedBy: "radiology" }, cells);
    expect(planned(plan).advice.join(" ")).toMatch(/feed ends in the stomach now.*Ask before feeding/);
    expect(planned(plan).says.join(" ")).toMatch(/Turning: said of a tube that ended elsewhere, so emptied/);
    await apply(workbook, planned(plan).change);
    expect((await rowsIn(workbook, "tubes"))[1]).toMatchObject({ Access: "G", "Changed by": "radiology" });
    expect((await rowsIn(workbook, "tubes"))[1]).not.toHaveProperty(["Turning"]);
  });

  test("a stitched tube is not turned wherever it ends", async () => {
    const cells = { Access: "GJ", Turning: "weekly" };
    const { workbook, plan } = await change({ access: "G", heldBy: "stitched", fill: "", most: "" }, cells);
    await apply(workbook, planned(plan).change);
    expect((await rowsIn(workbook, "tubes"))[1]).toMatchObject({ Turning: "never" });
  });

  test.each([
    /* Changed by a carer: neither what came out nor what went in may be one of the bowel. */
    [{ ...toBowel, changedBy: "carer" }, {}, "a GJ tube is never changed at home"],
    [{ access: "G" }, { Access: "J" }, "a J tube is never changed at home"],
    [toBowel, {}, "will say that the feed ends in: GJ, through the opening made on 8 Jan 2024"],
    [{ access: "G" }, { Access: null }, "will say that the feed ends in: G,"],
  ] as [Partial<ChangeForm>, RowOf, string][])("%j %j asks", async (more, cells, ask) => {
    expect(planned((await change(more, cells)).plan).asks.join(" ")).toContain(ask);
  });

  test("the position is judged by where the new tube ends", async () => {
    const toGJ = planned((await change({ ...toBowel, confirmedBy: "pH", pH: "4" })).plan).advice[0];
    expect(toGJ).toMatch(/^Position not confirmed.*seen by imaging/);
    const toG = { access: "G", changedBy: "radiology", confirmedBy: "pH", pH: "4" };
    expect(planned((await change(toG, { Access: "GJ" })).plan).advice[0]).toMatch(/^pH 4 is not above 5\./);
  });

  test("an access that a second row of the person has is refused in words", async () => {
    const opened = await open(
      { tubes: [person, { ...person, Access: "J" }, { ...person, ID: "D-009" }], names },
      "03-04",
    );
    const survey = await surveyChange(opened.workbook, opened.caseload, opened.device);
    const planFor = (access: string) =>
      planChange(survey, { ...startOfChange(opened.device, TODAY), ...typed, changedBy: "radiology", access }, TODAY);
    expect(faultsOf(planFor("J"))).toEqual([
      'access: Where the feed ends: "03-04" stands with J in the list already (row 6). One row is one tube, so record the change there, or put that row right first.',
    ]);
    const plan = planned(planFor("GJ"));
    opened.workbook.type("Tubes in use", addressOf("tubes", "Access", 6), "GJ");
    const before = await everything(opened.workbook);
    expect((await apply(opened.workbook, plan.change)).outcome).toBe("refused");
    expect(await everything(opened.workbook)).toBe(before);
  });

  test("where no tube follows, where it would have ended is not asked", async () => {
    const { workbook, plan } = await change({ reason: "left", access: "GJ" });
    await apply(workbook, planned(plan).change);
    expect((await rowsIn(workbook, "tubes"))[1]).toMatchObject({ Access: "G", Status: "left" });
  });

  test("a word that is none of the list is refused", async () => {
    expect(faultsOf((await change({ access: "PEG" })).plan)).toContain(
      "access: Where the feed ends: choose one of the list.",
    );
  });
});

describe("position", () => {
  /* 5.0: Sydney; Gilbertson 2011 (the setting PH_Max). Imaging for what lies in the bowel: CHOP, Starship, for GJ changes. */
  const said = async (more: Partial<ChangeForm>, cells: RowOf = {}, limit: unknown = 5) =>
    planned((await change(more, cells, { names: { ...names, PH_Max: limit as number } })).plan).advice[0]!;
  const NOT = /^(Position not confirmed|pH .* position not confirmed).* Nothing goes down this tube until/;

  test.each([
    [{ confirmedBy: "", pH: "" }],
    [{ confirmedBy: "not recorded", pH: "" }],
    [{ confirmedBy: "not recorded", pH: "4" }],
    [{ confirmedBy: "pH", pH: "" }],
    [{ confirmedBy: "pH", pH: "5.1" }],
  ])("%j is not confirmed", async (more) => expect(await said(more)).toMatch(NOT));

  test.each(["GJ", "J", "PEG"])("%s is not confirmed by a pH", async (Access) => {
    const text = await said({ changedBy: "radiology", confirmedBy: "pH", pH: "4" }, { Access });
    expect(text).toMatch(NOT);
    expect(text).toContain("seen by imaging");
  });

  test("a pH at the limit is no proof either", async () => {
    expect(await said({ pH: "5" })).toBe(
      "pH 5 is not above 5. A low pH is not proof either: acid medicine and recent feed mislead.",
    );
  });

  test("a limit above what may be agreed is not believed", async () => {
    expect(await said({ pH: "6" }, {}, 7)).toMatch(NOT);
    expect(await said({ pH: "5.5" }, {}, 5.5)).not.toMatch(NOT);
    expect(await said({ pH: "5.5" }, {}, "five")).toMatch(NOT);
  });
});

describe("what is asked again or refused", () => {
  test.each([
    [{}, { Access: "GJ" }, "a GJ tube is never changed at home"],
    [{}, { Access: "J" }, "a J tube is never changed at home"],
    [{}, { "Held by": "bumper" }, "the tube is held by bumper"],
    [{ heldBy: "bumper", fill: "", most: "" }, {}, "the tube is held by bumper"],
    [{ knownFrom: "" }, {}, "how it is known what holds the tube"],
    [{ size: "4.7" }, {}, "4.7 Fr is below 5: is it mm?"],
    [{ size: "36" }, {}, "36 Fr is above 30"],
    [{ length: "" }, {}, "Length cm is blank"],
    [{ fill: "" }, {}, "Fill mL is blank"],
    [{ fill: "8" }, {}, "Fill 8 mL is above the largest volume on the label (7 mL)"],
    [{}, { "Device in": null }, "its life cannot be counted"],
    [{ out: "2026-11-01", deviceIn: "2026-11-26" }, {}, "25 days without a tube"],
    [{ unplanned: "yes" }, {}, "but the visit was not"],
    [
      { reason: "balloon burst", changedBy: "nurse in clinic" },
      { "Held by": "bumper" },
      "but the tube was held by bumper",
    ],
    /* The row keeps Stoma made, and Access unless another is chosen; tube out goes by both. 4 hours: the setting Out_Most (RCH Melbourne). */
    [{ where: "radiology" }, {}, "still says that the feed ends in: G, through the opening made on 8 Jan 2024"],
    [{ where: "theatre" }, { "Stoma made": "n/k" }, "through the opening made on n/k"],
    [{ reason: "change of type" }, { Access: null }, "the feed ends in: not known"],
    [{ out: "2026-11-25", deviceIn: "2026-11-26" }, {}, "or the opening was made again"],
    [{ hoursOut: "4" }, {}, "or the opening was made again"],
  ] as [Partial<ChangeForm>, RowOf, string][])("%j %j asks", async (more, cells, ask) => {
    const start = { heldBy: "balloon", ...more };
    expect(planned((await change(start, cells)).plan).asks.join(" ")).toContain(ask);
  });

  /* What does not apply is not on the screen, so it is neither refused nor written, whatever stands in it still. */
  test.each([
    [{ heldBy: "bumper", fill: "5", most: "7" }, ["New fill put in mL"], ["Fill mL", "Most mL"]],
    [{ shape: "long", length: "2.3" }, ["New length cm"], ["Length cm"]],
    [{ confirmedBy: "X-ray or contrast", pH: "4" }, ["pH"], []],
    [{ where: "home", nights: "3" }, ["Nights"], []],
    [{ reason: "left", confirmedBy: "pH", pH: "99", lot: "1" }, ["pH", "Position confirmed by", "New lot"], []],
  ] as [Partial<ChangeForm>, string[], string[]][])("%j: what does not apply is blank", async (more, log, list) => {
    const { workbook, plan } = await change(more);
    await apply(workbook, planned(plan).change);
    const [logged] = await rowsIn(workbook, "changes");
    const [, row] = await rowsIn(workbook, "tubes");
    for (const header of log) expect(logged).not.toHaveProperty([header]);
    for (const header of list) expect(row).not.toHaveProperty([header]);
  });

  test("what is wrong is told in the order of the screen", async () => {
    const faults = faultsOf(
      (await change({ out: "", reason: "", heldBy: "", size: "14G", nights: "x", where: "" })).plan,
    );
    expect(faults.map((fault) => fault.split(":")[0])).toEqual(["out", "reason", "nights", "heldBy", "size"]);
  });

  test("a change without any doubt asks nothing", async () => {
    expect(planned((await change()).plan).asks).toEqual([]);
  });

  test.each([
    [{ out: "2026-11-27" }, "out: Came out on: this day is in the future."],
    [{ out: "2026-08-31" }, "out: Came out on: this is before the tube was put in (1 Sep 2026)."],
    [{ out: "2026-11-20", deviceIn: "2026-11-19" }, "deviceIn: Went in on: this is before the old tube came out."],
    [{ reason: "" }, "reason: Reason: choose one."],
    [{ heldBy: "" }, "heldBy: Held by: choose one; “not known” is an answer."],
    [{ length: "23" }, "length: Length: from 0.5 to 10 cm."],
    [{ size: "14G" }, "size: Size, Fr: G means gauge; write Fr."],
    [{ size: "12/14" }, 'size: Size, Fr: "12/14" holds more than one number: write one size.'],
    [{ pH: "15" }, "pH: pH: from 0 to 14 pH."],
    [{ hoursOut: "241" }, "hoursOut: Hours without a tube: from 0 to 240 hours."],
  ])("%j is refused", async (more, fault) => {
    expect(faultsOf((await change(more)).plan)).toContain(fault);
  });

  test("a larger tube and the spare's lot are told", async () => {
    const { advice } = planned((await change({ size: "16", lot: "s77" }, { "Spare lot": "S77" })).plan);
    expect(advice.join(" ")).toMatch(/14 to 16 Fr\): a leak is not cured by a larger tube/);
    expect(advice.join(" ")).toMatch(/This lot is the spare’s/);
  });
});
