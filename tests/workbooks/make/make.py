"""Makes the workbooks anew: python3 make.py [part ...]. Read ../README.md first."""

import sys

import by_libreoffice
import error_cells
import many_sheets
import plain_lists
import refused
import rewritten
import small_books
import table_with_totals
import ten_thousand_rows
import two_tables

PARTS = {
    "table_with_totals": table_with_totals.make,
    "plain_lists": plain_lists.make,
    "small_books": small_books.make,
    "error_cells": error_cells.make,
    "many_sheets": many_sheets.make,
    "two_tables": two_tables.make,
    "by_libreoffice": by_libreoffice.make,
    "rewritten": rewritten.make,
    "refused": refused.make,
    "ten_thousand_rows": ten_thousand_rows.make,
}

for name in sys.argv[1:] or PARTS:
    PARTS[name]()
    print(name)
