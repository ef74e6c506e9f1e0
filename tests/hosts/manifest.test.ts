/**
 * The manifest's own rules, checked without a network: Microsoft's validator is a web service. Limits and the order of
 * elements: "Office Add-ins manifest reference" and "How to find the proper order of manifest elements", Microsoft Learn.
 */
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { basename } from "node:path";
import { inflateSync } from "node:zlib";
import { beforeAll, describe, expect, it } from "vitest";
import { draw, SIZES } from "../../taskpane/assets/icons";
import { decodeXml } from "../../taskpane/workbook/xlsx/xml/encoding";
import { parseElement, type XmlElement } from "../../taskpane/workbook/xlsx/xml/element";

const ROOT = new URL("../../", import.meta.url);
const file = (name: string) => readFileSync(new URL(name, ROOT));
const BASE = "https://localhost:3000/";
const XSI = "http://www.w3.org/2001/XMLSchema-instance";

const manifest = parseElement(decodeXml(file("manifest.xml"), "manifest.xml"));
const everything = (element: XmlElement): XmlElement[] => [element, ...element.children.flatMap(everything)];
const all = everything(manifest);
const named = (local: string) => all.filter((element) => element.name.local === local);
const one = (local: string, within: XmlElement = manifest): XmlElement => {
  const found = everything(within).filter((element) => element.name.local === local);
  expect(found.length, local).toBe(1);
  return found[0]!;
};
const kind = (element: XmlElement) => element.attribute("type", XSI)?.value;
const extension = (type: string) => named("ExtensionPoint").find((element) => kind(element) === type)!;
const resources = new Map(
  named("Resources").flatMap((element) =>
    everything(element).flatMap((r) => (r.get("id") ? [[r.get("id")!, r]] : [])),
  ) as [string, XmlElement][],
);
const resource = (element: XmlElement) => resources.get(element.get("resid") ?? "")?.get("DefaultValue");

/** Files the build writes, told by its own configuration. */
async function outputs(): Promise<Set<string>> {
  interface Copy {
    readonly from: string;
    readonly to?: string;
  }
  interface Build {
    readonly entry: Record<string, string>;
    readonly plugins: readonly { userOptions?: { filename?: string }; patterns?: readonly Copy[] }[];
  }
  const configure = createRequire(import.meta.url)("../../webpack.config.cjs") as () => Promise<readonly Build[]>;
  const written = new Set<string>();
  for (const build of await configure()) {
    for (const name of Object.keys(build.entry)) written.add(`${name}.js`);
    for (const { userOptions, patterns } of build.plugins) {
      if (userOptions?.filename) written.add(userOptions.filename);
      for (const { from, to } of patterns ?? [])
        if (from.endsWith("assets"))
          for (const asset of readdirSync(new URL(from, ROOT))) written.add(`${to}/${asset}`);
        else written.add(to ?? basename(from));
    }
  }
  return written;
}

describe("manifest", () => {
  it("is a task pane add-in for workbooks with an id, a version and names of allowed length", () => {
    expect(kind(manifest)).toBe("TaskPaneApp");
    expect(one("Id").text).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(one("Version").text).toMatch(/^\d{1,5}(\.\d{1,5}){3}$/);
    expect(Number.parseInt(one("Version").text)).toBeGreaterThanOrEqual(1);
    expect(one("DefaultLocale").text).toBe("en-GB");
    expect(one("DisplayName").get("DefaultValue")!.length).toBeLessThanOrEqual(125);
    const description = manifest.first("Description")!.get("DefaultValue")!;
    expect(description.length).toBeLessThanOrEqual(250);
    expect(named("Host").map((host) => host.get("Name") ?? kind(host))).toEqual(["Workbook", "Workbook"]);
    expect(one("Permissions").text).toBe("ReadWriteDocument");
  });

  it("asks for no newer runtime than Excel 2021 has", () => {
    const sets = named("Set").map((set) => [set.get("Name"), set.get("MinVersion")]);
    expect(sets).toEqual([
      ["SharedRuntime", "1.1"],
      ["CustomFunctionsRuntime", "1.3"],
    ]);
  });

  it("has its elements in Microsoft's order", () => {
    const orders: Record<string, string> = {
      OfficeApp:
        "Id Version ProviderName DefaultLocale DisplayName Description IconUrl HighResolutionIconUrl SupportUrl " +
        "AppDomains Hosts Requirements DefaultSettings Permissions VersionOverrides",
      VersionOverrides: "Hosts Resources",
      DesktopFormFactor: "GetStarted FunctionFile ExtensionPoint",
      GetStarted: "Title Description LearnMoreUrl",
      Group: "Label Icon Control",
      Control: "Label Supertip Icon Action",
      Supertip: "Title Description",
      Resources: "Images Urls ShortStrings LongStrings",
    };
    for (const [name, order] of Object.entries(orders))
      expect(
        one(name)
          .children.map((child) => child.name.local)
          .join(" "),
        name,
      ).toBe(order);
    const host = named("Host").find((element) => kind(element) === "Workbook")!;
    expect(host.children.map((child) => child.name.local)).toEqual(["Runtimes", "AllFormFactors", "DesktopFormFactor"]);
    expect(extension("CustomFunctions").children.map((child) => child.name.local)).toEqual([
      "Script",
      "Page",
      "Metadata",
      "Namespace",
    ]);
  });

  it("runs functions and pane in one long-lived runtime", () => {
    const pane = one("Runtime").get("resid");
    expect(one("Runtime").get("lifetime")).toBe("long");
    expect(one("SourceLocation", one("Page")).get("resid")).toBe(pane);
    expect(one("FunctionFile").get("resid")).toBe(pane);
    expect(one("SourceLocation", one("Action")).get("resid")).toBe(pane);
    expect(resource(one("Runtime"))).toBe(manifest.first("DefaultSettings")!.children[0]!.get("DefaultValue"));
  });

  it("names its functions TUBE", () => {
    expect(resource(one("Namespace"))).toBe("TUBE");
    expect(resource(one("SourceLocation", one("Script")))).toBe(`${BASE}functions.js`);
    expect(resource(one("SourceLocation", one("Metadata")))).toBe(`${BASE}functions.json`);
  });

  it("defines every resource it uses, uses every one it defines, and keeps to their lengths", () => {
    const used = new Set(all.flatMap((element) => element.get("resid") ?? []));
    expect([...used].sort()).toEqual([...resources.keys()].sort());
    for (const id of resources.keys()) expect(id.length, id).toBeLessThanOrEqual(32);
    const limits: Record<string, number> = { ShortStrings: 125, LongStrings: 250, Urls: 2048, Images: 2048 };
    for (const [group, most] of Object.entries(limits))
      for (const element of one(group).children)
        expect(element.get("DefaultValue")!.length, element.get("id")).toBeLessThanOrEqual(most);
  });

  describe("addresses", () => {
    let built: Set<string>;
    beforeAll(async () => {
      built = await outputs();
    });

    it("stand under one https address that the build replaces, and are files it writes", () => {
      const addresses = all
        .map((element) => element.get("DefaultValue") ?? "")
        .filter((value) => value.includes("://"))
        .sort();
      expect(addresses.length).toBeGreaterThan(8);
      for (const address of addresses) {
        expect(address.startsWith(BASE), address).toBe(true);
        expect([...built], address).toContain(address.slice(BASE.length));
      }
      expect(named("AppDomain").map((domain) => `${domain.text}/`)).toEqual([BASE]);
    });
  });
});

it("as built for a host of your own names that host everywhere, and no development server", async () => {
  interface Copy {
    readonly from: string;
    readonly transform?: (content: Buffer) => string;
  }
  const configure = createRequire(import.meta.url)("../../webpack.config.cjs") as (
    env: object,
  ) => Promise<readonly { readonly plugins: readonly { readonly patterns?: readonly Copy[] }[] }[]>;
  const own = "https://intranet.example:8443/tubes/";
  const copies = (await configure({ baseUrl: own })).flatMap(({ plugins }) =>
    plugins.flatMap(({ patterns }) => patterns ?? []),
  );
  for (const name of ["manifest.xml", "functions/generated/functions.json"]) {
    const built = copies.find(({ from }) => from === name)!.transform!(file(name));
    expect(built, name).not.toContain("localhost");
    expect(built, name).toContain(own);
    if (name === "manifest.xml") expect(built).toContain("<AppDomain>https://intranet.example:8443</AppDomain>");
  }
});

/** Width, height and pixels of a PNG whose rows are unfiltered. */
function decode(bytes: Buffer) {
  expect(bytes.subarray(1, 4).toString("latin1")).toBe("PNG");
  const [width, height] = [bytes.readUInt32BE(16), bytes.readUInt32BE(20)];
  const data: Buffer[] = [];
  for (let at = 8; at < bytes.length;) {
    const length = bytes.readUInt32BE(at);
    if (bytes.toString("latin1", at + 4, at + 8) === "IDAT") data.push(bytes.subarray(at + 8, at + 8 + length));
    at += length + 12;
  }
  const rows = inflateSync(Buffer.concat(data));
  const pixels = Array.from({ length: height }, (_, row) => {
    const start = row * (width * 4 + 1);
    expect(rows[start]).toBe(0);
    return rows.subarray(start + 1, start + 1 + width * 4);
  });
  return { width, height, pixels: Buffer.concat(pixels) };
}

describe("icons", () => {
  it.each(SIZES)("of %i pixels are that size, and are what the script draws", (size) => {
    const icon = decode(file(`taskpane/assets/icon-${size}.png`));
    expect([icon.width, icon.height]).toEqual([size, size]);
    expect(icon.pixels.equals(Buffer.from(draw(size)))).toBe(true);
  });

  it("are named by their size where the manifest asks for one", () => {
    const images = named("Image").filter((image) => image.get("size"));
    expect(images.length).toBe(6);
    for (const image of images) expect(resource(image)).toBe(`${BASE}assets/icon-${image.get("size")}.png`);
    expect(one("IconUrl").get("DefaultValue")).toBe(`${BASE}assets/icon-32.png`);
    expect(one("HighResolutionIconUrl").get("DefaultValue")).toBe(`${BASE}assets/icon-64.png`);
  });
});
