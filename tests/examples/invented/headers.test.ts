/** The invented rows and the ready-made caseload's columns know each other: no cell would get lost at set-up. */
import { describe, expect, test } from "vitest";
import { changeColumns } from "../../../src/caseload/changes/columns";
import { checkColumns } from "../../../src/caseload/checks/columns";
import type { CaseloadColumn } from "../../../src/caseload/column";
import { inventedCaseload } from "../../../src/caseload/invented";
import type { Header } from "../../../src/caseload/headers";
import type { CaseloadRow } from "../../../src/caseload/rows";
import { formula } from "../../../src/columns/formula";
import { tubeColumns } from "../../../src/caseload/tubes/columns";
import { day } from "./days";

const { tubes, checks, changes } = inventedCaseload(day("2026-11-26"));

/** What a list is does not hang on the cells beside it. */
const anyCell = Object.assign(() => formula`0`, { has: () => true });

/** Words that stand outside the lists on purpose, by header. */
const onPurpose: Readonly<Record<string, readonly string[]>> = { "Held by": ["PEG", "button", "RIG", "BGT "] };

describe.each<[string, readonly CaseloadColumn[], readonly CaseloadRow[]]>([
  ["Tubes in use", tubeColumns, tubes],
  ["Balloon checks", checkColumns, checks],
  ["Changes", changeColumns, changes],
])("%s", (_, columns, rows) => {
  test("every invented cell has its typed column", () => {
    const typed = new Set(columns.filter(({ kind }) => kind !== "computed").map(({ header }) => header));
    for (const row of rows) for (const header of Object.keys(row)) expect(typed).toContain(header);
  });

  test("words are those that the column lets choose, but for those that stand there on purpose", () => {
    for (const { header, validation: rule } of columns) {
      const validation = rule?.(anyCell);
      /* Several may be named in one cell: tests/examples/invented/plausible. */
      if (validation?.kind !== "list" || header === "Cannot wait") continue;
      const words = [...validation.words, ...(onPurpose[header] ?? [])];
      for (const row of rows) {
        const cell = row[header as Header] ?? null;
        if (cell !== null) expect(words, header).toContain(cell);
      }
    }
  });
});
