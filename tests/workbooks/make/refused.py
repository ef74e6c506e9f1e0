"""Files that must be refused with a sentence. Encrypted and old binary ones come from by_libreoffice.py."""

import struct
import zlib

from lxml import etree

from answers import FILES, refuse
from mess import INVENTED
from packages import change_parts, read_parts, write_parts

SOURCE = "two-columns-one-name.xlsx"


def make():
    not_a_workbook()
    truncated()
    zip_of_photos()
    doctype()
    workbook_without_sheet_part()


def not_a_workbook():
    text = f"{INVENTED}\nID;Kind;Size\nN-001;balloon;14\n"
    (FILES / "not-a-workbook.xlsx").write_text(text, encoding="utf-8")
    refuse("not-a-workbook.xlsx", "a text file with the name of a workbook")


def truncated():
    whole = (FILES / SOURCE).read_bytes()
    (FILES / "truncated.xlsx").write_bytes(whole[: len(whole) * 6 // 10])
    refuse("truncated.xlsx", "the first six tenths of a workbook: the zip has no directory")


def zip_of_photos():
    photos = [(f"photos/tube-{n}.png", png(8, n * 60)) for n in (1, 2, 3)]
    write_parts(FILES / "zip-of-photos.xlsx", photos + [("photos/read me.txt", INVENTED.encode())])
    refuse("zip-of-photos.xlsx", "a zip without a workbook in it")


def png(side, grey):
    def chunk(kind, data):
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    rows = (b"\0" + bytes([grey]) * side) * side
    head = struct.pack(">IIBBBBB", side, side, 8, 0, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")


def doctype():
    """A document type with an entity of its own and one that asks for a file."""
    def with_entities(part):
        root = etree.fromstring(part)
        types = '<!DOCTYPE worksheet [<!ENTITY who "Invented"><!ENTITY file SYSTEM "file:///etc/hostname">]>\n'
        text = etree.tostring(root, encoding="unicode")
        cell = '<c r="J1" t="inlineStr"><is><t>&who; &file;</t></is></c></row>'
        first_row_end = text.index("</row>")
        text = text[:first_row_end] + cell + text[first_row_end + len("</row>"):]
        return ('<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n' + types + text).encode("utf-8")

    change_parts(FILES / SOURCE, {"xl/worksheets/sheet1.xml": with_entities}, FILES / "doctype.xlsx")
    refuse("doctype.xlsx", "a document type with entities in a sheet")


def workbook_without_sheet_part():
    parts = [(name, part) for name, part in read_parts(FILES / SOURCE) if name != "xl/worksheets/sheet1.xml"]
    write_parts(FILES / "sheet-part-missing.xlsx", parts)
    refuse("sheet-part-missing.xlsx", "the workbook names a sheet whose part is not there")
