/** What a person's own past says of the agreed interval: only ever for an earlier change, and never a permission. */
import { LEAST_DEVICES, LEAST_FAILURES } from "../../src/wear/devices";
import { count, figure } from "./pieces";

const whole = (n: number): string => figure(Math.round(n));

export const intervalAdvice = {
  title: "Interval",
  tooFew: (failures: number, devices: number) =>
    `Too few to say how long devices last here: ${figure(failures)} of ${count(devices, "device")} failed; ${LEAST_FAILURES} of ${LEAST_DEVICES} are needed.`,
  fewOwn: (failures: number, devices: number) =>
    `Too few of this person’s own to say: ${figure(failures)} of ${count(devices, "device")} failed.`,
  failedBy: (failures: number, devices: number, by: number) =>
    `${figure(failures)} of ${figure(devices)} failed by day ${whole(by)}`,
  oneInTen: (day: number) => `one in ten would by day ${whole(day)}`,
  ofTheClinic: (kind: string, day: number) => `Of all here (${kind}) one in ten fails by day ${whole(day)}.`,
  agreedIs: (agreed: number) => `The agreed interval is ${whole(agreed)} days.`,
  earlier: (agreed: number) =>
    `The agreed interval is ${whole(agreed)} days: ask those responsible whether to change earlier.`,
  notEarlier: "The agreed interval and the label stand.",
  noneAgreed: "No interval is written down to compare with.",
};
