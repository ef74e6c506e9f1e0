/** Do devices of one kind or shape last as long as those of another: each group's curve, and the log-rank test. */
import { logRank, type LogRank } from "../maths/logrank";
import { countByDay } from "../maths/survival";
import { LEAST_DEVICES, LEAST_FAILURES } from "../wear/devices";
import type { Device } from "./devices";
import { lifePicture, type LifePicture } from "./life";

export type GroupBy = "kind" | "shape";

export interface ComparedGroup {
  readonly name: string;
  readonly life: LifePicture;
}

export interface Comparison {
  /** With enough to draw a curve, the largest first. */
  readonly groups: readonly ComparedGroup[];
  /** Too small to compare: named with their counts, and no part of the test. */
  readonly small: readonly ComparedGroup[];
  /** Undefined with fewer than two groups. */
  readonly test: LogRank | undefined;
}

export function comparison(devices: readonly Device[], by: GroupBy): Comparison {
  const groups = new Map<string, Device[]>();
  for (const device of devices) {
    const name = device[by] || "not known";
    const own = groups.get(name);
    if (own) own.push(device);
    else groups.set(name, [device]);
  }
  const all = [...groups]
    .sort((a, b) => b[1].length - a[1].length)
    .map(([name, own]) => ({ name, own, life: lifePicture(own) }));
  // What is not known is no group of its own: nobody can tell what it would be compared with.
  const isEnough = ({ name, life }: ComparedGroup): boolean =>
    name !== "not known" && life.failures >= LEAST_FAILURES && life.devices >= LEAST_DEVICES;
  const enough = all.filter(isEnough);
  return {
    groups: enough.map(({ name, life }) => ({ name, life })),
    small: all.filter((one) => !isEnough(one)).map(({ name, life }) => ({ name, life })),
    test:
      enough.length < 2
        ? undefined
        : logRank(
            enough.map(({ own }) =>
              countByDay({
                days: Float64Array.from(own, ({ days }) => days),
                failed: Uint8Array.from(own, ({ failed }) => (failed ? 1 : 0)),
              }),
            ),
          ),
  };
}
