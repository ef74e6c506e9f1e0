/** Invented clinics whose truth is known: how fast each person wears devices through, and which lot is bad. */
import { randomFrom } from "../../src/maths/random";

export { randomFrom };

export interface Clinic {
  readonly ids: string[];
  readonly lots: string[];
  readonly days: number[];
  readonly failed: number[];
  /** Each person's true factor, over the mean of all. */
  readonly truth: ReadonlyMap<string, number>;
}

/** Box and Muller. */
const normal = (random: () => number): number => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());

export interface Plan {
  readonly people: number;
  readonly years: number;
  /** Weibull shape and scale in days. */
  readonly shape: number;
  readonly scale: number;
  /** Standard deviation of ln of the factor by which a person's devices live shorter. */
  readonly spread: number;
  /** Days after which a device is changed as planned. */
  readonly planned: number;
  readonly lots: number;
  /** How many times as often devices of lot 0 fail, at each age. */
  readonly badLot: number;
}

export function simulate(plan: Plan, random: () => number): Clinic {
  const { people, years, shape, scale, spread, planned } = plan;
  const [ids, lots, days, failed]: [string[], string[], number[], number[]] = [[], [], [], []];
  const factors = Array.from({ length: people }, () => Math.exp(spread * normal(random)) ** shape);
  const mean = factors.reduce((sum, z) => sum + z, 0) / people;
  factors.forEach((factor, i) => {
    const end = Math.round(365 * years);
    for (let day = 0; day < end;) {
      const lot = Math.floor(random() * plan.lots);
      const hazard = factor * (lot === 0 ? plan.badLot : 1);
      const life = Math.max(1, Math.round(scale * (-Math.log(random()) / hazard) ** (1 / shape)));
      const stay = Math.max(1, Math.min(life, planned, end - day));
      ids.push(`P${i}`);
      lots.push(`L${lot}`);
      days.push(stay);
      failed.push(life <= planned && life <= end - day ? 1 : 0);
      day += stay;
    }
  });
  return { ids, lots, days, failed, truth: new Map(factors.map((z, i) => [`P${i}`, z / mean])) };
}
