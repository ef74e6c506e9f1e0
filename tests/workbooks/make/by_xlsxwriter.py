"""Tools shared by the workbooks that XlsxWriter makes."""

from datetime import date, datetime

import xlsxwriter
from xlsxwriter.utility import xl_col_to_name

from answers import FILES
from mess import INVENTED, typed
from packages import hold_the_clock

MADE = datetime(2026, 6, 1, 9, 0, 0)


def open_book(file, **options):
    hold_the_clock()
    book = xlsxwriter.Workbook(str(FILES / file), options)
    book.set_properties({"title": "Feeding tubes", "comments": INVENTED, "created": MADE})
    return book


def formats(book):
    return {
        "title": book.add_format({"bold": True, "font_size": 14}),
        "head": book.add_format({"bold": True, "bg_color": "#DDEBF7", "bottom": 1, "text_wrap": True}),
        "date": book.add_format({"num_format": "dd/mm/yyyy"}),
        "mL": book.add_format({"num_format": '0.0" mL"'}),
        "text": book.add_format({"num_format": "@"}),
    }


def put(sheet, row, column, value, look=None, day_look=None):
    """Exactly what was typed: text stays text, so that '14' and '=x' are never turned into something else."""
    if value is None:
        sheet.write_blank(row, column, None, look)
    elif isinstance(value, bool):
        sheet.write_boolean(row, column, value, look)
    elif isinstance(value, (date, datetime)):
        sheet.write_datetime(row, column, value, day_look)
    elif isinstance(value, str):
        sheet.write_string(row, column, value, look)
    else:
        sheet.write_number(row, column, value, look)


def put_list(sheet, look, rows, roles, heads, first_row, first_column=0, head=True):
    """A header row at first_row (0-based) and the rows below; answers role -> letter."""
    if head:
        for place, text in enumerate(heads):
            sheet.write_string(first_row, first_column + place, text, look["head"])
    for down, row in enumerate(rows):
        for across, role in enumerate(roles):
            day = look["date"] if role == "lastChange" else None
            put(sheet, first_row + head + down, first_column + across, typed(row, role), day, look["date"])
    return {role: xl_col_to_name(first_column + across) for across, role in enumerate(roles)}
