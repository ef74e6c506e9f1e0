/** Add a person. */
export const addPerson = {
  title: "The person",
  device: "The tube now in",
  only: "Identifiers only, no names.",
  id: "Identifier",
  status: "Status",
  born: "Born",
  bornHint: "The first of the month will do.",
  access: "Where the feed ends",
  made: "Stoma made on",
  slow: "Slow healing",
  slowHint: "Steroids, ascites, malnutrition, immune suppression.",
  deviceIn: "This tube went in on",
  changedBy: "Who changes it",
  spare: "Spare at home",
  record: "Add this person",
};
