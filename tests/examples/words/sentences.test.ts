/**
 * The sentences that can hurt somebody, word for word as the service's text sheet has them, typed here a second time:
 * a sentence changed by accident fails.
 */
import { describe, expect, test } from "vitest";
import { REMOVAL } from "../../../src/device/removal";
import { CAMEOUT } from "../../../src/words/cameout";
import { call } from "../../../src/worksheet/call";

const START = "Stop feed, water and medicines. Note the time. Cover the opening with a clean dry dressing. ";
const PLAN = " Only a written plan for this person, and training in it, may say otherwise.";
const END =
  " Take along the tube, the spare and this page. Pain, bleeding, swollen belly, vomiting, fever, or hard to wake: call the emergency number now. Say if insulin, seizure medicine or feed cannot be missed. ";
const COUNTED = " The age of the opening was counted for 14 May 2026.";

const old = "2024-01-08";
const asof = "2026-05-14";

/** stomamade, retention, access, firsttube, slow; sentence; whether the age decides. */
const rows: [string, unknown[], string, boolean][] = [
  [
    "J",
    [old, "balloon", "J", "no"],
    "Emergency. This opening leads straight into the bowel. Go to hospital now. Put nothing in.",
    false,
  ],
  [
    "GJ",
    [old, "balloon", "GJ", "no"],
    "Emergency. Part of this tube lies in the bowel and can only go back with imaging. Go to hospital now. Do not put the spare in.",
    false,
  ],
  [
    "access not known",
    [old, "balloon", "", "no"],
    "Emergency. It is not recorded where this tube ends. Go to hospital now. Put nothing in.",
    false,
  ],
  [
    "stoma date not known",
    ["", "balloon", "G", "no"],
    "Emergency. It is not recorded when the opening was made. Treat it as new: go to hospital now. Put nothing in.",
    false,
  ],
  [
    "stoma date in the future",
    ["2026-05-15", "balloon", "G", "no"],
    "Emergency. It is not recorded when the opening was made. Treat it as new: go to hospital now. Put nothing in.",
    false,
  ],
  [
    "immature",
    ["2026-04-20", "balloon", "G", "no"],
    "Emergency. The opening is new (under 6 weeks). Go to hospital now. Put nothing in, not even the spare.",
    true,
  ],
  [
    "uncertain",
    ["2026-03-20", "balloon", "G", "no"],
    "Emergency. The opening is 6 to 12 weeks old and may not be firm. Go to hospital now; the team there decides how a tube goes back. Put nothing in.",
    true,
  ],
  [
    "first tube",
    [old, "balloon", "G", "yes"],
    "Emergency. This is still the first tube, or healing is slow: treat the opening as new. Go to hospital now. Put nothing in.",
    true,
  ],
  [
    "slow healing",
    [old, "balloon", "G", "no", "yes"],
    "Emergency. This is still the first tube, or healing is slow: treat the opening as new. Go to hospital now. Put nothing in.",
    true,
  ],
  [
    "nothing said about slow healing",
    [old, "balloon", "G", "no"],
    "Emergency. It is not recorded whether this is still the first tube, or whether healing is slow: treat the opening as new. Go to hospital now. Put nothing in.",
    true,
  ],
  [
    "bumper",
    [old, "bumper", "G", "no", "no"],
    "Urgent. A tube held by a bumper cannot go back in, and the opening may be torn. Go to hospital now. Put nothing in.",
    true,
  ],
  [
    "loop",
    [old, "loop", "G", "no", "no"],
    "Urgent. This kind of tube is not put back at home. Go to hospital now. Put nothing in.",
    true,
  ],
  [
    "not known how it is held",
    [old, "", "G", "no", "no"],
    "Urgent. This kind of tube is not put back at home. Go to hospital now. Put nothing in.",
    true,
  ],
];

describe("CAMEOUT", () => {
  test.each(rows)("%s", (_, [stoma, held, access, first, slow], middle, counted) => {
    const args = [stoma, asof, held, access, first, slow];
    const text = START + middle + (counted ? COUNTED : "") + PLAN + END;
    expect(call(CAMEOUT, args)).toBe(`${text}Call the number on your emergency card.`);
    expect(call(CAMEOUT, [...args, "", "", "0000 000000"])).toBe(`${text}Our number: 0000 000000.`);
  });

  test("balloon, into the stomach, mature by weeks", () => {
    expect(call(CAMEOUT, [old, asof, "balloon", "G", "no", "no"])).toBe(
      `${START}Urgent. The opening can close within hours, however old it is. If you are trained and this person's own plan says so, put in the spare, gently. Stop at pain, blood or resistance. Nothing down the tube until its position is confirmed as in the plan. Not trained, no plan, no spare, it will not slide in, the balloon came out full, or any doubt: put nothing in and go to hospital now, to be there within 2 hours.${COUNTED}${END}Call the number on your emergency card.`,
    );
  });

  test("a mature limit below 8 weeks (RCH Melbourne) makes no opening mature, however old it is", () => {
    for (const mature of [6, 7]) {
      expect(call(CAMEOUT, [old, asof, "balloon", "G", "no", "no", "", mature])).toBe(
        `${START}Emergency. An opening of ${mature} weeks is not taken for firm, and the setting says so: treat it as new. Go to hospital now. Put nothing in.${COUNTED}${PLAN}${END}Call the number on your emergency card.`,
      );
    }
    expect(call(CAMEOUT, [old, asof, "balloon", "G", "no", "no", "", 8])).toContain("put in the spare");
  });

  test("the rules stand in their order: the earlier one wins where two are met", () => {
    const starts = (args: unknown[]) => (call(CAMEOUT, args) as string).slice(START.length);
    expect(starts(["", asof, "bumper", "J", ""])).toMatch(/^Emergency. This opening leads straight/);
    expect(starts(["", asof, "bumper", "GJ", ""])).toMatch(/^Emergency. Part of this tube/);
    expect(starts(["", asof, "bumper", "", ""])).toMatch(/^Emergency. It is not recorded where/);
    expect(starts(["", asof, "bumper", "G", "yes"])).toMatch(/^Emergency. It is not recorded when/);
    expect(starts(["2026-05-01", asof, "bumper", "G", "yes"])).toMatch(/^Emergency. The opening is new/);
    expect(starts([old, asof, "bumper", "G", "yes"])).toMatch(/^Emergency. This is still the first tube/);
    expect(starts([old, asof, "bumper", "G", ""])).toMatch(/^Emergency. It is not recorded whether/);
  });
});

describe("REMOVAL", () => {
  test.each([
    [
      "balloon, G, mature, not first",
      ["balloon", "G", old, asof, "no", "", "no"],
      "Held by a balloon. Only by somebody trained, with the spare in hand: draw all the water out, keep a flat hand on the skin, ease the tube out, stop at resistance, pain or blood. Position confirmed before any feed. The label and the placing team decide.",
    ],
    [
      "balloon, new opening",
      ["balloon", "G", "2026-05-01", asof, "no", "", "no"],
      "Held by a balloon, but the opening is new, its age not known, this is the first tube, or healing is slow: do not remove. The placing team decides.",
    ],
    [
      "balloon, first tube not known",
      ["balloon", "G", old, asof, "", "", "no"],
      "Held by a balloon, but the opening is new, its age not known, this is the first tube, or healing is slow: do not remove. The placing team decides.",
    ],
    [
      "balloon, nothing said about slow healing",
      ["balloon", "G", old, asof, "no"],
      "Held by a balloon, but the opening is new, its age not known, this is the first tube, or healing is slow: do not remove. The placing team decides.",
    ],
    [
      "balloon, a mature limit of 7 weeks",
      ["balloon", "G", old, asof, "no", 7, "no"],
      "Held by a balloon, but the opening is new, its age not known, this is the first tube, or healing is slow: do not remove. The placing team decides.",
    ],
    [
      "bumper",
      ["bumper"],
      "Held by a bumper: not at home. Trained staff remove it by traction or by endoscopy, as the placing team decides. Do not cut it, do not pull.",
    ],
    [
      "GJ",
      ["balloon", "GJ", old, asof, "no"],
      "Part of it lies in the bowel: never at home, never turned; removed where the new position can be seen by imaging. The placing team decides.",
    ],
    [
      "J, bumper",
      ["bumper", "J"],
      "Part of it lies in the bowel: never at home, never turned; removed where the new position can be seen by imaging. The placing team decides.",
    ],
    ["else", ["catheter", "G", old, asof, "no"], "Not known how it is held: do not pull. Ask the placing team."],
  ])("%s", (_, args, text) => expect(call(REMOVAL, args)).toBe(text));
});
