/** What stands on every printed page. */
export const print = {
  printed: (date: string) => `Printed ${date}.`,
  dataAsOn: (date: string) => `Data as on ${date}.`,
  noDataDay: "The day that the data count for is not known.",
  version: (version: string) => `Version ${version}.`,
  invented: "Invented people.",
  page: "Print this page",
};
