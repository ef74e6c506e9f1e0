"""plain-list-title-rows.xlsx and blank-row-under-headers.xlsx, by openpyxl: lists with no table round them."""

from datetime import datetime

import openpyxl
from openpyxl.comments import Comment
from openpyxl.formatting.rule import CellIsRule, ColorScaleRule, DataBarRule, FormulaRule, IconSetRule
from openpyxl.styles import Alignment, Border, Font, NamedStyle, PatternFill, Side
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.datavalidation import DataValidation

from answers import FILES, record, sheet, the_list
from mess import INVENTED, caseload, typed
from packages import hold_the_clock

MADE = datetime(2026, 6, 1, 9, 0, 0)
SHEET = "Caseload 2026"
GROUPS = [("B", "D", "Tube"), ("E", "F", "Dates"), ("G", "H", "Water")]
HEADS = {
    "A": ("id", "Hosp no"), "B": ("kind", "Type of\ntube"), "C": ("size", "Size"), "D": (None, "Item"),
    "E": ("lastChange", "Last change"), "F": (None, "Seen by phone"), "G": ("waterIn", "Put in"), "H": ("waterOut", "Came out"),
    "I": ("notes", "Notes"),
}
GROUP_ROW, HEADER, FIRST, COUNT = 5, 6, 7, 120
LAST = FIRST + COUNT - 1
HIDDEN_ROWS = [20, 21, 22, 57, 90]


def save(book, file):
    """With the clock held, so that making the file again gives the same file."""
    hold_the_clock()
    book.properties.creator = "Invented"
    book.properties.title = "Feeding tubes"
    book.properties.description = INVENTED
    book.properties.created = book.properties.modified = MADE
    book.save(FILES / file)


def put(page, address, value, day_format):
    """Text stays text: openpyxl would read '=not a formula' as a formula."""
    cell = page[address]
    cell.value = value
    if isinstance(value, str):
        cell.data_type = "s"
    if isinstance(value, datetime) or (cell.is_date and value is not None):
        cell.number_format = day_format
    return cell


def make():
    make_title_rows()
    make_blank_row()


def make_title_rows():
    rows = caseload(COUNT, seed=202, prefix="T")
    book = openpyxl.Workbook()
    page = book.active
    page.title = SHEET
    write_heads(page)
    for down, row in enumerate(rows):
        for letter, (role, _) in HEADS.items():
            if role:
                put(page, f"{letter}{FIRST + down}", typed(row, role), "d mmm yyyy")
        page[f"D{FIRST + down}"] = f"item {1 + down % 9}"
        page[f"F{FIRST + down}"] = f"=IF(ISNUMBER(E{FIRST + down}),E{FIRST + down}+14,\"\")"
        page[f"F{FIRST + down}"].number_format = "dd/mm/yy"
    page[f"A{LAST + 3}"] = "Numbers in the Size column are French gauge unless marked. List kept by the invented team."
    page[f"A{LAST + 4}"] = "Last count"
    page[f"G{LAST + 4}"] = f"=SUM(G{FIRST}:G{LAST})"
    dress(book, page)
    second = book.create_sheet("Änderungen")
    second.append(["Kürzel", "Sondenart", "Größe", "Wechsel am"])
    second.append(["P-01", "Ballon", "14 Ch", "20.02.2026"])
    second.append(["P-02", "Halteplatte", 15, "unbekannt"])
    save(book, "plain-list-title-rows.xlsx")
    record(
        "plain-list-title-rows.xlsx",
        [sheet(SHEET), sheet("Änderungen")],
        lists=[
            the_list(
                SHEET, rows, HEADER, FIRST,
                {role: head for role, head in HEADS.values() if role},
                {role: letter for letter, (role, _) in HEADS.items() if role},
                f"A{HEADER}:I{LAST}", hidden=HIDDEN_ROWS,
            )
        ],
        hiddenColumns=["D"],
        groupRow=GROUP_ROW,
        headersMergedUpwards=["A", "I"],
    )


def write_heads(page):
    page.merge_cells("A1:I1")
    page["A1"] = "Community feeding tubes"
    page["A1"].font = Font(size=16, bold=True)
    page["A1"].alignment = Alignment(horizontal="center")
    page["A2"] = INVENTED
    page["A3"] = "Printed"
    page["B3"] = MADE
    page["B3"].number_format = "dd/mm/yyyy"
    thin = Side(style="thin")
    for first, last, text in GROUPS:
        page[f"{first}{GROUP_ROW}"] = text
        page.merge_cells(f"{first}{GROUP_ROW}:{last}{GROUP_ROW}")
    for letter, (role, head) in HEADS.items():
        upright = role in ("id", "notes")
        cell = page[f"{letter}{GROUP_ROW if upright else HEADER}"]
        cell.value = head
        cell.font = Font(bold=True)
        cell.fill = PatternFill("solid", fgColor="FFE2EFDA")
        cell.border = Border(bottom=thin)
        cell.alignment = Alignment(wrap_text=True)
        if upright:
            page.merge_cells(f"{letter}{GROUP_ROW}:{letter}{HEADER}")


def dress(book, page):
    for hidden in HIDDEN_ROWS:
        page.row_dimensions[hidden].hidden = True
    page.column_dimensions["D"].hidden = True
    page.column_dimensions["I"].width = 40
    page.freeze_panes = f"B{FIRST}"
    red = PatternFill("solid", bgColor="FFFFC7CE")
    page.conditional_formatting.add(f"H{FIRST}:H{LAST}", CellIsRule(operator="lessThan", formula=["4"], fill=red))
    page.conditional_formatting.add(f"A{FIRST}:I{LAST}", FormulaRule(formula=[f'$B{FIRST}="GJ"'], font=Font(bold=True)))
    page.conditional_formatting.add(f"G{FIRST}:G{LAST}", DataBarRule("min", None, "max", None, color="FF638EC6"))
    page.conditional_formatting.add(f"C{FIRST}:C{LAST}", ColorScaleRule("min", None, "FFFFFFFF", end_type="max", end_color="FFF8CBAD"))
    page.conditional_formatting.add(f"H{FIRST}:H{LAST}", IconSetRule("3Arrows", "percent", [0, 33, 67]))
    kinds = DataValidation("list", formula1='"balloon,Balloon button,bumper,PEG,GJ"', allow_blank=True, errorStyle="warning")
    days = DataValidation("date", operator="greaterThan", formula1="36526", allow_blank=True, errorStyle="information")
    kinds.add(f"B{FIRST}:B{LAST}")
    days.add(f"E{FIRST}:E{LAST}")
    page.add_data_validation(kinds)
    page.add_data_validation(days)
    page[f"E{FIRST + 1}"].comment = Comment("Told by the carer\nInvented", "Invented")
    page[f"C{HEADER}"].comment = Comment("Fr or mm?", "Invented")
    # A name in use, one whose target has gone, and one for a single sheet.
    book.defined_names.append(DefinedName("Last_changes", attr_text=f"'{SHEET}'!$E${FIRST}:$E${LAST}"))
    book.defined_names.append(DefinedName("Gone", attr_text="#REF!"))
    book.defined_names.append(DefinedName("Here", localSheetId=0, attr_text=f"'{SHEET}'!$A${HEADER}"))
    page.print_area = f"A1:I{LAST + 4}"
    page.print_title_rows = f"{GROUP_ROW}:{HEADER}"
    book.add_named_style(NamedStyle("Unsure", font=Font(italic=True)))
    page[f"C{FIRST}"].style = "Unsure"


def make_blank_row():
    rows = caseload(24, seed=203, prefix="B")
    roles = ["id", "kind", "size", "lastChange", "waterIn", "waterOut", "notes"]
    heads = ["ID", "Kind", "Size", "Last change", "Water put in", "Water out", "Notes"]
    book = openpyxl.Workbook()
    page = book.active
    page.title = "List"
    page["A1"] = INVENTED
    for letter, head in zip("ABCDEFG", heads):
        page[f"{letter}3"] = head
        page[f"{letter}3"].font = Font(bold=True)
    for down, row in enumerate(rows):
        for letter, role in zip("ABCDEFG", roles):
            put(page, f"{letter}{5 + down}", typed(row, role), "dd/mm/yyyy")
    save(book, "blank-row-under-headers.xlsx")
    record(
        "blank-row-under-headers.xlsx",
        [sheet("List")],
        lists=[the_list("List", rows, 3, 5, dict(zip(roles, heads)), dict(zip(roles, "ABCDEFG")), "A3:G28")],
    )
