"""Workbooks whose XML is written as some programs write it: another prefix, single quotes, comments, CDATA, UTF-16.

The content is that of table-with-totals.xlsx or of a small list; only the spelling of the XML differs, so the answers are the same.
"""

import json

from lxml import etree

from answers import EXPECTED, FILES, record
from packages import change_parts, read_parts

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
XML = "http://www.w3.org/XML/1998/namespace"
SOURCE = "table-with-totals.xlsx"


def make():
    prefixed()
    utf16()


def prefixed():
    ours = {name: write_prefixed for name, part in read_parts(FILES / SOURCE) if is_spreadsheet(name, part)}
    ours["xl/worksheets/sheet1.xml"] = lambda part: b"\xef\xbb\xbf" + write_prefixed(part, remarks=True)
    ours["xl/sharedStrings.xml"] = lambda part: write_prefixed(part, cdata=True)
    change_parts(FILES / SOURCE, ours, FILES / "prefixed-single-quoted.xlsx")
    same_answers("prefixed-single-quoted.xlsx", SOURCE)


def utf16():
    change_parts(
        FILES / "filter-on.xlsx",
        {
            "xl/worksheets/sheet1.xml": lambda part: in_utf16(part, "utf-16-le", b"\xff\xfe"),
            "xl/sharedStrings.xml": lambda part: in_utf16(part, "utf-16-be", b"\xfe\xff"),
        },
        FILES / "utf16-part.xlsx",
    )
    same_answers("utf16-part.xlsx", "filter-on.xlsx")


def same_answers(file, source):
    record(file, **json.loads(EXPECTED.read_text(encoding="utf-8"))["files"][source])


def is_spreadsheet(name, part):
    return name.endswith(".xml") and etree.fromstring(part).nsmap.get(None) == MAIN


def in_utf16(part, encoding, mark):
    text = etree.tostring(etree.fromstring(part), encoding="unicode")
    return mark + ('<?xml version="1.0" encoding="UTF-16" standalone="yes"?>\n' + text).encode(encoding)


def write_prefixed(part, remarks=False, cdata=False):
    """The whole part with x: on every SpreadsheetML element, single quotes, and rows on lines of their own."""
    out = ["<?xml version='1.0' encoding='UTF-8' standalone='yes'?>\n"]
    element(etree.fromstring(part), {}, out, remarks, cdata)
    return "".join(out).encode("utf-8")


def element(node, known, out, remarks, cdata):
    spaces = {("x" if uri == MAIN else prefix): uri for prefix, uri in node.nsmap.items()}
    name = qualified(node.tag, spaces)
    remark(node, out, remarks)
    out.append(f"<{name}")
    for prefix, uri in spaces.items():
        if known.get(prefix) != uri:
            out.append(f" xmlns:{prefix}='{uri}'" if prefix else f" xmlns='{uri}'")
    for key, value in node.attrib.items():
        # A > may stand in an attribute as it is; a reader that looks for the next > is caught here.
        out.append(f" {qualified(key, spaces)} = '{attribute(value)}'")
    if len(node) == 0 and not node.text:
        out.append(" />")
        return
    out.append(">" + content(node.text, cdata))
    for child in node:
        element(child, spaces, out, remarks, cdata)
        out.append(escaped(child.tail or ""))
    out.append(f"</{name} >")


def remark(node, out, remarks):
    local = etree.QName(node).localname
    if remarks and local == "sheetData":
        out.append("\n<!-- <x:sheetData><x:row r='6'><x:c r='A6'/></x:row></x:sheetData> was here -->\n<?note 'kept' > ?>\n")
    elif remarks and local == "row":
        out.append("\n  ")


def qualified(tag, spaces):
    name = etree.QName(tag)
    if name.namespace is None:
        return name.localname
    if name.namespace == XML:
        return f"xml:{name.localname}"
    prefix = next(prefix for prefix, uri in spaces.items() if uri == name.namespace)
    return f"{prefix}:{name.localname}" if prefix else name.localname


def content(text, cdata):
    if not text:
        return ""
    return f"<![CDATA[{text}]]>" if cdata and "]]>" not in text else escaped(text)


def escaped(text):
    return text.replace("&", "&#38;").replace("<", "&#x3C;").replace("]]>", "]]&gt;")


def attribute(value):
    value = value.replace("&", "&amp;").replace("<", "&lt;").replace("'", "&#39;")
    return value.replace("\n", "&#10;").replace("\t", "&#9;").replace("\r", "&#13;")
