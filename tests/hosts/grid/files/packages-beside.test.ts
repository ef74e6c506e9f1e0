/** Packages on a thread of their own give what they give on this one: told through messages, as another thread gets them. */
import { readdirSync, readFileSync } from "node:fs";
import { strToU8, zipSync } from "fflate";
import { afterAll, describe, expect, it } from "vitest";
import { packagesBeside, type Thread } from "../../../../taskpane/workbook/embedded/packages/beside";
import { packagesHere } from "../../../../taskpane/workbook/embedded/packages/here";
import { serve, type OwnThread } from "../../../../taskpane/workbook/embedded/packages/serving";
import { isRefusal, Stopped, type PackageEdits } from "../../../../taskpane/workbook/package";

const FOLDER = new URL("../../../workbooks/files/", import.meta.url);
const files = readdirSync(FOLDER).filter((name) => /\.xls[xm]$/.test(name) && !name.startsWith("ten-thousand"));
const bytesOf = (name: string) => new Uint8Array(readFileSync(new URL(name, FOLDER)));

const channels: MessageChannel[] = [];
afterAll(() => channels.forEach(({ port1, port2 }) => (port1.close(), port2.close())));

/** Two ends of a channel: what goes through it is copied as between threads. */
async function beside() {
  const channel = new MessageChannel();
  channels.push(channel);
  const starting = packagesBeside(
    Object.assign(channel.port1, { onerror: null, terminate: () => undefined }) as unknown as Thread,
  );
  serve(channel.port2 as unknown as OwnThread);
  return (await starting)!;
}

describe("packages on a thread of their own", () => {
  it("are told as they are, and saved to the same bytes, on every file made by other programs", async () => {
    const [there, here] = [await beside(), packagesHere()];
    let saved = 0;
    for (const name of files) {
      const [far, near] = [await there.open(bytesOf(name)), await here.open(bytesOf(name))];
      if (isRefusal(far) || isRefusal(near)) {
        expect(far, name).toEqual(near);
        continue;
      }
      expect(far.display, name).toEqual(near.display);
      const { opened } = far;
      for (const key of Object.keys(opened) as (keyof typeof opened)[])
        if (typeof opened[key] !== "function") expect(opened[key], `${name} ${key}`).toEqual(near.opened[key]);
      for (let style = 0; style < opened.styleCount; style++) {
        const seen = ({ opened: one }: typeof far) => [
          one.numberFormat(style),
          one.isQuoted(style),
          one.isLocked(style),
        ];
        expect(seen(far)).toEqual(seen(near));
      }
      const sheets = opened.sheets.filter(({ kind, isProtected }) => kind === "worksheet" && !isProtected);
      for (const sheet of sheets) {
        expect([...opened.cells(sheet.name)], name).toEqual([...near.opened.cells(sheet.name)]);
        expect(opened.layout(sheet.name)).toEqual(near.opened.layout(sheet.name));
      }
      const table = opened.tables.find(
        ({ sheetName, totalsRowCount }) => totalsRowCount === 0 && sheets.some((one) => one.name === sheetName),
      );
      const edits: PackageEdits = {
        sheets: new Map(sheets.map((sheet) => [sheet.name, { cells: new Map([["XFD7", { value: "x" }]]) }])),
        tables: table
          ? [{ table: table.name, addColumns: [{ header: "Own", calculatedColumnFormula: "1+1", valueAt: () => 2 }] }]
          : [],
      };
      const patched = await there.patch(opened, edits);
      expect(patched, name).toEqual(await here.patch(near.opened, edits));
      if (!isRefusal(patched)) saved++;
      there.release(opened);
    }
    expect(saved).toBeGreaterThan(20);
  });

  it("can be stopped, and go on with the next file", async () => {
    const there = await beside();
    const rows = Array.from(
      { length: 60_000 },
      (_, row) => `<row r="${row + 1}"><c r="A${row + 1}"><v>${row}</v></c><c r="B${row + 1}"><v>1.5</v></c></row>`,
    );
    const file = await there.open(bytesOf(files[0]!));
    if (isRefusal(file)) throw new Error(file.refused);
    const stop = new AbortController();
    const large = there.open(made(rows.join("")), { signal: stop.signal });
    // said behind the order to open, it is heard while the file is being unpacked, however fast that goes
    stop.abort();
    await expect(large).rejects.toThrow(Stopped);
    const again = await there.patch(file.opened, { sheets: new Map() });
    expect(isRefusal(again)).toBe(false);
  });

  it("are not there where the thread does not start", async () => {
    const thread: Thread = { onmessage: null, onerror: null, postMessage: () => undefined, terminate: () => undefined };
    const starting = packagesBeside(thread);
    thread.onerror!({ message: "not found" } as ErrorEvent);
    expect(await starting).toBeUndefined();
  });
});

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";

const made = (rows: string): Uint8Array =>
  zipSync({
    "[Content_Types].xml": strToU8(
      `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`,
    ),
    "_rels/.rels": strToU8(
      `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="a" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ),
    "xl/workbook.xml": strToU8(
      `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="S" sheetId="1" r:id="a"/></sheets></workbook>`,
    ),
    "xl/_rels/workbook.xml.rels": strToU8(
      `<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="a" Type="${OFFICE}/worksheet" Target="sheet1.xml"/></Relationships>`,
    ),
    "xl/sheet1.xml": strToU8(`<worksheet xmlns="${MAIN}"><sheetData>${rows}</sheetData></worksheet>`),
  });
