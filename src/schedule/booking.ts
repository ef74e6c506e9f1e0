/**
 * Who gets which session. Two rules:
 *
 * - worst first: those past their limit, then those overdue, then by due day; each takes the first free place.
 * - most in time: earliest due day first at every session, passing over those whose due day has gone by. For places of
 *   one size with release days, due days and capacities this books the largest possible number in time.
 */

export interface Session {
  readonly date: number;
  readonly places: number;
}

export interface Waiting {
  readonly due: number;
  /** First day on which this person may come. */
  readonly earliest: number;
  /** Day by which the change must have been done; Infinity when there is none. */
  readonly latest: number;
}

/** Sessions of one day as one, in order of date, those without a place left out. */
export function openSessions(sessions: readonly Session[]): Session[] {
  const places = new Map<number, number>();
  for (const { date, places: more } of sessions) if (more > 0) places.set(date, (places.get(date) ?? 0) + more);
  return [...places].map(([date, sum]) => ({ date, places: sum })).sort((a, b) => a.date - b.date);
}

/** Free places by session; finds the first free one at or behind a session without walking over full ones twice. */
class FreePlaces {
  private readonly left: number[];
  /** For each session the next one that may have a place. */
  private readonly next: number[];

  constructor(private readonly sessions: readonly Session[]) {
    this.left = sessions.map(({ places }) => places);
    this.next = Array.from({ length: sessions.length + 1 }, (_, i) => i);
  }

  private firstFree(from: number): number {
    let i = from;
    while (this.next[i] !== i) i = this.next[i] = this.next[this.next[i]!]!;
    return i;
  }

  /** Takes a place at a session; it must have one. */
  take(i: number): void {
    this.left[i]! -= 1;
    if (this.left[i] === 0) this.next[i] = i + 1;
  }

  /** The first session with a free place on or after a day, its place taken; undefined when there is none. */
  takeFirst(earliest: number): number | undefined {
    let low = 0;
    let high = this.sessions.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.sessions[middle]!.date < earliest) low = middle + 1;
      else high = middle;
    }
    const i = this.firstFree(low);
    if (i >= this.sessions.length) return undefined;
    this.take(i);
    return this.sessions[i]!.date;
  }
}

export type Booked = (number | undefined)[];

/** @param sessions from `openSessions` */
export function bookWorstFirst(people: readonly Waiting[], sessions: readonly Session[]): Booked {
  const booked: Booked = new Array<number | undefined>(people.length).fill(undefined);
  const start = sessions[0]?.date ?? Infinity;
  const pastLimit = people.map(({ latest }) => latest < start);
  const order = people.map((_, i) => i);
  order.sort((a, b) => {
    if (pastLimit[a] !== pastLimit[b]) return pastLimit[a] ? -1 : 1;
    const byLimit = pastLimit[a] ? people[a]!.latest - people[b]!.latest : 0;
    return byLimit || people[a]!.due - people[b]!.due || a - b;
  });
  const free = new FreePlaces(sessions);
  for (const i of order) booked[i] = free.takeFirst(people[i]!.earliest);
  return booked;
}

/** @param sessions from `openSessions` */
export function bookMostInTime(people: readonly Waiting[], sessions: readonly Session[]): Booked {
  const booked: Booked = new Array<number | undefined>(people.length).fill(undefined);
  const byDue = people.map((_, i) => i).sort((a, b) => people[a]!.due - people[b]!.due || a - b);
  const byEarliest = people.map((_, i) => i).sort((a, b) => people[a]!.earliest - people[b]!.earliest);
  const rank = new Array<number>(people.length);
  byDue.forEach((person, i) => (rank[person] = i));

  const free = new FreePlaces(sessions);
  const ready = new Smallest();
  let arrived = 0;
  sessions.forEach(({ date, places }, s) => {
    while (arrived < byEarliest.length && people[byEarliest[arrived]!]!.earliest <= date) {
      ready.add(rank[byEarliest[arrived++]!]!);
    }
    let left = places;
    while (left > 0 && ready.size > 0) {
      const person = byDue[ready.take()]!;
      if (people[person]!.due < date) continue;
      booked[person] = date;
      free.take(s);
      left -= 1;
    }
  });
  for (const i of byDue) booked[i] ??= free.takeFirst(people[i]!.earliest);
  return booked;
}

/** A heap of numbers that gives the smallest first. */
class Smallest {
  private readonly heap: number[] = [];

  get size(): number {
    return this.heap.length;
  }

  add(value: number): void {
    const { heap } = this;
    let i = heap.push(value) - 1;
    while (i > 0) {
      const parent = (i - 1) >> 1;
      if (heap[parent]! <= value) break;
      heap[i] = heap[parent]!;
      i = parent;
    }
    heap[i] = value;
  }

  /** There must be one. */
  take(): number {
    const { heap } = this;
    const first = heap[0]!;
    const last = heap.pop()!;
    if (heap.length === 0) return first;
    let i = 0;
    for (;;) {
      let child = 2 * i + 1;
      if (child >= heap.length) break;
      if (child + 1 < heap.length && heap[child + 1]! < heap[child]!) child += 1;
      if (heap[child]! >= last) break;
      heap[i] = heap[child]!;
      i = child;
    }
    heap[i] = last;
    return first;
  }
}
