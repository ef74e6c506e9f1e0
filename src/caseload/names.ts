/** What the ready-made caseload's sheets and tables are called. Stored in people's workbooks: never renamed. */
export const sheetNames = {
  readFirst: "Read first",
  tubes: "Tubes in use",
  checks: "Balloon checks",
  changes: "Changes",
  settings: "Clinic settings",
} as const;

/** The sheets that are lists: one row is a device, a check, a device that has come out. */
export const rowsTables = ["tubes", "checks", "changes"] as const;
export type RowsTable = (typeof rowsTables)[number];

export const tableNames = {
  tubes: "Tubes_in_use",
  checks: "Balloon_checks",
  changes: "Device_changes",
} as const satisfies Record<RowsTable, string>;

/** The one cell that says on which day the people were invented; empty once they are gone. */
export const INVENTED_ON = "Invented_On";
