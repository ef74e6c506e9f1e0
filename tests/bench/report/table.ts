/** docs/benchmarks.md: a section for each job, written from rows, and its ratios read back for `--check`. */
import { missed, ratioOf, type Job, type Row } from "./row";

/** Ratios by what tells rows apart. */
export type Ratios = ReadonlyMap<string, number>;

const HEAD = ["what", "size", "ours", "peer", "theirs", "ratio", "at most", "kept", "remark"] as const;

const number = (value: number, digits: number): string =>
  value.toLocaleString("en-GB", { minimumFractionDigits: digits, maximumFractionDigits: digits });

export const figure = (value: number, unit: string): string => `${number(value, value < 10 ? 2 : 0)} ${unit}`;

const cell = (text: string): string => text.replaceAll("|", "/").replaceAll("\n", " ");

export const keyOf = (job: string, what: string, size: string, peer: string): string =>
  [job, what, size, peer].join(" · ");
export const keyOfRow = (job: string, { what, size, peer }: Row): string =>
  keyOf(job, cell(what), cell(size), cell(peer ?? ""));

export function rowCells(row: Row): readonly string[] {
  const ratio = ratioOf(row);
  const broken = missed(row);
  const limits = (row.limits ?? []).map(({ what, most }) => `${what} ${number(most, most % 1 === 0 ? 0 : 1)}`);
  return [
    row.what,
    row.size,
    figure(row.ours, row.unit),
    row.peer ?? "",
    row.theirs === undefined ? "" : figure(row.theirs, row.unit),
    ratio === undefined ? "" : number(ratio, 3),
    limits.join(", "),
    limits.length === 0 ? "" : broken.length === 0 ? "yes" : `no: ${broken.map(({ what }) => what).join(", ")}`,
    row.remark ?? "",
  ].map(cell);
}

const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
const heading = ({ name, title }: Pick<Job, "name" | "title">): string => `## ${title} (\`${name}\`)`;

/** @param where when, on which machine and how it was measured, in words */
export function section(job: Job, rows: readonly Row[], notMeasured: readonly string[], where: string): string {
  const table = [HEAD, HEAD.map(() => "---"), ...rows.map(rowCells)].map(line);
  const parts = [
    heading(job),
    job.about,
    `Left out: ${job.leavesOut}`,
    where,
    ...(rows.length > 0 ? [table.join("\n")] : []),
    ...notMeasured.map((sentence) => `Not measured: ${sentence}`),
  ];
  return `${parts.join("\n\n")}\n`;
}

/** The sections of a page by their jobs' names. */
export function sectionsOf(page: string): ReadonlyMap<string, string> {
  const sections = page.split(/^(?=## )/m).slice(1);
  return new Map(
    sections.flatMap((text) => {
      const name = /^## .*\(`(.+)`\)$/m.exec(text)?.[1];
      return name === undefined ? [] : [[name, `${text.trimEnd()}\n`] as const];
    }),
  );
}

export function ratiosOf(page: string): Ratios {
  const ratios = new Map<string, number>();
  for (const [job, text] of sectionsOf(page)) {
    for (const row of text.split("\n").filter((one) => one.startsWith("| "))) {
      const [what, size, , peer, , ratio] = row.slice(2, -2).split(" | ");
      const value = Number(ratio?.replaceAll(",", ""));
      if (ratio?.trim() && Number.isFinite(value)) ratios.set(keyOf(job, what!, size!, peer!.trim()), value);
    }
  }
  return ratios;
}
