/** Why devices came out, unplanned ones first to last by their number. */
import type { Device } from "./devices";

export interface ReasonCount {
  readonly reason: string;
  readonly count: number;
}

export interface ReasonsPicture {
  readonly reasons: readonly ReasonCount[];
  readonly unplanned: number;
  readonly planned: number;
}

export function reasonsPicture(devices: readonly Device[], since: number): ReasonsPicture {
  const out = devices.filter(({ until }) => until !== null && until >= since);
  const counts = new Map<string, number>();
  for (const { reason, unplanned } of out) if (unplanned) counts.set(reason, (counts.get(reason) ?? 0) + 1);
  const reasons = [...counts].map(([reason, count]) => ({ reason, count }));
  const unplanned = out.filter((device) => device.unplanned).length;
  return {
    reasons: reasons.sort((a, b) => b.count - a.count || (a.reason < b.reason ? -1 : 1)),
    unplanned,
    planned: out.length - unplanned,
  };
}
