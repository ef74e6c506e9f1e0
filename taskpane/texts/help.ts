export const help = {
  cautions: "Cautions",
  whatItIsNot: "What it is not",
  privacy: "Where your data stays",
  dates: "How dates are read",
  keyboard: "Keyboard",
  decides: "Who decides",
  about: "About",
  notList: [
    "It does not diagnose, and it does not say whether a tube may be used.",
    "It is not a medical record and does not replace one.",
    "It does not remind anybody by itself: somebody has to open the list and look.",
    "It does not know what is not written in the sheet.",
  ],
  privacyText:
    "Nothing leaves the workbook. The pane sends nothing, stores nothing and asks no other computer for anything but its own files.",
  privacyBrowser:
    "In this page your file is opened inside the browser and is not uploaded. It is gone when you close the page, unless you save it.",
  dateList: [
    "Real dates in cells are used as they are; a time of day is left away.",
    "Text such as 2026-05-14 (year, month, day) is read. Any other text is not guessed, because 3/4 is March in one country and April in another: those rows get no date and are listed.",
    "Dates are shown here as your computer writes them.",
  ],
  asOf: (date: string) => `Today’s date in this workbook: ${date}. Words such as ‘overdue’ count from it.`,
  asOfNone: "This workbook holds no date for today yet. It is put in with the first column that counts from today.",
  dayFirstIs: {
    day: "Dates typed as 3/4/2026 are read day first: 3 April. Change it above the sheet.",
    month: "Dates typed as 3/4/2026 are read month first: 4 March. Change it above the sheet.",
    refuse: "Dates typed as 3/4/2026 are refused until you choose above the sheet which part is the day.",
  },
  keyboardText: "F6 moves between the bar, the sheet and the pane. In the pane, Tab moves on and Enter presses.",
  decidesText:
    "You do, with the placing team and under your own policy. The numbers shown come from published sources where there are any, named beside each number; where there are none it says ‘clinic setting’. Your clinic has to agree them before they mean anything.",
  version: (version: string) => `Version ${version}. Free software under the MIT licence, without warranty.`,
};
