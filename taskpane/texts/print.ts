/** What stands on every printed page. */
export const print = {
  printed: (date: string) => `Printed ${date}.`,
  dataAsOn: (date: string) => `Data as on ${date}.`,
  noDataDay: "The day that the data count for is not known.",
  version: (version: string) => `Version ${version}.`,
  invented: "Invented people.",
  page: "Print this page",
  /** The place Print: which pages there are. */
  pages: {
    week: { title: "Week list", note: "Act now, due this week, ask about; room to tick and to write." },
    elsewhere: {
      tubeOut: {
        title: "Tube out, one person",
        note: "What is said on the telephone, on one page. Look the person up first.",
      },
      pictures: { title: "Pictures for the team", note: "Four pictures with their sentences. No person is named." },
      board: { title: "Board page", note: "A quarter or a year that is over. No small count, and no person named." },
      overdue: { title: "Tables of what is overdue", note: "By kind, by who changes it, by where." },
      lot: { title: "A lot called back", note: "Who has a device of the lot, and who cannot be ruled out." },
      findings: {
        title: "What cannot be right in this sheet",
        note: "Each cell with its reason, to put right by hand.",
      },
    },
    goTo: (job: string) => `Go to ‘${job}’`,
    foot: "A whole sheet goes to paper by Save, then Excel’s own print: its headers stand on every page.",
  },
};
