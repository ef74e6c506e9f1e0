"""ten-thousand-rows.xlsx, by XlsxWriter: 10,000 rows of 15 columns, for measuring how long opening, adding and saving take."""

from answers import record, sheet, the_list
from by_xlsxwriter import formats, open_book, put_list
from mess import INVENTED, caseload

FILE = "ten-thousand-rows.xlsx"
ROLES = ["id", "kind", "size", "lastChange", "waterIn", "waterOut"]
HEADS = ["ID", "Kind", "Size", "Last change", "Water put in", "Water out"]
MORE = ["Ward", "Item", "Spare", "Weight kg", "Lying cm", "Sitting cm", "Length cm", "Visits", "Loss mL"]
COUNT, HEADER = 10_000, 3


def make():
    rows = caseload(COUNT, seed=901, prefix="K")
    book = open_book(FILE, constant_memory=False)
    look = formats(book)
    page = book.add_worksheet("List")
    page.write_string(0, 0, INVENTED)
    letters = put_list(page, look, rows, ROLES, HEADS, HEADER - 1)
    page.write_row(HEADER - 1, len(HEADS), MORE, look["head"])
    for down in range(COUNT):
        at = HEADER + down
        page.write_row(at, 6, [f"ward {down % 7}", f"item {down % 31}", ["none", "same size", "smaller"][down % 3]])
        page.write_row(at, 9, [3 + down % 80, round(1 + down % 40 / 10, 1), round(1.2 + down % 40 / 10, 1), 1.5 + down % 5, down % 9])
        put_in, out = rows[down]["waterIn"][0], rows[down]["waterOut"][0]
        numbers = all(isinstance(value, (int, float)) for value in (put_in, out))
        page.write_formula(at, 14, f'=IF(COUNT(E{at + 1}:F{at + 1})=2,E{at + 1}-F{at + 1},"")', None, round(put_in - out, 6) if numbers else "")
    book.close()
    about = the_list("List", rows, HEADER, HEADER + 1, dict(zip(ROLES, HEADS)), letters, f"A{HEADER}:O{HEADER + COUNT}")
    readable = [row[1] for row in about["rows"] if row[1]]
    # Ten thousand answers would make the file of answers unreadable: the counts stand for them.
    about["rows"], about["usableDates"] = [], len(readable)
    record(FILE, [sheet("List")], lists=[about])
