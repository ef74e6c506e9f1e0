/** Record a check: what it means, what is asked again, what is written, and that it can be taken back. */
import { describe, expect, test } from "vitest";
import { MOST_CHECKS } from "../../../src/caseload/limits";
import { day } from "../../../src/worksheet/dates";
import { stillStands } from "../../../taskpane/actions/caseload/fresh";
import { afterCheck, planCheck, surveyCheck, type CheckForm } from "../../../taskpane/actions/record-check";
import { addressOf, type Parts, type RowOf } from "./book";
import { apply, everything, faultsOf, open, planned, rowsIn } from "./kit";

const TODAY = day("2026-11-26");
const person: RowOf = {
  ID: "D-001",
  Status: "active",
  Born: day("2019-05-04"),
  Access: "G",
  "Stoma made": day("2024-01-08"),
  "Held by": "balloon",
  Shape: "low-profile",
  "Size Fr": 14,
  "Device in": day("2026-09-01"),
  "Fill mL": 5,
  "Most mL": 7,
};
const names = {
  ...{ Check_First: 28, Check_Days: 7, Check_AfterChange: 7, Loss_Small: 0.5, Loss_Large: 1, Loss_Again: 1 },
  ...{ Loss_Twice: 2, Volume_Most: 60, Rate_Days: 3 },
};
const form: CheckForm = {
  ...{
    checkedOn: "2026-11-26",
    out: "4.8",
    looked: "clear",
    putIn: "5",
    water: "fresh",
    by: "nurse",
    howKnown: "seen",
  },
  note: "",
};

async function check(typed: Partial<CheckForm> = {}, parts: Parts = {}) {
  const opened = await open({ tubes: [person], names, ...parts }, "D-001");
  const survey = await surveyCheck(opened.workbook, opened.caseload, opened.meant, opened.device);
  return { ...opened, survey, plan: planCheck(survey, { ...form, ...typed }, TODAY) };
}
const earlier = (on: string, out: number | null, putIn: number | null, more: RowOf = {}): RowOf => ({
  ...{ ID: "D-001", "Checked on": day(on), "Out mL": out, "Put in mL": putIn },
  ...more,
});

describe("what it means", () => {
  /* Words: the rule of BALLOONSTATE. 0.5 mL: SickKids. What to do: the service’s sentences on the check card for home. */
  test.each([
    ["4.8", "as filled", /balloons burst without warning/],
    ["4.5", "as filled", /balloons burst without warning/],
    ["4.4", "low", /call the same day.*agreed 5 mL, never above the label, and check again the next day/],
    ["2.5", "half or less", /call the same day/],
    ["0", "empty", /^Empty: put nothing in\. Tape the tube to the skin where it lies, nothing down it, call now\.$/],
    ["5.6", "more than put in", /Look at the fluid, measure again, call the same day/],
    ["", "not measured", /nothing is known about this balloon/],
  ])("%s mL out of 5: %s", async (out, state, advice) => {
    const { meaning } = planned((await check({ out })).plan);
    expect(meaning.state).toBe(state);
    expect(meaning.advice.join(" ")).toMatch(advice);
    expect(meaning.isUrgent).toBe(!["as filled", "not measured"].includes(state));
    if (state !== "as filled") expect(meaning.advice.join(" ")).not.toContain("agree, and");
  });

  /* A tube that has slipped is inflated in its tract: refilled only where the opening is mature, and then with conditions. */
  const mature = {
    ...person,
    ...{
      "First tube": "no",
      "Slow healing": "no",
      "Known from": "record",
      "Trained for tube out": "put in spare",
      "Own tube-out plan": "yes",
    },
  };
  /* As near to empty as makes no difference: 0.1 mL holds no tube either. */
  test.each(["0.1", "2.5"])("%s mL came out of 5: filled only where an empty one may be", async (out) => {
    const inMature = planned((await check({ out }, { tubes: [mature] })).plan).meaning;
    expect(inMature.advice[0]).toMatch(
      /call the same day\. Only if the tube is at its usual mark.*: fill to the agreed 5 mL/,
    );
    const inOther = planned((await check({ out })).plan).meaning;
    expect(inOther.advice.join(" ")).toMatch(/call the same day\. Put nothing in before somebody/);
    expect(inOther.advice.join(" ")).not.toMatch(/[Ff]ill to/);
  });
  test.each([
    ["4", "0", "low", /Left empty: nothing holds the tube/],
    ["4", "12", "low", /Above the label \(7 mL\)/],
    ["0", "0", "empty", /Left empty/],
  ])("%s mL came out and %s went in: both are said", async (out, putIn, state, says) => {
    const { meaning } = planned((await check({ out, putIn })).plan);
    expect(meaning.state).toBe(state);
    expect(meaning.advice.join(" ")).toMatch(says);
    expect(meaning.isUrgent).toBe(true);
  });
  test("nothing came out of a balloon in a mature gastrostomy: who is trained, and has a plan, may refill it", async () => {
    const { meaning } = planned((await check({ out: "0" }, { tubes: [mature] })).plan);
    expect(meaning.advice).toEqual([
      "Empty: put nothing in. Tape the tube to the skin where it lies, nothing down it, call now.",
      "Only if the tube is at its usual mark, or lies flat as usual, and moves freely: if you are trained and this person’s own plan says so, put the agreed 5 mL of fresh water in, never above the label, and tell us today: the tube has to be changed soon.",
    ]);
  });
  test.each([
    ["opening made ten weeks ago", { "Stoma made": day("2026-09-17"), "Device in": day("2026-09-17") }],
    ["opening made yesterday", { "Stoma made": day("2026-11-25"), "Device in": day("2026-11-25") }],
    ["the day of the opening not known", { "Stoma made": "n/k" }],
    ["the opening in the future", { "Stoma made": day("2027-01-01") }],
    ["the first tube", { "Device in": day("2024-01-09") }],
    ["slow healing", { "Slow healing": "yes" }],
    ["slow healing not known", { "Slow healing": null }],
    ["GJ", { Access: "GJ" }],
    ["J", { Access: "J" }],
    ["access not known", { Access: null }],
    ["a bumper", { "Held by": "bumper" }],
    ["ask where that is known from", { "Known from": "not known" }],
    ["a catheter", { "Held by": "catheter" }],
    ["no agreed fill", { "Fill mL": null }],
    ["an agreed fill above the label", { "Fill mL": 8 }],
    ["somebody who has left", { Status: "left" }],
  ] as [string, RowOf][])("nothing came out, and %s: put nothing in, and no more than that", async (_, cells) => {
    const { meaning } = planned((await check({ out: "0" }, { tubes: [{ ...mature, ...cells }] })).plan);
    const said = meaning.advice.join(" ");
    expect(said).toMatch(/[Pp]ut (nothing|no water) in/);
    expect(said).not.toMatch(/put the agreed|Only if the tube/);
    expect(meaning.isUrgent).toBe(true);
  });

  test.each([
    [
      "0",
      "left empty",
      /^Left empty: nothing holds the tube\. Tape it to the skin where it lies, nothing down it, call now\./,
      true,
    ],
    ["7.1", "above the label", /Above the label.*call now/, true],
    ["4.4", "not the agreed fill", /not the agreed 5 mL/, false],
    ["", "put in not known", /not written down how much was put in/, false],
  ] as const)("out as expected, put in %s: %s", async (putIn, state, advice, isUrgent) => {
    const { meaning } = planned((await check({ putIn, out: "5" })).plan);
    expect([meaning.state, meaning.isUrgent]).toEqual([state, isUrgent]);
    expect(meaning.advice.join(" ")).toMatch(advice);
    expect(meaning.advice.join(" ")).not.toContain("agree, and");
  });
  test("cloudy is asked about, whatever the figures say", async () => {
    const { meaning } = planned((await check({ looked: "cloudy" })).plan);
    expect(meaning.state).toBe("cloudy: ask");
    expect(meaning.advice.join(" ")).not.toContain("agree, and");
  });

  test("milky fluid is bad news whatever the volume", async () => {
    const { meaning } = planned((await check({ looked: "milky, yellow or like feed" })).plan);
    expect(meaning.state).toBe("milky fluid");
    expect(meaning.advice[0]).toMatch(/burst, or the wrong port was used\. Call the same day/);
    expect(meaning.isUrgent).toBe(true);
  });

  test("expected is what was put in last time into this balloon", async () => {
    const checks = [earlier("2026-08-30", 2, 3), earlier("2026-11-19", 4.9, 6), earlier("2026-11-12", 5, 5)];
    const { meaning } = planned((await check({ out: "5.4" }, { checks })).plan);
    expect([meaning.expected, meaning.loss, meaning.state, meaning.daysSinceFill]).toEqual([6, 0.6, "as filled", 7]);
    expect(meaning.figures[0]).toBe("Expected 6 mL (put in last time).");
  });

  test.each([
    ["no earlier check", []],
    ["only checks of an earlier balloon", [earlier("2026-08-30", 2, 3)]],
    [
      "only checks of another person and of another device",
      [earlier("2026-11-19", 2, 3, { ID: "D-002" }), earlier("2026-11-19", 2, 3, { Access: "J" })],
    ],
    ["put in not written down last time", [earlier("2026-11-12", 5, 4), earlier("2026-11-19", 5, null)]],
  ])("%s: the agreed fill", async (_, checks) => {
    const { meaning } = planned((await check({}, { checks })).plan);
    expect([meaning.expected, meaning.figures[0]]).toEqual([5, "Expected 5 mL (the agreed fill)."]);
  });

  test("nothing to compare with gives no word", async () => {
    const { meaning } = planned((await check({}, { tubes: [{ ...person, "Fill mL": "3-5 mL" }] })).plan);
    expect(meaning.state).toBe("not measured");
    expect(meaning.figures[0]).toMatch(/nothing to compare with/);
  });

  test.each([
    [
      "put in last time cannot be read",
      "4.8",
      { checks: [earlier("2026-11-19", 5, null, { "Put in mL": "five" })] },
      "not measured",
    ],
    ["nothing was put in last time", "4.8", { checks: [earlier("2026-11-19", 0, 0)] }, "not measured"],
    ["nothing is known of the fill", "0", { tubes: [{ ...person, "Fill mL": null }] }, "empty"],
    ["the day of the device is not known", "5", { tubes: [{ ...person, "Device in": "n/k" }] }, "check date"],
    ["it is no balloon", "5", { tubes: [{ ...person, "Held by": "PEG" }] }, null],
    ["the clinic reads the syringe closer", "5.4", { names: { ...names, Over_Read: 0.3 } }, "more than put in"],
    ["the clinic draws the half higher", "3.8", { names: { ...names, Loss_Half: 0.8 } }, "half or less"],
    ["the clinic draws the half lower", "2.4", { names: { ...names, Loss_Half: 0.3 } }, "half or less"],
  ] as [string, string, Parts, string | null][])(
    "figures that agree are not enough where %s",
    async (_, out, parts, state) => {
      expect(planned((await check({ out }, parts)).plan).meaning.state).toBe(state);
    },
  );

  test.each([
    ["0", "bumper"],
    ["2", "bumper"],
    ["4", "button"],
    ["6", "loop"],
  ])("%s mL out of what is not known as a balloon (%s): call before any water is put in", async (out, held) => {
    const parts = { tubes: [{ ...person, "Held by": held }] };
    const advice = planned((await check({ out }, parts)).plan).meaning.advice.join(" ");
    expect(advice).toMatch(/Put no water in .* tape the tube to the skin, call now/);
    expect(advice).not.toMatch(/agreed|never above the label/);
  });

  test.each(["0", "4"])("%s mL out, and the agreed fill is above the label: no such fill is advised", async (out) => {
    const parts = { tubes: [{ ...person, "Fill mL": 10 }], checks: [earlier("2026-11-19", 5, 5)] };
    const advice = planned((await check({ out }, parts)).plan).meaning.advice.join(" ");
    expect(advice).not.toContain("10 mL");
    expect(advice).toContain(out === "0" ? "put nothing in" : "the agreed fill (it is above the label: ask)");
  });

  test("low twice in a row: plan a change; a check that measured nothing does not end the row, a full one does", async () => {
    const said = async (outs: readonly (number | null)[]) => {
      const checks = outs.map((out, i) => earlier(`2026-11-0${i + 1}`, out, 5));
      return planned((await check({ out: "4" }, { checks })).plan).meaning.advice.join(" ");
    };
    expect(await said([])).not.toContain("in a row");
    expect(await said([4.2])).toContain("Low 2 times in a row: plan a change.");
    expect(await said([4.2, null])).toContain("Low 2 times in a row");
    expect(await said([4.2, 5])).not.toContain("in a row");
  });

  test("the clinic's own limit counts, and more than the label is refused a word", async () => {
    const low = async (Loss_Small: number) =>
      planned((await check({ out: "4.4" }, { names: { ...names, Loss_Small } })).plan).meaning.state;
    expect([await low(1), await low(0.2)]).toEqual(["as filled", "low"]);
    const over = planned((await check({ out: "6.5" }, { checks: [earlier("2026-11-19", 5, 7.2)] })).plan).meaning;
    expect(over.state).toBeNull();
    expect(over.advice.join(" ")).toMatch(/contradict each other: expected is above most/);
  });
});

describe("what is asked again or refused", () => {
  test.each([
    [{ putIn: "7.5" }, {}, "above the largest volume on the label (7 mL)"],
    [{ putIn: "4" }, {}, "4 mL is not the agreed fill (5 mL)"],
    [{ putIn: "0" }, {}, "left empty"],
    [{ putIn: "" }, {}, "Put in is blank"],
    [{ looked: "nothing came" }, {}, "Nothing came, but 4.8 mL"],
    [{ looked: "nothing came", out: "" }, {}, "write 0 if the balloon was empty"],
    [
      {},
      { tubes: [{ ...person, "Held by": "bumper", "Fill mL": null }] },
      "No balloon is recorded for this person (held by: bumper)",
    ],
    [
      {},
      { tubes: [{ ...person, "Stoma made": day("2026-11-16"), "Device in": day("2026-11-16") }] },
      "Before 14 Dec 2026",
    ],
    [{}, { tubes: [{ ...person, "Stoma made": "n/k" }] }, "not written down when the opening was made"],
    [{}, { tubes: [{ ...person, "Device in": null }] }, "not written down when this tube was put in"],
    [{}, { tubes: [{ ...person, Status: "left" }] }, 'Status is "left"'],
    [{}, { checks: [earlier("2026-11-26", 5, 5)] }, "A check of this day is there already"],
  ] as [Partial<CheckForm>, Parts, string][])("%j %j asks", async (typed, parts, ask) => {
    expect(planned((await check(typed, parts)).plan).asks.join(" ")).toContain(ask);
  });

  test("a check without any doubt asks nothing", async () => {
    expect(planned((await check()).plan).asks).toEqual([]);
  });

  test.each([
    [{ checkedOn: "2026-11-27" }, "checkedOn: Checked on: this day is in the future."],
    [{ checkedOn: "2026-08-31" }, "checkedOn: Checked on: this is before the tube was put in (1 Sep 2026)."],
    [{ checkedOn: "" }, "checkedOn: Checked on: give the date."],
    [{ out: "61" }, "out: Water that came out: from 0 to 60 mL."],
    [{ out: "3-5" }, "out: Water that came out: type one number of mL."],
    [{ putIn: "1,000" }, "putIn: Water put in: type one number of mL."],
    [
      { out: "", putIn: "", looked: "" },
      "out: Water that came out: nothing was measured and nothing put in, so there is nothing to record.",
    ],
  ])("%j is refused", async (typed, fault) => {
    expect(faultsOf((await check(typed)).plan)).toContain(fault);
  });
});

describe("what is written", () => {
  const computed = [
    "Device in",
    "Days since fill",
    "Expected mL",
    "Loss mL",
    "Loss mL a week",
    "State",
    "Low in a row",
  ];
  const asFormulas = (headers: readonly string[]): RowOf =>
    Object.fromEntries(headers.map((header) => [header, { formula: "=1+1", value: 2 }]));
  const withFormulas: Parts = {
    tubes: [{ ...person, ...asFormulas(["Last check", "Out mL", "Put in mL", "Loss mL", "Check due"]) }],
    checks: [earlier("2026-11-19", 4.9, 5, asFormulas(computed))],
  };

  test("one row in the log; what formulas work out is left to them", async () => {
    const { workbook, survey, plan } = await check({ note: "=A1", out: "4,8" }, withFormulas);
    const recording = planned(plan);
    const before = await everything(workbook);
    const receipt = await apply(workbook, recording.change);
    expect(receipt.outcome).toBe("done");
    expect((await rowsIn(workbook, "checks"))[1]).toMatchObject({
      ...{ ID: "D-001", "Checked on": day("2026-11-26"), "Out mL": 4.8, Looked: "clear", "Put in mL": 5 },
      ...{ Water: "fresh", By: "nurse", "How known": "seen", Note: "=A1" },
    });
    expect(recording.change.steps.map(({ kind }) => kind)).toEqual(["appendRows"]);
    expect(recording.rows[1]!.lines[0]!.text).toMatch(/own formulas/);
    expect(afterCheck(survey, recording, receipt)).toMatchObject({ outcome: "done", canTakeBack: true });
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(await everything(workbook)).toBe(before);
  });

  test("where the columns hold values, the person's row is brought up to date in the same change", async () => {
    const { workbook, plan } = await check({}, { checks: [earlier("2026-11-19", 4.9, 5)] });
    const before = await everything(workbook);
    const receipt = await apply(workbook, planned(plan).change);
    // Loss 5 - 4.8 in 7 days; next check 7 days on.
    expect((await rowsIn(workbook, "tubes"))[0]).toMatchObject({
      ...{ "Last check": day("2026-11-26"), "Out mL": 4.8, "Put in mL": 5, "Loss mL": 0.2 },
      "Check due": day("2026-12-03"),
    });
    expect((await rowsIn(workbook, "checks"))[1]).toMatchObject({
      ...{ "Device in": day("2026-09-01"), "Days since fill": 7, "Expected mL": 5, "Loss mL": 0.2 },
      ...{ "Loss mL a week": 0.2, State: "as filled", "Low in a row": 0 },
    });
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(await everything(workbook)).toBe(before);
  });

  test("a check entered late leaves the later one on the list", async () => {
    const { plan } = await check({ checkedOn: "2026-11-20" }, { checks: [earlier("2026-11-25", 4.9, 5)] });
    expect(planned(plan).change.steps).toHaveLength(1);
    expect(planned(plan).rows[1]!.lines[0]!.text).toBe("stays with the later check of 25 Nov 2026");
  });

  test("Access is written where one person has two devices", async () => {
    const written = async (tubes: readonly RowOf[]) => {
      const step = planned((await check({}, { tubes })).plan).change.steps[0]!;
      return step.kind === "appendRows" ? step.rows[0]!.Access : undefined;
    };
    expect(await written([person])).toBeUndefined();
    expect(await written([person, { ...person, Access: "J" }])).toBe("G");
  });

  test.each([
    ["the row was changed meanwhile", "Tubes in use", addressOf("tubes", "Fill mL", 5), 6],
    ["another person stands there now", "Tubes in use", "A5", "D-009"],
    ["the check that was counted with was changed", "Balloon checks", addressOf("checks", "Put in mL", 5), 4],
  ])("nothing is written when %s", async (_, sheet, address, typed) => {
    const { workbook, plan } = await check({}, { checks: [earlier("2026-11-19", 4.9, 5)] });
    workbook.type(sheet, address, typed);
    const before = await everything(workbook);
    expect((await apply(workbook, planned(plan).change)).outcome).toBe("refused");
    expect(await everything(workbook)).toBe(before);
  });
});

describe("an answer on screen rests on what was read", () => {
  test.each([
    ["a cell of the row", "Tubes in use", addressOf("tubes", "Held by", 5), "bumper", false],
    ["a setting", "Clinic settings", "B1", 14, false],
    ["another person's row", "Tubes in use", addressOf("tubes", "Held by", 6), "bumper", true],
    ["nothing", "Read first", "A1", "Invented people", true],
  ] as const)("%s is typed in", async (_, sheet, address, typed, stands) => {
    const { workbook, caseload, device } = await open({ tubes: [person, { ...person, ID: "D-002" }], names }, "D-001");
    workbook.type(sheet, address, typed);
    expect(await stillStands(caseload, device.row, await workbook.overview(), workbook)).toBe(stands);
  });

  test("a change recorded meanwhile outruns it", async () => {
    const { workbook, caseload, device } = await open(
      { tubes: [person], changes: [{ ID: "D-9", Reason: "left" }], names },
      "D-001",
    );
    await apply(workbook, {
      steps: [{ kind: "appendRows", table: "Device_changes", rows: [{ ID: "D-001" }] }],
      expects: [],
    });
    expect(await stillStands(caseload, device.row, await workbook.overview(), workbook)).toBe(false);
  });
});

/* Beyond that a check's sheet row would run into its day, and a balloon's checks would silently stand in a wrong order. */
test.each([
  [MOST_CHECKS - 1, []],
  [MOST_CHECKS, [expect.stringMatching(/99,000 rows, the most .* Move old checks into another workbook first/)]],
])("with %i rows in Balloon checks", async (dataRows, faults) => {
  const { survey } = await check();
  const { caseload } = survey;
  const full = { ...survey, caseload: { ...caseload, checks: { ...caseload.checks, dataRows } } };
  expect(faultsOf(planCheck(full, form, TODAY))).toEqual(faults);
});
