/** Laws of BOOK, against exhaustive search on small cases, and its speed on a large caseload. Fixed seed. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BOOK } from "../../src/schedule/book";
import { call } from "../../src/worksheet/call";

const SEED = 20261125;
const FIRST = 46_000;

interface Case {
  readonly people: readonly { due: number; earliest: number | ""; latest: number | "" }[];
  readonly sessions: readonly { date: number; places: number }[];
}

const offset = (min: number, max: number) => fc.integer({ min, max }).map((n) => FIRST + n);
const cases = (people: number, sessions: number): fc.Arbitrary<Case> =>
  fc.record({
    people: fc.array(
      fc.record({
        due: offset(-4, 12),
        earliest: fc.oneof(fc.constant("" as const), offset(-2, 10)),
        latest: fc.oneof(fc.constant("" as const), offset(-6, 14)),
      }),
      { minLength: 1, maxLength: people },
    ),
    sessions: fc.array(fc.record({ date: offset(0, 9), places: fc.integer({ min: 0, max: 2 }) }), {
      minLength: 1,
      maxLength: sessions,
    }),
  });

const column = (values: readonly unknown[]): unknown[][] => values.map((value) => [value]);

function book({ people, sessions }: Case, rule: string): (number | string)[] {
  const answer = call(BOOK, [
    column(people.map((p) => p.due)),
    column(sessions.map((s) => s.date)),
    column(sessions.map((s) => s.places)),
    column(people.map((p) => p.earliest)),
    column(people.map((p) => p.latest)),
    rule,
  ]);
  return (answer as (number | string)[][]).map(([cell]) => cell!);
}

const isInTime = (person: Case["people"][number], date: number): boolean =>
  date <= person.due && (person.earliest === "" || date >= person.earliest);

/** The largest number that can be in time: every person tries every session and none. */
function bestByTrying({ people, sessions }: Case): number {
  const left = sessions.map((s) => s.places);
  const from = (i: number): number => {
    if (i === people.length) return 0;
    let best = from(i + 1);
    sessions.forEach(({ date }, s) => {
      if (left[s]! === 0 || !isInTime(people[i]!, date)) return;
      left[s]! -= 1;
      best = Math.max(best, 1 + from(i + 1));
      left[s]! += 1;
    });
    return best;
  };
  return from(0);
}

describe.each(["worst first", "most in time"])("%s", (rule) => {
  test("keeps places and earliest days, and leaves nobody out while there is a place", () => {
    fc.assert(
      fc.property(cases(12, 6), (each) => {
        const booked = book(each, rule);
        const left = new Map<number, number>();
        for (const { date, places } of each.sessions) left.set(date, (left.get(date) ?? 0) + places);
        booked.forEach((date, i) => {
          if (typeof date !== "number") return;
          left.set(date, (left.get(date) ?? 0) - 1);
          const { earliest } = each.people[i]!;
          expect(earliest === "" || date >= earliest).toBe(true);
        });
        for (const places of left.values()) expect(places).toBeGreaterThanOrEqual(0);
        booked.forEach((date, i) => {
          if (typeof date === "number") return;
          expect(date).toBe("no place");
          const { earliest } = each.people[i]!;
          for (const [day, places] of left) if (earliest === "" || day >= earliest) expect(places).toBe(0);
        });
      }),
      { seed: SEED, numRuns: 3000 },
    );
  });
});

describe("worst first", () => {
  test("nobody waits behind somebody less far past the limit, nor, with no limit passed, behind a later due date", () => {
    fc.assert(
      fc.property(cases(12, 6), (each) => {
        const open = each.sessions.filter((s) => s.places > 0);
        const start = Math.min(...open.map((s) => s.date));
        const booked = book(each, "worst first");
        const isPast = ({ latest }: Case["people"][number]) => latest !== "" && latest < start;
        const couldHave = (waiting: number, place: number | string) => {
          const { earliest } = each.people[waiting]!;
          const own = booked[waiting]!;
          if (typeof place !== "number" || (earliest !== "" && place < earliest)) return false;
          return typeof own !== "number" || own > place;
        };
        each.people.forEach((worse, i) =>
          each.people.forEach((better, j) => {
            if (isPast(worse) && !isPast(better)) expect(couldHave(i, booked[j]!)).toBe(false);
            if (isPast(worse) && isPast(better) && worse.latest < better.latest) {
              expect(couldHave(i, booked[j]!)).toBe(false);
            }
            if (isPast(worse) || isPast(better)) return;
            if (worse.due < better.due) expect(couldHave(i, booked[j]!)).toBe(false);
          }),
        );
      }),
      { seed: SEED, numRuns: 3000 },
    );
  });
});

describe("most in time", () => {
  test("as many in time as exhaustive search finds", () => {
    let full = 0;
    fc.assert(
      fc.property(cases(7, 4), (each) => {
        const inTime = book(each, "most in time").filter(
          (date, i) => typeof date === "number" && isInTime(each.people[i]!, date),
        ).length;
        const best = bestByTrying(each);
        if (best > 0 && best < each.people.length) full += 1;
        return inTime === best;
      }),
      { seed: SEED, numRuns: 3000 },
    );
    expect(full, "cases in which some but not all can be in time").toBeGreaterThan(500);
  });

  test("never fewer in time than worst first", () => {
    const inTime = (each: Case, rule: string) =>
      book(each, rule).filter((date, i) => typeof date === "number" && isInTime(each.people[i]!, date)).length;
    fc.assert(
      fc.property(cases(12, 6), (each) => inTime(each, "most in time") >= inTime(each, "worst first")),
      { seed: SEED, numRuns: 2000 },
    );
  });
});

test("10,000 people and 500 sessions are booked at once, by either rule", () => {
  const people = Array.from({ length: 10_000 }, (_, i) => [FIRST + ((i * 7919) % 900) - 200]);
  const earliest = people.map(([due], i) => [i % 3 === 0 ? due! - 30 : ""]);
  const latest = people.map(([due], i) => [i % 2 === 0 ? due! + 90 : ""]);
  const sessions = Array.from({ length: 500 }, (_, i) => [FIRST + 2 * ((i * 271) % 500)]);
  for (const rule of ["worst first", "most in time"]) {
    const start = performance.now();
    const answer = call(BOOK, [people, sessions, 18, earliest, latest, rule]) as unknown[][];
    const took = performance.now() - start;
    console.log(`BOOK, ${rule}: 10,000 people, 500 sessions in ${took.toFixed(0)} ms`);
    expect(answer.filter(([cell]) => typeof cell === "number")).toHaveLength(9_000);
    // usual is a fifth of a second; going over all sessions for every pair of people would take minutes
    expect(took).toBeLessThan(20_000);
  }
});
