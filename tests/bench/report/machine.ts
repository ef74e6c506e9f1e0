/** When and where something was measured, in words. */
import { cpus, loadavg, release, totalmem, type } from "node:os";

const day = (): string => new Date().toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });

const GIGABYTE = 2 ** 30;

export function machine(): string {
  const processors = cpus();
  const system = `${type() === "Darwin" ? "macOS" : type()} ${release()}`;
  const model = processors[0]?.model.trim() ?? "unknown processor";
  return `Node ${process.version.slice(1)}, ${processors.length} processors (${model}), ${Math.round(totalmem() / GIGABYTE)} GB, ${system}`;
}

/** Before a job begins: how many processes wait for a processor in the last minute; 0 on Windows, which does not say. */
export function load(): string {
  const [busy = 0] = loadavg();
  const each = busy / cpus().length;
  if (each > 1.2) return `The machine was busy with other work (load ${busy.toFixed(1)}): trust ratios, not times.`;
  return each > 0.6 ? "The machine had a little other work." : "The machine had no other work.";
}

export function measuredHere(busy: string, seconds: number, quick: boolean): string {
  const minutes = Math.max(1, Math.round(seconds / 60));
  const roughly = quick ? " roughly, with fewer sizes and rounds (`--quick`)" : "";
  return `Measured${roughly} on ${day()} in ${minutes} min: ${machine()}. ${busy}`;
}
