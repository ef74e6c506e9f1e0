/** Hands numbers over to a program in another language, in a file of doubles that is gone afterwards. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

export function withDoubles<T>(numbers: Float64Array, work: (file: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), "bench-"));
  try {
    const file = join(folder, "numbers.bin");
    writeFileSync(file, numbers);
    return work(file);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export function doubles(...columns: readonly ArrayLike<number>[]): Float64Array {
  const rows = columns[0]!.length;
  const all = new Float64Array(1 + rows * columns.length);
  all[0] = rows;
  columns.forEach((column, i) => all.set(column, 1 + i * rows));
  return all;
}
