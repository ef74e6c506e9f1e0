/** Since when Excel has each member of its library, as Microsoft's own type definitions say beside it. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const TYPES = createRequire(import.meta.url).resolve("@types/office-js/index.d.ts");

/** The requirement set ExcelApi that a member came with, for example 1.13; undefined where none is told. */
export function excelMembers(): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  const lines = readFileSync(TYPES, "utf8").split("\n");
  const start = lines.findIndex((line) => line.startsWith("declare namespace Excel {"));
  let [owner, told] = ["", Number.NaN];
  for (const line of lines.slice(start + 1)) {
    if (line.startsWith("}")) break;
    owner = /^ {4}class (\w+)/.exec(line)?.[1] ?? owner;
    if (/^ {4}(interface|enum|namespace|type)/.test(line)) owner = "";
    const set = /\[Api set: ExcelApi (\d+)\.(\d+)/.exec(line);
    if (set) told = Number(set[1]) * 100 + Number(set[2]);
    const member = /^ {8}(?:readonly )?(\w+)(?=[(:?])/.exec(line)?.[1];
    if (!member) continue;
    const name = `${owner}.${member}`;
    /* Overloads: the earliest counts. */
    if (owner && !Number.isNaN(told)) found.set(name, Math.min(told, found.get(name) ?? told));
    told = Number.NaN;
  }
  return found;
}
