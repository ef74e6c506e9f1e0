/** A sheet of values that the pane adds. */
export const newSheet = {
  press: "Put it in a sheet",
  asOn: (date: string) => `As on ${date}. Values only: later entries do not change this sheet.`,
  done: "The sheet stands behind the others.",
};
