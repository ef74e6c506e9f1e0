"""Small workbooks by XlsxWriter, each with one thing that stands in the way of adding columns, or must survive it."""

from datetime import timedelta, date

from lxml import etree
from xlsxwriter.utility import xl_col_to_name

from answers import FILES, record, sheet, table, the_list
from by_xlsxwriter import formats, open_book, put, put_list
from mess import INVENTED, caseload, typed
from packages import change_parts

ROLES = ["id", "kind", "size", "lastChange", "waterIn", "waterOut", "notes"]
HEADS = ["ID", "Kind", "Size", "Last change", "Water put in", "Water out", "Notes"]
HEADER = 3
LAST_COLUMN = 16384


class Book:
    """One sheet called List with the invented line on top and a list under it; more is added by each maker."""

    def __init__(self, file, count, seed, heads=HEADS, roles=ROLES, column=0, head=True, page=None, **options):
        self.file, self.heads, self.roles = file, heads, roles
        self.book = open_book(file, **options)
        self.look = formats(self.book)
        self.pages, self.tables, self.lists = [], [], []
        if page is None:
            self.add_list("List", count, seed, column, head)

    def add_list(self, name, count, seed, column=0, head=True, prefix="S", in_table=None, hidden=None):
        rows = caseload(count, seed, prefix)
        page = self.add_page(name)
        page.write_string(0, 0, INVENTED)
        first = HEADER + 1 if head else HEADER
        letters = put_list(page, self.look, rows, self.roles, self.heads, HEADER - 1, column, head)
        ends = xl_col_to_name(column), xl_col_to_name(column + len(self.roles) - 1)
        self.span = f"{ends[0]}{HEADER}:{ends[1]}{first + count - 1}"
        if in_table:
            page.add_table(self.span, {"name": in_table, "columns": [{"header": text} for text in self.heads]})
            self.tables.append(table(in_table, name, self.span, self.heads))
        out_of_sight = [first + place for place, row in enumerate(rows) if hidden and hidden(row)]
        for row in out_of_sight:
            page.set_row(row - 1, None, None, {"hidden": True})
        self.lists.append(
            the_list(
                name, rows, HEADER if head else None, first,
                dict(zip(self.roles, self.heads)) if head else {}, letters, self.span, in_table, out_of_sight,
            )
        )
        self.page, self.rows, self.first, self.last = page, rows, first, first + count - 1
        return page

    def add_page(self, name, **facts):
        self.pages.append(sheet(name, **facts))
        return self.book.add_worksheet(name)

    def close(self, **more):
        self.book.close()
        record(self.file, self.pages, self.tables, self.lists, **more)


def protected_sheet():
    made = Book("protected-sheet.xlsx", 18, 301)
    made.page.protect("", {"select_locked_cells": True, "format_cells": False, "autofilter": True})
    made.pages[0]["protected"] = True
    made.add_list("Open list", 12, 302, prefix="U")
    made.close()


def chartsheet_first():
    made = Book("chartsheet-only-and-list.xlsx", 0, 0, page="later")
    picture = made.book.add_chartsheet("Picture")
    made.pages.append(sheet("Picture", "chartsheet"))
    made.add_list("List", 16, 311)
    chart = made.book.add_chart({"type": "line"})
    chart.add_series({"values": f"=List!$F${made.first}:$F${made.last}", "name": "Water out"})
    picture.set_chart(chart)
    picture.activate()
    made.close(activeSheet="Picture")


def date_1904():
    Book("date-1904.xlsx", 20, 321, date_1904=True).close(date1904=True)


def no_header():
    Book("no-header.xlsx", 20, 331, head=False).close()


def two_columns_one_name():
    heads = ["ID", "Kind", "Size", "Date", "Date", "Notes"]
    made = Book("two-columns-one-name.xlsx", 20, 341, heads, ["id", "kind", "size", "made", "lastChange", "notes"], page="later")
    rows = caseload(20, 341, "S")
    page = made.add_page("List")
    page.write_string(0, 0, INVENTED)
    for place, row in enumerate(rows):
        row["made"] = (date(2023, 1, 9) + timedelta(days=17 * place),) * 2
    letters = put_list(page, made.look, rows, made.roles, heads, HEADER - 1)
    for place, row in enumerate(rows):
        page.write_datetime(HEADER + place, 3, typed(row, "made"), made.look["date"])
    named = {role: head for role, head in zip(made.roles, heads) if role != "made"}
    made.lists.append(the_list("List", rows, HEADER, HEADER + 1, named, {r: letters[r] for r in named}, "A3:F23"))
    made.close()


def cells_right_of_table():
    made = Book("cells-right-of-table.xlsx", 0, 0, page="later")
    page = made.add_list("List", 20, 351, in_table="Tubes")
    page.write_string(HEADER + 4, 7, "rang twice, no answer")
    page.write_formula(HEADER + 9, 8, f"=SUM(E{made.first}:E{made.last})", None, total(made.rows, "waterIn"))
    made.close()


def table_at_last_column():
    made = Book("table-at-last-column.xlsx", 0, 0, page="later")
    made.add_list("List", 15, 361, column=LAST_COLUMN - len(HEADS), in_table="AtTheEdge")
    made.close()


def filter_on():
    shown = ["balloon", "GJ"]
    made = Book("filter-on.xlsx", 0, 0, page="later")
    page = made.add_list("List", 30, 371, hidden=lambda row: (typed(row, "kind") or "").lower() not in ["balloon", "gj"])
    page.autofilter(made.span)
    page.filter_column_list(1, shown)
    made.close()


def spill_in_the_way():
    made = Book("spill-in-the-way.xlsx", 22, 381)
    first_of_each = {}
    for row in made.rows:  # UNIQUE does not tell capitals from small letters, and shows a blank as 0
        first_of_each.setdefault((typed(row, "kind") or "0").lower(), typed(row, "kind") or 0)
    kinds = list(first_of_each.values())
    spread(made, made.page, made.first - 1, 7, f"=UNIQUE(B{made.first}:B{made.last})", kinds)
    made.close(spill=f"H{made.first}:H{made.first + len(kinds) - 1}")


def dynamic_array_metadata():
    made = Book("dynamic-array-metadata.xlsx", 22, 391)
    counts = made.add_page("Counts")
    span = f"List!A{made.first}:A{made.last}"
    spread(made, counts, 1, 0, f"=SORT({span},1,-1)", [typed(row, "id") for row in reversed(made.rows)])
    counts.write_dynamic_array_formula("D2:D2", f"=ROWS(UNIQUE({span}))", None, len(made.rows))
    counts.write_array_formula("E2:E2", f"{{=SUM(LEN({span}))}}", None, 5 * len(made.rows))
    made.close()


def spread(made, page, row, column, formula, values):
    """XlsxWriter stores 0 in all spilled cells but the first; Excel stores what they show."""
    page.write_dynamic_array_formula(row, column, row + len(values) - 1, column, formula, None, values[0])
    for down, value in enumerate(values[1:], 1):
        put(page, row + down, column, value)


def tables_on_two_sheets():
    made = Book("tables-on-two-sheets.xlsx", 0, 0, page="later")
    made.add_list("Adults", 14, 401, prefix="A", in_table="Adults")
    made.add_list("Children", 10, 402, prefix="C", in_table="Children")
    made.close()


def whole_column_formats():
    made = Book("whole-column-formats.xlsx", 30, 411)
    page, look = made.page, made.look
    page.set_column("A:C", 12, look["text"])
    page.set_column("D:D", 12, look["date"])
    page.set_column("E:XFD", 10, look["mL"])
    page.data_validation("B4:B1048576", {"validate": "list", "source": ["balloon", "GJ"], "error_type": "information"})
    page.conditional_format("A4:G1048576", {"type": "formula", "criteria": '=$B4="GJ"', "format": look["title"]})
    page.write_blank("G1048576", None, look["head"])
    made.close()


def empty():
    made = Book("empty.xlsx", 0, 0, page="later")
    made.add_page("Sheet1")
    made.close()


def odd_names():
    heads = ["ID's", "Kind (what sort?)", "Tube #", "Last\nchange", "Water [mL] 💧", ("Water out, read twice; " * 12)[:255], " Notes"]
    made = Book("list-odd-names.xlsx", 0, 0, heads, page="later")
    page = made.add_list("List", 18, 421, in_table="Odd")
    for name, head in (("Odd[Tube '#]", 9), ("Odd[ID''s]", 10), ("Odd[Last\nchange]", 11), ("Odd[Water '[mL'] 💧]", 12)):
        role = {9: "size", 10: "id", 11: "lastChange", 12: "waterIn"}[head]
        page.write_formula(0, head, f"=COUNTA({name})", None, sum(1 for row in made.rows if typed(row, role) is not None))
    made.add_list("Plain list", 9, 422, prefix="V")
    made.close()
    change_parts(FILES / made.file, {"xl/tables/table1.xml": as_excel_names})


def as_excel_names(part):
    """Excel writes a line break in a column's name as _x000a_; XlsxWriter writes it as it comes."""
    root = etree.fromstring(part)
    for column, head in zip(root.iter("{*}tableColumn"), ["ID's", "Kind (what sort?)", "Tube #", "Last_x000a_change"]):
        column.set("name", head)
    return etree.tostring(root, xml_declaration=True, encoding="UTF-8", standalone=True)


def total(rows, role):
    return sum(n for n in (typed(row, role) for row in rows) if isinstance(n, (int, float)) and not isinstance(n, bool))


def make():
    for maker in (
        protected_sheet, chartsheet_first, date_1904, no_header, two_columns_one_name, cells_right_of_table,
        table_at_last_column, filter_on, spill_in_the_way, dynamic_array_metadata, tables_on_two_sheets,
        whole_column_formats, empty, odd_names,
    ):
        maker()
