/**
 * A change after which the feed ends elsewhere: the list's row has another Access, the log keeps the old one. Checks from
 * before stay with the device that they were made on. Words worked out by hand from what the shared template says.
 */
import { describe, expect, it } from "vitest";
import { AS_OF, goodCheck, goodTube, worked, type Cells } from "../one-row";

const tubes = [{ ...goodTube, Access: "GJ", "Device in": AS_OF - 9, "Fill mL": 7, "Changed by": "radiology" }];
const changes = [{ ID: "T-1", Access: "G", In: AS_OF - 100, Out: AS_OF - 9, "Fill mL": 5 }];
const check = (cells: Cells): Cells => ({ ...goodCheck, ...cells });
const before = (cells: Cells): Cells => check({ "Checked on": AS_OF - 20, "Put in mL": 6, ...cells });

describe("checks of a device whose feed ended elsewhere than that of the one now in", () => {
  it.each(["G", null])("with Access %o stay that device's, with its own fill", (Access) => {
    const found = worked({ tubes, changes, checks: [before({ Access }), check({ "Out mL": 7, "Put in mL": 7 })] });
    const [old, newest] = found.checks;
    expect([old!["Device in"], old!["Expected mL"], old!["State"]]).toEqual([AS_OF - 100, 5, "as filled"]);
    // 7 mL were agreed for the new one; what was put into the one before says nothing of it.
    expect([newest!["Device in"], newest!["Expected mL"], newest!["State"]]).toEqual([AS_OF - 9, 7, "as filled"]);
    expect(found.tubes[0]!["Balloon"]).toBe("as filled");
  });

  it.each(["G", null])("with Access %o say nothing of the new device", (Access) => {
    // 7 days after the change a check is due, and 3 days of grace are not over.
    for (const out of [5, 0]) {
      const found = worked({ tubes, changes, checks: [before({ Access, "Out mL": out })] });
      expect(found.tubes[0]!["Balloon"]).toBe("no check yet");
    }
  });

  it("are nobody's where the day is after the change, before it came in, or none", () => {
    for (const on of [AS_OF - 8, AS_OF - 101, "3/4/24", null]) {
      const found = worked({ tubes, changes, checks: [check({ "Checked on": on, Access: "G" })] });
      expect(found.checks[0]!["State"]).toBe("device not clear");
      expect(found.tubes[0]!["Balloon"]).toBe("device not clear");
    }
  });

  it("are nobody's where the log has no usable days", () => {
    for (const days of [{ In: null }, { Out: null }, { In: "n/k" }, { In: 0 }, { Out: AS_OF - 21 }]) {
      const found = worked({ tubes, changes: [{ ...changes[0]!, ...days }], checks: [before({ Access: "G" })] });
      expect(found.tubes[0]!["Balloon"]).toBe("device not clear");
    }
  });

  it("are told apart from those of a second device, as ever", () => {
    const two = [...tubes, { ...goodTube, Access: "J" }];
    const found = worked({ tubes: two, changes, checks: [before({ Access: "G" }), check({ Access: "J" })] });
    expect(found.checks.map((row) => row["State"])).toEqual(["as filled", "as filled"]);
    expect(found.tubes.map((row) => row["Balloon"])).toEqual(["no check yet", "as filled"]);
  });

  it("without Access, and with two devices in use, are nobody's", () => {
    const two = [...tubes, { ...goodTube, Access: "J" }];
    const found = worked({ tubes: two, changes, checks: [before({})] });
    expect(found.checks[0]!["State"]).toBe("device not clear");
  });
});
