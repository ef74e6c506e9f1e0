/** The log-rank test for two or more groups (Mantel N, Cancer Chemother Rep 1966;50:163-170). */
import { gammaUpper } from "./gamma";
import type { DayCounts } from "./survival";

export interface LogRank {
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  readonly p: number;
}

/**
 * @param groups each group's counts by day
 * @returns undefined when fewer than two groups were at risk while something failed, or everything failed at once
 */
export function logRank(groups: readonly DayCounts[]): LogRank | undefined {
  const many = groups.length;
  const next = new Array<number>(many).fill(0);
  const atRisk = groups.map(({ ended }) => ended.reduce((sum, n) => sum + n, 0));
  const excess = new Array<number>(many).fill(0);
  const expected = new Array<number>(many).fill(0);
  const covariance = groups.map(() => new Array<number>(many).fill(0));

  for (;;) {
    let day = Infinity;
    for (let g = 0; g < many; g++) day = Math.min(day, groups[g]!.days[next[g]!] ?? Infinity);
    if (day === Infinity) break;
    const here = groups.map(({ days }, g) => (days[next[g]!]! <= day * (1 + 1e-9) ? next[g]! : -1));
    let n = 0;
    let failed = 0;
    for (let g = 0; g < many; g++) {
      n += atRisk[g]!;
      if (here[g]! >= 0) failed += groups[g]!.failed[here[g]!]!;
    }
    if (failed > 0) {
      const weight = n > 1 ? (failed * (n - failed)) / (n - 1) : 0;
      for (let g = 0; g < many; g++) {
        const share = atRisk[g]! / n;
        expected[g]! += failed * share;
        excess[g]! += (here[g]! >= 0 ? groups[g]!.failed[here[g]!]! : 0) - failed * share;
        if (share === 0) continue;
        covariance[g]![g]! += weight * share;
        for (let h = 0; h <= g; h++) covariance[g]![h]! -= (weight * share * atRisk[h]!) / n;
      }
    }
    for (let g = 0; g < many; g++) {
      if (here[g]! < 0) continue;
      atRisk[g]! -= groups[g]!.ended[here[g]!]!;
      next[g]!++;
    }
  }

  // A group that was gone before the first failure says nothing; one group is left out, as the excesses sum to 0.
  const kept = excess.map((_, g) => g).filter((g) => expected[g]! > 0);
  const free = kept.slice(1);
  const chiSquare = free.length > 0 ? squaredLength(free, excess, covariance) : undefined;
  if (chiSquare === undefined) return undefined;
  return { chiSquare, degreesOfFreedom: free.length, p: gammaUpper(free.length / 2, chiSquare / 2) };
}

/** x' V^-1 x by Cholesky's factors of V; undefined when V has no inverse. */
function squaredLength(
  which: readonly number[],
  excess: readonly number[],
  covariance: readonly (readonly number[])[],
): number | undefined {
  const factor: number[][] = [];
  const solved: number[] = [];
  for (const [i, g] of which.entries()) {
    const row: number[] = [];
    let x = excess[g]!;
    for (let j = 0; j <= i; j++) {
      let sum = covariance[g]![which[j]!]!;
      for (let k = 0; k < j; k++) sum -= row[k]! * (factor[j] ?? row)[k]!;
      if (j < i) {
        row.push(sum / factor[j]![j]!);
        x -= row[j]! * solved[j]!;
      } else if (sum > 1e-12 * covariance[g]![g]!) row.push(Math.sqrt(sum));
      else return undefined;
    }
    factor.push(row);
    solved.push(x / row[i]!);
  }
  return solved.reduce((sum, x) => sum + x * x, 0);
}
