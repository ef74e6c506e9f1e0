/** Our Excel adapter on Microsoft's own library; below the library stands the model. */
import { parseArea } from "../../../taskpane/workbook/area";
import { ExcelWorkbook } from "../../../taskpane/workbook/excel/workbook";
import { Book } from "../../../taskpane/workbook/fake/book";
import type { WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import type { Progress, Workbook } from "../../../taskpane/workbook/port";
import type { ContractHost } from "../contract/contract";
import { loadLibrary, type Bridge } from "./library";
import { EVENTS, Model } from "./model";
import { Protocol } from "./protocol";

export interface Opened extends ContractHost {
  readonly workbook: Workbook;
  readonly book: Book;
  readonly model: Model;
  readonly protocol: Protocol;
}

/** Every member that the adapter has used in any test of this file: "Range.values", "Range.values=", "Table.resize". */
export const usedMembers = new Set<string>();

/** Stands in for Excel below the library: every request crosses as text and is answered from the model. */
export function open(description: WorkbookDescription): Promise<Opened> {
  const book = new Book(description);
  const model = new Model(book);
  const protocol = new Protocol(() => model.root());
  const bridge: Bridge = {
    sendMessageToHost(json) {
      const { id, message } = JSON.parse(json) as { id: number; message: { body: unknown } };
      const body = typeof message.body === "string" ? message.body : JSON.stringify(message.body);
      // Excel answers later, never at once
      setTimeout(() => {
        const response = { statusCode: 200, headers: {}, body: JSON.stringify(protocol.answer(body)) };
        this.onMessageFromHost?.(JSON.stringify({ id, type: 2, flags: 0, message: response }));
      });
    },
  };
  Object.assign(globalThis, loadLibrary(bridge));

  /** Excel tells the library of an event, if it was asked to. */
  const tell = (event: number, args: object) => {
    if (!model.registered.has(event)) return;
    const entry = { messageCategory: 65_536, messageType: event, targetId: "Workbook", message: JSON.stringify(args) };
    bridge.onMessageFromHost?.(JSON.stringify({ type: 3, message: { entries: [entry] } }));
  };
  return Promise.resolve({
    workbook: new ExcelWorkbook(),
    book,
    model,
    protocol,
    type: (sheet, address, typed) => {
      const place = parseArea(address)!;
      book.sheet(sheet)!.type(place.top, place.left, typed);
      const worksheetId = book.sheet(sheet)!.id;
      tell(EVENTS["Worksheets.DataChanged"]!, { worksheetId, address, changeType: "RangeEdited", source: "Local" });
      return Promise.resolve();
    },
    isBold: (sheet, address) => {
      const place = parseArea(address)!;
      return book.sheet(sheet)!.cell(place.top, place.left)?.bold ?? false;
    },
    close: () => {
      for (const member of protocol.used) usedMembers.add(member);
      return Promise.resolve();
    },
  });
}

export const using = (description: WorkbookDescription, work: (host: Opened) => Promise<void>) => async () => {
  const host = await open(description);
  await work(host);
  await host.close!();
};

export const watch = (): Progress => ({ report: () => undefined, signal: new AbortController().signal });
