import { describe, expect, it } from "vitest";
import { kinds } from "../../../src/settings/kinds";
import { settingNamed, settings, type SettingName } from "../../../src/settings/index";
import { NO_SOURCE, refuseNumber } from "../../../src/settings/setting";
import { SOON_DAYS } from "../../../src/schedule/duestate";
import { balloon } from "../../../src/columns/recipes/balloon";
import { BALLOONSTATE } from "../../../src/balloon/balloonstate";
import { CHECKDUE } from "../../../src/balloon/checkdue";
import { FREEPLAY } from "../../../src/fit/freeplay";
import { MARKSHIFT } from "../../../src/fit/markshift";
import { STOMAFIT } from "../../../src/fit/stomafit";
import { TRACTSTATE } from "../../../src/schedule/tractstate";
import { call } from "../../../src/worksheet/call";

describe("clinic settings", () => {
  it.each(settings.map((one) => ({ ...one })))(
    "$name has a default within its limits and says where it is from",
    (one) => {
      expect(refuseNumber(one, one.default)).toBeNull();
      expect(one.source.length).toBeGreaterThan(4);
      expect(one.evidence === "clinic setting").toBe(one.source.startsWith(NO_SOURCE));
      const { least, most } = one.range ?? { least: null, most: null };
      if (least !== null && most !== null) expect(least).toBeLessThanOrEqual(most);
    },
  );
  it("have names that a workbook takes, each once", () => {
    const names = settings.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[A-Z][A-Za-z]+(_[A-Z][A-Za-z]*)*$/);
  });
  it("holds the months that services publish", () => {
    // Northern Care Alliance and RCH Melbourne: 3 to 6 months; ESPGHAN and Great Ormond Street: 6.
    expect([settingNamed("Int_Balloon_G").default, settingNamed("Lim_Balloon_G").default]).toEqual([3, 6]);
    // CHOP and Stanford: every 3 months; Great Ormond Street: at least every 6.
    expect([settingNamed("Int_GJ").default, settingNamed("Lim_GJ").default]).toEqual([3, 6]);
    // Great Ormond Street: 18 to 24 months; Starship: up to 2 years.
    expect(settingNamed("Lim_Bumper_Child").default).toBe(24);
  });
  it("refuses numbers outside, and parts of a month", () => {
    expect(refuseNumber(settingNamed("Int_Balloon_G"), 13)).toContain("from 1 to 12 months");
    expect(refuseNumber(settingNamed("Int_Balloon_G"), 2.5)).toContain("whole number of months");
    expect(refuseNumber(settingNamed("Soon_Days"), Number.NaN)).not.toBeNull();
  });
  it("agrees with what the worksheet functions hold themselves", () => {
    expect(settingNamed("Soon_Days").default).toBe(SOON_DAYS);
    const state = (out: number, put: number) => call(BALLOONSTATE, [out, put]);
    const [small, large] = [settingNamed("Loss_Small").default, settingNamed("Loss_Large").default];
    expect([state(5 - small, 5), state(5 - small - 0.01, 5)]).toEqual(["as filled", "low"]);
    expect([state(10 - large, 10), state(10 - large - 0.01, 10)]).toEqual(["as filled", "low"]);
    expect([state(10 * settingNamed("Loss_Half").default, 10), state(5.01, 10)]).toEqual(["half or less", "low"]);
    const over = settingNamed("Over_Read").default;
    expect([state(5 + over, 5), state(5 + over + 0.01, 5)]).toEqual(["as filled", "more than put in"]);
    expect([state(5 - large, settingNamed("Fill_Small").default), state(5.01 - large, 5.01)]).toEqual([
      "low",
      "as filled",
    ]);
    expect(balloon.settings({ from: "words", words: new Map() })).toHaveLength(5);
  });
  it("agrees with the thresholds of the functions about openings, fit and checks", () => {
    const value = (name: SettingName) => settingNamed(name).default;
    const [low, high] = [value("Tract_Low") * 7, value("Tract_High") * 7];
    const tract = (days: number) => call(TRACTSTATE, [46174 - days, 46174, "", "", "no"]);
    expect([tract(low - 1), tract(low), tract(high - 1), tract(high)]).toEqual([
      ...["immature", "uncertain", "uncertain", "mature by weeks"],
    ]);
    const play = (gap: number) => call(FREEPLAY, [gap]);
    const [least, most] = [value("Play_Least"), value("Play_Most")];
    expect([play(least - 0.1), play(least), play(most), play(most + 0.1)]).toEqual([
      ...["tight", "in range", "in range", "loose"],
    ]);
    const tolerance = value("Mark_Tol");
    expect([call(MARKSHIFT, [4, 4 - tolerance]), call(MARKSHIFT, [4, 3.9 - tolerance])]).toEqual([
      ...["same mark", "further out"],
    ]);
    const fits = (length: number) => call(STOMAFIT, [length, 2, 2]);
    const [slack, loose] = [value("Slack_Least"), value("Slack_Most")];
    expect([fits(1.9 + slack), fits(2 + slack), fits(2 + loose), fits(2.1 + loose)]).toEqual([
      ...["too short", "in range", "in range", "too long"],
    ]);
    const check = (stoma: number, last: number, checked: number | "") => call(CHECKDUE, [stoma, last, checked]);
    expect(check(46000, 46000, "")).toBe(46000 + value("Check_First"));
    expect(check(40000, 46000, "")).toBe(46000 + value("Check_AfterChange"));
    expect(check(40000, 46000, 46010)).toBe(46010 + value("Check_Days"));
  });
  it("has no interval for kinds without a routine change, and none at all where the placing team sets the date", () => {
    const months = Object.fromEntries(kinds.map(({ key, due, latest }) => [key, [due, latest]]));
    expect(months["bumper adult"]).toEqual([null, "Lim_Bumper_Adult"]);
    expect(months["placing team"]).toEqual([null, null]);
    expect(months["not known"]).toEqual([null, null]);
  });
});
