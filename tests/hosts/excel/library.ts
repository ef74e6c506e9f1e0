/**
 * Microsoft's own Excel library, as of 2022, without a page: of one it asks for little more than its address. That it
 * works with our adapter in a real page too is shown by tests/browser/excel-host.test.ts.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { createContext, Script } from "node:vm";

export const LIBRARY = createRequire(import.meta.url).resolve("@microsoft/office-js/dist/excel-win32-16.01.js");

/** Where the library hands requests over, and where it is told answers and events. Its methods are called as members. */
export interface Bridge {
  sendMessageToHost(json: string): void;
  onMessageFromHost?(json: string): void;
}

/** Compiled once for a file of tests. */
let script: Script | undefined;

/** A library that knows nothing of others, in a page of its own as it were. */
export function loadLibrary(bridge: Bridge): Pick<typeof globalThis, "Excel" | "Office"> {
  script ??= new Script(readFileSync(LIBRARY, "utf8"), { filename: LIBRARY });
  const page = {
    _richApiNativeBridge: bridge,
    navigator: { userAgent: "" },
    location: new URL("http://workbook.test/"),
    document: { URL: "http://workbook.test/", getElementsByTagName: () => [] },
    addEventListener: () => undefined,
    name: "",
    setTimeout,
    clearTimeout,
    console,
    // what crosses between us and the library is of one kind
    JSON,
    Array,
    Object,
    Error,
    Promise,
  };
  const window = createContext(Object.assign(page, { window: page }));
  script.runInContext(window);
  return window as unknown as Pick<typeof globalThis, "Excel" | "Office">;
}
