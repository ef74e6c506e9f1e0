/**
 * Mulberry32 (T Ettinger, public domain): the same row of numbers between 0 and 1 from the same seed, so that what is
 * drawn from it twice is the same twice.
 */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 2 ** 32;
  };
}
