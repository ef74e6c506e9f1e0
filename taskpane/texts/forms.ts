/** What the forms for one person share: who it is, what will be written, the tube, the units. */
const ends = {
  G: "stomach (G)",
  GJ: "bowel, through the stomach (GJ)",
  J: "bowel (J)",
  "not known": "not known",
} as const;

export const forms = {
  noCaseload: "To use this, set up a caseload first: under ‘More’, choose ‘Set up a caseload’.",
  ends,
  person: {
    title: "Who is it?",
    id: "Identifier",
    hint: "As it stands in the list. No names.",
    find: "Look up",
    looking: "Looking…",
    give: "Type an identifier.",
    nobody: (id: string) =>
      `Nobody with the identifier ‘${id}’ is in the list. Check each letter and number, then try again.`,
    readBack: "Read this back to the caller",
    born: "Born",
    access: "Feed ends in",
    noBirth: "not written down: ask for something else that tells this person from others",
    row: (row: number) => `row ${row}`,
    yes: "Yes, this is the person",
    yesDevice: (end: string) => `Yes, and it is the tube into the ${end}`,
    unsure: "Yes, but it is not clear which tube",
    no: "No, look up somebody else",
    showRow: (row: number) => `Show row ${row}`,
    mend: "Nothing can be recorded until the list is clear.",
    confirmed: (id: string) => `This is ${id}.`,
    told: (born: string, end: string) => `Born: ${born}. Feed ends in: ${end}.`,
    toldUnsure: "It is not clear which tube of this person.",
  },
  form: {
    preview: "What will be written",
    previewLead: "Nothing is overwritten but what is shown here.",
    asks: "Look at this again:",
    anyway: "Yes, record it all the same",
    working: "Writing it down",
    another: "Another person",
    done: "Recorded",
    refused: "Not recorded",
    stopped: "Recording was stopped",
    stillHere:
      "Your entries are still here, and the list has been read again. Look at what will be written, then record.",
    lookAgain: (id: string) =>
      `What stands in the list of ${id} has changed. Look this person up again: your entries are kept as long as birth and access are as they were.`,
    lookFailed: (reason: string) =>
      `The list could not be read just now. Finish typing in the cell you are in, then try again. (${reason})`,
  },
  device: {
    heldBy: "Held by",
    knownFrom: "How that is known",
    shape: "Shape",
    size: "Size",
    length: "Length",
    fill: "Fill",
    most: "Most, as printed on its label",
  },
  units: { mL: "mL", cm: "cm", Fr: "Fr", hours: "hours", nights: "nights" },
};
