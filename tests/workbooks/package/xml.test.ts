import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decodeXml, encodeXml } from "../../../taskpane/workbook/xlsx/xml/encoding";
import { parseElement } from "../../../taskpane/workbook/xlsx/xml/element";
import { XmlReader } from "../../../taskpane/workbook/xlsx/xml/reader";
import { Splices } from "../../../taskpane/workbook/xlsx/xml/splices";
import { Refused } from "../../../taskpane/workbook/xlsx/refusal";

const utf8 = (text: string) => decodeXml(new TextEncoder().encode(text), "part.xml");

function tokens(text: string): { kind: string; text: string; depth: number }[] {
  const reader = new XmlReader(utf8(text));
  const list = [];
  while (reader.next()) list.push({ kind: reader.kind, text: text.slice(reader.start, reader.end), depth: reader.depth });
  return list;
}

function read(text: string): void {
  const reader = new XmlReader(utf8(text));
  while (reader.next());
}

describe("tokens", () => {
  it("lie end to end over comments, CDATA, instructions, both quotes and odd spaces", () => {
    const source =
      `<?xml version='1.0'?>\r\n<!-- <c r="A1"/> --><x:a xmlns:x = 'u' b="1>2" ><?pi x > y?><x:b/>` +
      `t &amp; &#65;<![CDATA[<not> & a tag]]><x:c\n d='"'></x:c ></x:a>\n<!--end-->`;
    const list = tokens(source);
    expect(list.map((token) => token.text).join("")).toBe(source);
    expect(list.map((token) => token.kind)).toEqual([
      ...["declaration", "text", "comment", "start", "instruction", "start", "text", "cdata", "start", "end", "end", "text", "comment"],
    ]);
  });

  it("reproduce any document, and any well-formed tree is read back as it was (seed 20260801)", () => {
    const name = fc.constantFrom("a", "x:b", "row", "c.d", "é");
    const text = fc.string({ unit: fc.constantFrom("a", " ", "\n", "&lt;", "&#x41;", "'", '"', ">", "é", "🙂"), maxLength: 8 });
    const attribute = fc.tuple(fc.constantFrom("p", "q", "x:r"), fc.constantFrom("1", "a&amp;b", " ", "Ü"), fc.constantFrom("'", '"'));
    const tree = fc.letrec<{ node: string }>((tie) => ({
      node: fc.oneof(
        { maxDepth: 4 },
        text,
        fc.constant("<!-- <c> -->"),
        fc.constant("<![CDATA[<&]]>"),
        fc.constant("<?p i?>"),
        fc
          .tuple(name, fc.uniqueArray(attribute, { selector: (one) => one[0], maxLength: 3 }), fc.array(tie("node"), { maxLength: 4 }), fc.boolean())
          .map(([tag, attributes, children, selfClosing]) => {
            const start = `<${tag}${attributes.map(([key, value, quote]) => ` ${key}=${quote}${value}${quote}`).join("")}`;
            return selfClosing ? `${start} />` : `${start}>${children.join("")}</${tag}\n>`;
          }),
      ),
    })).node;
    fc.assert(
      fc.property(tree, (inside) => {
        const source = `<root xmlns:x="urn:x">${inside}</root>`;
        expect(tokens(source).map((token) => token.text).join("")).toBe(source);
      }),
      { seed: 20260801, numRuns: 1500 },
    );
  });
});

describe("what is decoded", () => {
  it("references, line ends, CDATA and namespaces (XML 1.0, 2.11 and 3.3.3; Namespaces 1.0)", () => {
    const root = parseElement(
      utf8(`<p:a xmlns:p="urn:one" xmlns="urn:two" q='&quot;&#x1F642;&lt;\n'>a\r\nb&amp;<![CDATA[&amp;]]><b xmlns=''/><c p:d="1"/></p:a>`),
    );
    expect(root.name).toMatchObject({ prefix: "p", local: "a", namespace: "urn:one" });
    expect(root.get("q")).toBe('"🙂< ');
    expect(root.text).toBe("a\nb&&amp;");
    expect(root.children.map((child) => child.name.namespace)).toEqual(["", "urn:two"]);
    expect(root.children[1]?.attribute("d", "urn:one")?.value).toBe("1");
  });

  it.each(["utf-8", "utf-16le", "utf-16be"] as const)("%s with and without a byte order mark, and back to the same bytes", (name) => {
    for (const hasMark of [true, false]) {
      const bytes = encodeXml("<a>Ä🙂</a>", { name, hasMark });
      const source = decodeXml(bytes, "part.xml");
      expect(source).toEqual({ text: "<a>Ä🙂</a>", encoding: { name, hasMark }, partName: "part.xml" });
      expect(encodeXml(source.text, source.encoding)).toEqual(bytes);
    }
  });
});

describe("what is refused", () => {
  it.each([
    ["an open element", "<a><b></b>"],
    ["a wrong end tag", "<a></b>"],
    ["an end tag that is longer", "<a></ab>"],
    ["a second root", "<a/><b/>"],
    ["nothing", " "],
    ["text beside the root", "<a/>x"],
    ["an attribute twice", `<a b="1" b='2'/>`],
    ["an attribute without quotes", "<a b=1/>"],
    ["an attribute without a value", "<a b/>"],
    ["attributes without a space between", `<a b="1"c="2"/>`],
    ["< in an attribute", `<a b="<"/>`],
    ["an unknown entity", "<a>&nbsp;</a>"],
    ["a bare ampersand", "<a>a & b</a>"],
    ["a bare ampersand in an attribute", `<a b="&"/>`],
    ["a reference to no character", "<a>&#0;</a>"],
    ["a reference to half a character", "<a>&#xD800;</a>"],
    ["]]> in a text", "<a>]]></a>"],
    ["-- in a comment", "<a><!-- -- --></a>"],
    ["an unknown prefix", "<p:a/>"],
    ["a declaration in the middle", "<a><?xml version='1.0'?></a>"],
    ["a control character", "<a>\u0001</a>"],
    ["another encoding", `<?xml version="1.0" encoding="windows-1252"?><a/>`],
    ["an unfinished tag", "<a"],
    ["an unfinished comment", "<a><!-- "],
    ["an unfinished CDATA section", "<a><![CDATA[ ]]"],
    ["a name that is none", "<1/>"],
    ["CDATA beside the root", "<![CDATA[x]]><a/>"],
  ])("%s", (_, source) => {
    expect(() => read(source)).toThrow(Refused);
  });

  it("a DOCTYPE, whatever it says", () => {
    expect(() => read(`<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>`)).toThrow(/document type declaration/);
  });

  it("bytes that are not the encoding they claim", () => {
    expect(() => decodeXml(new Uint8Array([0x3c, 0x61, 0xff, 0x3e]), "part.xml")).toThrow(Refused);
  });

  it("a million elements inside one another, at once", () => {
    const start = performance.now();
    expect(() => read("<a>".repeat(1_000_000))).toThrow(/over 256 elements inside one another/);
    // usual is a tenth of a second; copying what is open at every step would take hours
    expect(performance.now() - start).toBeLessThan(20_000);
  });
});

describe("splices", () => {
  it("change what they name and nothing between", () => {
    const splices = new Splices("abcdef");
    splices.replace(4, 5, "E");
    splices.insert(1, "1");
    splices.insert(1, "2");
    splices.remove(1, 2);
    expect(splices.apply()).toBe("a12cdEf");
  });

  it("do not overlap", () => {
    const splices = new Splices("abcdef");
    splices.replace(0, 3, "");
    splices.replace(2, 4, "");
    expect(() => splices.apply()).toThrow(/overlap/);
  });
});
