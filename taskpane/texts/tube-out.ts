/** Tube out: the telephone call. */
export const tubeOut = {
  call: "Call",
  known: "What the list says",
  rowKnown: (row: number) => `What row ${row} of the list says`,
  notWritten: (labels: string) => `Not written down: ${labels}. Ask.`,
  another: "Another person",
  enter: "Enter the numbers",
  pageTitle: (id?: string) => (id === undefined ? "Tube out" : `Tube out: ${id}`),
  outrun: "The workbook has changed since this person was looked up. Look up again.",
};
