/** The opening, and whether the tube fits it. Words worked out by hand from what the shared template says of them. */
import { describe, expect, it } from "vitest";
import { AS_OF, bumper, tube, word } from "../one-row";

describe("Tract, Fit, Mark", () => {
  it.each([
    // ACI/GENCA: under 6 weeks, under 12 weeks.
    ["Tract", tube({ "Stoma made": AS_OF - 41, "Device in": AS_OF - 41 }), "immature"],
    ["Tract", tube({ "Stoma made": AS_OF - 42, "Device in": AS_OF - 42 }), "uncertain"],
    ["Tract", tube({ "Stoma made": AS_OF - 84 }), "mature by weeks"],
    ["Tract", tube({ "Stoma made": AS_OF - 83 }), "uncertain"],
    ["Tract", tube({ "Slow healing": "yes" }), "uncertain"],
    ["Tract", tube({ "Slow healing": null }), "uncertain"],
    ["Tract", tube({ "Stoma made": null }), "no date"],
    ["Tract", tube({ "Stoma made": AS_OF + 1 }), "check date"],
    // One of the two days is wrong, perhaps that of the opening.
    ["Tract", tube({ "Stoma made": AS_OF - 90, "Device in": AS_OF - 91 }), "check date"],
    ["Tract", tube({ "Stoma made": AS_OF - 90, "Device in": AS_OF - 90 }), "mature by weeks"],
    // Mean 2.05 and 0.2 slack: 2.25. Larger reading 2.1 and 0.5: 2.6.
    ["Fit", tube({ "Length cm": 2 }), "too short"],
    ["Fit", tube({ "Length cm": 2.6 }), "in range"],
    ["Fit", tube({ "Length cm": 2.7 }), "too long"],
    ["Fit", tube({ "Lying cm": 2.1, "Sitting cm": 1.8 }), "read again"],
    ["Fit", tube({ "Weight then kg": 54 }), "measure again"],
    ["Fit", tube({ "Sitting cm": null }), "not measured"],
    ["Fit", tube({ "Measured on": null }), "measure again"],
    // Leeds 5 mm, ESGE 20 mm.
    ["Fit", bumper({ "Play mm": 2 }), "tight"],
    ["Fit", bumper({ "Play mm": 5 }), "in range"],
    ["Fit", bumper({ "Play mm": 21 }), "loose"],
    // The play of the tube before says nothing of this one.
    ["Fit", bumper({ "Measured on": AS_OF - 43 }), "measure again"],
    ["Fit", bumper({ "Measured on": AS_OF - 43, "Play mm": 2 }), "tight"],
    ["Fit", bumper({ "Device in": null }), "measure again"],
    ["Mark", bumper({ "Mark now cm": 2 }), "further out"],
    ["Mark", bumper({ "Mark now cm": 0 }), "further out"],
    ["Mark", bumper({ "Mark now cm": 3 }), "same mark"],
    ["Mark", bumper({ "Mark now cm": 6 }), "further in"],
    ["Mark", tube({}), ""],
  ])("%s %o: %s", (header, one, says) => expect(word(header, one)).toBe(says));
});
