import { afterEach, describe, expect, it, vi } from "vitest";
import { detectHost } from "../../../taskpane/workbook/excel/host";

const office = (onReady: () => Promise<{ host: string | null }>) =>
  vi.stubGlobal("Office", { onReady, HostType: { Excel: "Excel", Word: "Word" } });

describe("which program opened the page", () => {
  afterEach(() => vi.unstubAllGlobals());

  it("is a browser when office.js could not be loaded", async () => {
    expect(await detectHost()).toBe("browser");
  });

  it("is a browser when office.js finds no host", async () => {
    office(() => Promise.resolve({ host: null }));
    expect(await detectHost()).toBe("browser");
  });

  it("is a browser when office.js never answers", async () => {
    office(() => new Promise(() => undefined));
    expect(await detectHost(20)).toBe("browser");
  });

  it("is a browser when office.js fails", async () => {
    office(() => Promise.reject(new Error("a file of it is missing")));
    expect(await detectHost()).toBe("browser");
  });

  it("is Excel, or another program", async () => {
    office(() => Promise.resolve({ host: "Excel" }));
    expect(await detectHost()).toBe("excel");
    office(() => Promise.resolve({ host: "Word" }));
    expect(await detectHost()).toBe("other Office program");
  });
});
