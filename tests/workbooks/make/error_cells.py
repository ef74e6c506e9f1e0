"""error-cells.xlsx, by XlsxWriter: errors, formulas of add-ins, volatile formulas, a link to another file, a LAMBDA name.

XlsxWriter writes no parts for a link to another file: they are put in afterwards through an XML library.
"""

from datetime import date

from lxml import etree

from answers import FILES, record, sheet, the_list
from by_xlsxwriter import formats, open_book, put
from mess import INVENTED
from packages import change_parts, read_parts, write_parts

FILE = "error-cells.xlsx"
HEADS = ["ID", "Kind", "Size", "Size mm", "Last change", "Water put in", "Water out", "Other add-in"]
ROLES = {"id": "A", "kind": "B", "size": "C", "lastChange": "E", "waterIn": "F", "waterOut": "G"}
TO_MM = "=_xldudf_TUBE_FRTOMM(C{row})"
OTHER = "=_xldudf_OTHER_X(F{row},G{row})"

# id, kind, size, size mm (formula, stored), last change, put in, out, other; each (cell, meaning) or (formula, stored, meaning).
LINES = [
    [("balloon", "balloon"), (14, 14), (TO_MM, 14 / 3), ("=DATE(2025,9,1)", 45901, "2025-09-01"), (5, 5), (4.2, 4.2), (OTHER, 0.8)],
    [("balloon", "balloon"), ("14FR", 14), (TO_MM, 14 / 3), ("=NA()", "#N/A", None), (5, 5), (4, 4), (OTHER, 1)],
    [("=NA()", "#N/A", None), (12, 12), (TO_MM, 4), (date(2026, 1, 31), "2026-01-31"), (5, 5), (3, 3), (OTHER, 2)],
    [("GJ", "GJ"), ("=#REF!", "#REF!", None), (TO_MM, "#VALUE!"), (date(2025, 12, 5), "2025-12-05"), ("=1/0", "#DIV/0!", None), (4, 4), (OTHER, "#VALUE!")],
    [("PEG", "PEG"), (15, 15), ("=TUBE.FRTOMM(C{row})", "#NAME?"), ("=EDATE(DATE(2025,7,31),6)", 46053, "2026-01-31"), (None, None), (None, None), (OTHER, "#NAME?")],
    [("balloon", "balloon"), ("=INDIRECT(\"C4\")", 14, 14), (TO_MM, 14 / 3), ("=VALUE(\"x\")", "#VALUE!", None), (5, 5), ("=SQRT(-1)", "#NUM!", None), (OTHER, "#NUM!")],
    [("bumper", "bumper"), (16, 16), ("=ToMm(C{row})", 16 / 3), ("=\"2026-02-11\"", "2026-02-11", "2026-02-11"), ("=OFFSET(F4,0,0)", 5, 5), (4.4, 4.4), (OTHER, 0.6)],
    [("balloon", "balloon"), ("=[1]Stock!$B$2", 12, 12), (TO_MM, 4), ("=\"\"", "", None), ("=[1]Stock!$B$3", 4.5, 4.5), ("=F4:F5 F6:F7", "#NULL!", None), (OTHER, "#NULL!")],
]
HEADER, FIRST = 3, 4


def make():
    book = open_book(FILE)
    look = formats(book)
    page = book.add_worksheet("List")
    page.write_string("A1", INVENTED)
    for across, head in enumerate(HEADS):
        page.write_string(HEADER - 1, across, head, look["head"])
    rows = [fill(page, look, FIRST + down, line) for down, line in enumerate(LINES)]
    volatile = book.add_worksheet("Volatile")
    volatile.write_string("A1", "These change whenever the file is worked out; their stored values are from 1 June 2026")
    for down, (formula, stored) in enumerate([("=NOW()", 46174.375), ("=TODAY()", 46174), ("=RAND()", 0.25), ('=CELL("row",A1)', 1)]):
        volatile.write_formula(1 + down, 0, formula, look["date"] if down < 2 else None, stored)
    book.define_name("ToMm", "=_xlfn.LAMBDA(_xlpm.fr,_xlpm.fr/3)")
    book.define_name("Broken", "=List!#REF!")
    book.close()
    link_to_another_file()
    record(
        FILE,
        [sheet("List"), sheet("Volatile")],
        lists=[
            the_list(
                "List", rows, HEADER, FIRST, {role: HEADS["ABCDEFGH".index(letter)] for role, letter in ROLES.items()},
                ROLES, f"A{HEADER}:H{FIRST + len(rows) - 1}",
            )
        ],
    )


def fill(page, look, number, line):
    row = {"id": (f"E-{number:03d}",) * 2}
    page.write_string(number - 1, 0, f"E-{number:03d}")
    roles = ["kind", "size", None, "lastChange", "waterIn", "waterOut", None]
    for across, (role, cell) in enumerate(zip(roles, line), 1):
        day = look["date"] if role == "lastChange" else None
        if isinstance(cell[0], str) and cell[0].startswith("="):
            page.write_formula(number - 1, across, cell[0].format(row=number), day, cell[1])
        else:
            put(page, number - 1, across, cell[0], day, look["date"])
        if role:
            row[role] = (cell[0], cell[-1])
    return row


MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
LINKS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
PACKAGE = "http://schemas.openxmlformats.org/package/2006/"
STORED = f"""<externalLink xmlns="{MAIN}"><externalBook xmlns:r="{LINKS}" r:id="rId1"><sheetNames><sheetName val="Stock"/>
</sheetNames><sheetDataSet><sheetData sheetId="0"><row r="2"><cell r="B2"><v>12</v></cell></row><row r="3"><cell r="B3"><v>4.5</v>
</cell></row></sheetData></sheetDataSet></externalBook></externalLink>"""
TARGET = f"""<Relationships xmlns="{PACKAGE}relationships"><Relationship Id="rId1" Type="{LINKS}/externalLinkPath"
 Target="invented-stock-list.xlsx" TargetMode="External"/></Relationships>"""


def link_to_another_file():
    path = FILES / FILE
    change_parts(path, {"[Content_Types].xml": name_the_part, "xl/_rels/workbook.xml.rels": relate, "xl/workbook.xml": refer})
    parts = read_parts(path)
    for name, text in (("externalLink1.xml", STORED), ("_rels/externalLink1.xml.rels", TARGET)):
        parts.append((f"xl/externalLinks/{name}", written(etree.fromstring(text))))
    write_parts(path, parts)


def written(root):
    return etree.tostring(root, xml_declaration=True, encoding="UTF-8", standalone=True)


def name_the_part(part):
    root = etree.fromstring(part)
    kind = "application/vnd.openxmlformats-officedocument.spreadsheetml.externalLink+xml"
    etree.SubElement(root, f"{{{PACKAGE}content-types}}Override", PartName="/xl/externalLinks/externalLink1.xml", ContentType=kind)
    return written(root)


def relate(part):
    root = etree.fromstring(part)
    name = f"{{{PACKAGE}relationships}}Relationship"
    etree.SubElement(root, name, Id="rIdLink", Type=f"{LINKS}/externalLink", Target="externalLinks/externalLink1.xml")
    return written(root)


def refer(part):
    root = etree.fromstring(part)
    references = etree.Element(f"{{{MAIN}}}externalReferences")
    etree.SubElement(references, f"{{{MAIN}}}externalReference").set(f"{{{LINKS}}}id", "rIdLink")
    root.find(f"{{{MAIN}}}sheets").addnext(references)
    return written(root)
