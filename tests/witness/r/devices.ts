/** The devices of the invented caseload as R reads them: devices.csv. */
import { readFileSync } from "node:fs";
import type { Device } from "../../../src/pictures/devices";

const COLUMNS = ["person", "kind", "shape", "from", "until", "isInUse", "days", "failed", "unplanned"] as const;

export const devicesText = (devices: readonly Device[]): string =>
  `${[
    COLUMNS.join(","),
    ...devices.map((device) => COLUMNS.map((column) => String(device[column] ?? "")).join(",")),
  ].join("\n")}\n`;

export function readDevices(): readonly Device[] {
  const [, ...lines] = readFileSync(new URL("devices.csv", import.meta.url), "utf8")
    .trimEnd()
    .split("\n");
  return lines.map((line): Device => {
    const [person, kind, shape, from, until, isInUse, days, failed, unplanned] = line.split(",") as [
      ...[string, string, string, string, string, string, string, string, string],
    ];
    return {
      ...{ person, kind, shape, lot: "", reason: "" },
      ...{ from: Number(from), until: until === "" ? null : Number(until), days: Number(days) },
      ...{ isInUse: isInUse === "true", failed: failed === "true", unplanned: unplanned === "true" },
    };
  });
}
