/** A description with every feature in it. All content is invented. */
import type { BookDescription, TableColumn } from "../../../src/caseload/book";
import { formula } from "../../../src/columns/formula";
import { CellError } from "../../../src/worksheet/error";

export const AS_OF = 46_352; // 26 November 2026

const plain = { width: 12, format: "General", kind: "typed" } as const;
const id = { header: "ID", index: 0 };
const lot = { header: "Lot", index: 1 };
const deviceIn = { header: "Device in", index: 2 };
const size = { header: "Size Fr", index: 3 };
const odd = { header: "O'dd [#] & <name>", index: 9 };

export const LONG_LIST = Array.from({ length: 30 }, (_, i) => `word number ${i + 1}`);
export const COMMA_LIST = ["carer, tells us", "nurse", "not arranged"];

const columns: readonly TableColumn[] = [
  {
    ...plain,
    header: id.header,
    width: 10,
    format: "@",
    group: "Person",
    validation: {
      kind: "formula",
      formula: formula`COUNTIF(All_IDs,${id})=1`,
      title: "Two rows",
      sentence: "Another row has this ID.",
      severity: "ask",
      hint: "The clinic's own, no name.",
    },
  },
  { ...plain, header: lot.header, format: "@", group: "Person" },
  {
    ...plain,
    header: deviceIn.header,
    format: "d mmm yyyy",
    group: "Device",
    validation: {
      kind: "number",
      least: 36_526,
      most: 73_050,
      isWhole: true,
      title: "Date",
      sentence: "A date such as 14 May 2026.",
      severity: "stop",
    },
  },
  {
    ...plain,
    header: size.header,
    format: "0.##",
    group: "Device",
    validation: {
      kind: "number",
      least: 5,
      most: 30,
      title: "Size",
      sentence: `French, 5 to 30 <& "no" mm>.`,
      severity: "stop",
    },
  },
  {
    ...plain,
    header: "Days in place",
    format: "0",
    kind: "computed",
    formula: formula`IF(ISNUMBER(${deviceIn}),As_of-${deviceIn},"no date")`,
    rules: [
      { look: "missing", words: ["no date"] },
      { look: "act", words: ["past limit", "overdue …"] },
      { look: "soon", formula: formula`AND(ISNUMBER(${deviceIn}),As_of-${deviceIn}>Most_days)` },
    ],
  },
  { ...plain, header: "Size mm", format: "0.0", kind: "computed", formula: formula`TUBE.FRTOMM(${size})` },
  {
    ...plain,
    header: "Latest",
    format: "d mmm yyyy",
    kind: "computed",
    formula: formula`IF(COUNTIFS(Invented_list[ID],${id},Invented_list[Device in],">0")=0,"",MAXIFS(Invented_list[Device in],Invented_list[ID],${id}))`,
    isHidden: true,
  },
  { ...plain, header: "Is large", kind: "computed", formula: formula`N(${size})>=20` },
  {
    ...plain,
    header: "Checked by",
    kind: "list",
    validation: {
      kind: "list",
      words: COMMA_LIST,
      title: "Checked by",
      sentence: "Choose from the list.",
      severity: "stop",
    },
    rules: [{ look: "grey", formula: formula`EXACT(${id},"D-002")` }],
  },
  {
    ...plain,
    header: odd.header,
    kind: "list",
    width: 20,
    validation: {
      kind: "list",
      words: ["yes", "no"],
      title: "Yes or no",
      sentence: "Choose from the list.",
      severity: "ask",
    },
  },
  { ...plain, header: "Odd again", kind: "computed", formula: formula`IF(EXACT(${odd},"yes"),1,NA())` },
  {
    ...plain,
    header: "Long choice",
    kind: "list",
    validation: { kind: "list", words: LONG_LIST, title: "Long", sentence: "Choose.", severity: "stop" },
  },
  { ...plain, header: "Notes", width: 40 },
];

/** Texts that programs like to turn into something else. */
export const TREACHEROUS = ["03-04", "1E5", "007", "=1+1", "+44", "@home", "-5", "BGT ", " two\nlines"];

const NA = new CellError("#N/A");
const rows = [
  ["D-001", "03-04", 46_000, 14, 352, 14 / 3, 46_000, false, "carer, tells us", "yes", 1, "word number 1", "=1+1"],
  ["D-002", "1E5", 45_000, 20, 1352, 20 / 3, 45_000, true, "nurse", "no", NA, "word number 30", "+44 invented"],
  ["007", "=1+1", null, null, "no date", "", "", false, null, null, NA, null, "@home"],
  ["-5", "+44", 46_352, 5, 0, 5 / 3, 46_352, false, null, null, NA, null, "BGT "],
  ["D-003", "@home", 46_300.5, 9.5, 51.5, 9.5 / 3, 46_300.5, false, null, null, NA, null, " two\nlines & <tag> _x0041_"],
];

export const everything: BookDescription = {
  title: "Invented <book> & more",
  sheets: [
    {
      name: "Read first",
      widths: { 0: 3, 1: 60, 2: 20 },
      cells: [
        { row: 0, column: 1, value: "Invented list", look: "title" },
        { row: 1, column: 1, value: "Nobody stands behind these rows.", look: "invented" },
        {
          row: 3,
          column: 1,
          value: "A long line that says what the list is for and goes on until it needs more than one line to be read.",
          look: "text",
          wrap: true,
          across: 2,
        },
        { row: 4, column: 1, value: "Rows", look: "text" },
        { row: 4, column: 2, value: 5, formula: "COUNTA(Invented_list[ID])", look: "computed", format: "0" },
        { row: 5, column: 1, value: "Number to call", look: "caution" },
      ],
      print: { landscape: false, footer: "24 h & more" },
    },
    {
      name: "Nina's list",
      cells: [
        { row: 0, column: 0, value: "Invented", look: "invented" },
        { row: 6, column: 3, look: "caution", format: "0.0" },
      ],
      table: { name: "Invented_list", top: 3, left: 0, columns, rows },
      frozen: { rows: 4, columns: 1 },
      print: { landscape: true, titleRow: 3, footer: "Invented list" },
    },
    {
      name: "Settings",
      widths: { 0: 30, 1: 14 },
      cells: [
        { row: 0, column: 0, value: "Most days in place", look: "heading" },
        {
          row: 0,
          column: 1,
          value: 365,
          look: "setting",
          format: "0",
          validation: {
            kind: "number",
            least: 1,
            most: 2000,
            isWhole: true,
            title: "Days",
            sentence: "Whole days.",
            severity: "stop",
          },
        },
        { row: 1, column: 0, value: "Agreed", look: "text" },
        { row: 1, column: 1, value: true },
      ],
    },
  ],
  names: [
    { name: "As_of", refersTo: "TODAY()" },
    { name: "Most_days", refersTo: "Settings!$B$1" },
    { name: "All_IDs", refersTo: "Invented_list[ID]" },
  ],
};
