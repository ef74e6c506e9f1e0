import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { openPackage } from "../../../taskpane/workbook/package";
import { book, files, MAIN, oneSheet, refusalOf, relationshipsXml, SHEET, sheetXml } from "./build";

const refused = (bytes: Uint8Array, limits = {}) => refusalOf(openPackage(bytes, limits));
const row = (cells: string) => oneSheet(`<row r="1">${cells}</row>`);

/** An older container (MS-CFB) whose directory holds these names, four to a sector, the sectors chained backwards. */
function compoundFile(names: readonly string[]): Uint8Array {
  const sectors = Math.ceil(names.length / 4);
  const bytes = new Uint8Array(512 * (sectors + 2));
  const view = new DataView(bytes.buffer);
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  view.setUint16(30, 9, true);
  view.setUint32(48, sectors, true);
  view.setUint32(76, 0, true);
  for (let at = 0; at < sectors; at++) view.setUint32(512 + (sectors - at) * 4, at === sectors - 1 ? 0xfffffffe : sectors - at - 1, true);
  names.forEach((name, index) => {
    const entry = (sectors - Math.floor(index / 4) + 1) * 512 + (index % 4) * 128;
    [...name].forEach((letter, at) => view.setUint16(entry + at * 2, letter.charCodeAt(0), true));
    view.setUint16(entry + 64, name.length * 2 + 2, true);
  });
  return bytes;
}

describe("what is no workbook of ours", () => {
  it("a text, an empty file, photographs", () => {
    expect(refused(strToU8("a,b,c"))).toMatch(/not an Excel workbook/);
    expect(refused(new Uint8Array())).toMatch(/not an Excel workbook/);
    expect(refused(zipSync({ "a.jpg": new Uint8Array(9) }))).toMatch(/not an Excel workbook/);
  });

  it("one with a password, an older one, another old document", () => {
    const storages = ["Root Entry", "DataSpaces", "Version", "DataSpaceMap", "DataSpaceInfo", "EncryptionInfo"];
    expect(refused(compoundFile([...storages, "EncryptedPackage"]))).toMatch(/protected by a password/);
    expect(refused(compoundFile(["Root Entry", "Workbook"]))).toMatch(/older kind \(\.xls\)/);
    expect(refused(compoundFile(["Root Entry", "WordDocument"]))).toMatch(/not an Excel workbook/);
  });

  it("a binary, a strict and an OpenDocument one", () => {
    const parts = files({ sheets: [] });
    const types = new TextDecoder().decode(parts["[Content_Types].xml"]);
    const binary = types.replace(/application\/[^"]*sheet\.main\+xml/, "application/vnd.ms-excel.sheet.binary.macroEnabled.main");
    expect(refused(zipSync({ ...parts, "[Content_Types].xml": strToU8(binary) }))).toMatch(/\.xlsb/);
    const strict = relationshipsXml(
      `<Relationship Id="a" Type="http://purl.oclc.org/ooxml/officeDocument/relationships/officeDocument" Target="xl/workbook.xml"/>`,
    );
    expect(refused(zipSync({ ...parts, "_rels/.rels": strToU8(strict) }))).toMatch(/Strict Open XML/);
    expect(refused(zipSync({ mimetype: strToU8("x"), "META-INF/manifest.xml": strToU8("x"), "content.xml": strToU8("x") }))).toMatch(
      /OpenDocument/,
    );
  });
});

describe("what is damaged or made to attack", () => {
  it("a file cut short, and bytes turned over", () => {
    const whole = row("<c><v>1</v></c>");
    for (const length of [30, 200, whole.length - 1]) expect(refused(whole.slice(0, length))).toMatch(/damaged/);
    for (let at = 40; at < whole.length; at += 7) {
      const bent = whole.slice();
      bent[at] = (bent[at] as number) ^ 0x55;
      const answer = openPackage(bent);
      if ("refused" in answer) expect(answer.refused).toMatch(/^[A-Z].*\.$/s);
    }
  });

  it("a zip bomb, by its ratio and by its size, before it is unpacked", () => {
    const bomb = book({ sheets: [{ name: "S", inside: `<sheetData/>${" ".repeat(20_000_000)}` }] });
    expect(bomb.length).toBeLessThan(100_000);
    expect(refused(bomb)).toMatch(/unpacks to many times its size/);
    expect(refused(bomb, { ratio: 2000, unpackedBytes: 1_000_000 })).toMatch(/too large .* 1 MB/);
  });

  it("two parts of one name, names that point outside, a name that differs inside", () => {
    const parts = files({ sheets: [] });
    expect(refused(zipSync({ ...parts, "XL/Workbook.xml": strToU8("x") }))).toMatch(/same part twice/);
    for (const name of ["../a.xml", "/a.xml", "xl/../../a.xml", "xl\\a.xml", "C:/a.xml"]) {
      expect(refused(zipSync({ ...parts, [name]: strToU8("x") }))).toMatch(/part outside itself/);
    }
    const bytes = zipSync({ ...parts, "xl/aaaa.xml": strToU8("x") });
    const local = new TextDecoder("latin1").decode(bytes).indexOf("xl/aaaa.xml");
    bytes[local + 3] = 98;
    expect(refused(bytes)).toMatch(/damaged/);
  });

  it("too much of everything", () => {
    expect(refused(row("<c/>"), { fileBytes: 100 })).toMatch(/too large/);
    expect(refused(row("<c/>"), { entries: 3 })).toMatch(/more than 3 parts/);
    expect(refused(row("<c/>".repeat(11)), { cells: 10 })).toMatch(/more than 10 cells/);
  });

  it("a DOCTYPE in any part, read here or not, in any encoding", () => {
    const bomb = `<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]>`;
    expect(refused(book({ sheets: [{ name: "S", xml: bomb + sheetXml("<sheetData/>") }] }))).toMatch(/document type declaration/);
    expect(refused(oneSheet("", { more: { "xl/drawings/drawing1.xml": `${bomb}<x>&b;</x>` } }))).toMatch(/document type declaration/);
    const wide = new Uint8Array([...`<?xml version="1.0"?>${bomb}<x/>`].flatMap((letter) => [letter.charCodeAt(0), 0]));
    expect(refused(oneSheet("", { more: { "xl/custom.xml": wide } }))).toMatch(/document type declaration/);
  });

  it("a million elements inside one another", () => {
    const nested = "<extLst>".repeat(1_000_000);
    expect(refused(book({ sheets: [{ name: "S", xml: sheetXml(`<sheetData/>${nested}`) }] }), { ratio: 2000 })).toMatch(/inside one another/);
  });

  it.each([
    ["cells out of order", `<c r="B1"/><c r="A1"/>`],
    ["a cell twice", `<c r="A1"/><c r="A1"/>`],
    ["a cell of another row", `<c r="A2"/>`],
    ["a cell beyond the sheet", `<c r="XFD1"/><c/>`],
    ["an address that is none", `<c r="1A"/>`],
    ["a style that is not there", `<c r="A1" s="4"/>`],
    ["a text that is not there", `<c r="A1" t="s"><v>0</v></c>`],
    ["a number that is none", `<c r="A1"><v>x</v></c>`],
    ["an endless number", `<c r="A1"><v>1e999</v></c>`],
    ["a cell of no known kind", `<c r="A1" t="q"><v>1</v></c>`],
    ["a formula of no known kind", `<c r="A1"><f t="q">1</f></c>`],
  ])("%s", (_, cells) => {
    expect(refused(row(cells))).toMatch(/^This workbook is damaged: .*xl\/worksheets\/sheet1.xml, character \d+/);
  });

  it("a part that is missing, rows out of order, a sheet that is none", () => {
    const parts = files({ sheets: [{ name: "S" }] });
    delete parts[SHEET];
    expect(refused(zipSync(parts))).toMatch(/its part xl\/worksheets\/sheet1.xml is missing/);
    expect(refused(oneSheet(`<row r="2"/><row r="1"/>`))).toMatch(/rows of a sheet are not in order/);
    expect(refused(book({ sheets: [{ name: "S", xml: `<worksheet xmlns="${MAIN}"/>` }] }))).toMatch(/no place for cells/);
    expect(refused(book({ sheets: [{ name: "S", xml: `<x/>` }] }))).toMatch(/not what it says/);
    expect(refused(book({ sheets: [{ name: "S" }, { name: "s" }] }))).toMatch(/damaged/);
  });
});
