export const clinicSettings = {
  older:
    "This caseload was set up by an earlier version: settings and columns that came since are not in it. Set up says what is new, and makes a new one from it.",
  none: {
    lead: "There is no sheet Clinic settings in this workbook, so no clinic has agreed anything here.",
    how: "‘Set up a caseload’, under ‘More’, makes a workbook that has one: each setting stands in a cell of its own, where the formulas read it. Below is what each would begin with, and where that comes from.",
  },
  forms: {
    agreement: {
      title: "Who agreed the settings",
      lead: "Write this once the team has read all settings and agreed them, and again at every review.",
      write: "Write who agreed",
    },
    calls: {
      title: "Whom to call",
      lead: "These numbers stand in ‘Tube out’ and on hand-outs.",
      write: "Write the numbers",
    },
  },
  placeholders: {
    Agreed_By: "a name, a team or a role",
  },
  preview: "What will be written",
  stands: (now: string | null) => (now === null ? "Nothing stands in the sheet." : `In the sheet: ${now}`),
  working: "Writing into the sheet",
  result: {
    title: { done: "Written", refused: "Nothing was written", stopped: "Writing was stopped" },
    again: "Back to the settings",
  },
  lookAt: {
    title: "To look at",
    none: "Every setting that has been entered is within what is allowed. That does not say that it is right for your clinic.",
    notEntered: (n: number) => `Not entered, and without a default: ${n}`,
  },
  all: {
    title: "All settings",
    lead: "A setting is changed in its cell, and the formulas that use it follow. Supplies, feed and water, and service are kept for reference: no formula of this workbook uses them. The hours in the tube-out sentences are fixed.",
    defaults: "What each begins with",
    group: (heading: string, n: number) => `${heading}: ${n} ${n === 1 ? "setting" : "settings"}`,
    asks: (n: number) => `${n} to look at`,
  },
  line: {
    now: "Now",
    nothing: "not entered",
    standard: "Default",
    noDefault: "none: any default would be taken for advice",
    clinicOnly: "none: the clinic’s own",
    range: "Across sources",
    noRange: "no range published",
    allowed: "Allowed",
    between: (least: number, most: number, unit: string) => `${least} to ${most} ${unit}`,
    source: "Source",
    show: "Show the cell",
    showOf: (label: string) => `Show the cell of: ${label}`,
  },
};
