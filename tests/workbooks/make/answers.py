"""Collects what is in each workbook and what a careful human would read in it, and writes expected.json."""

import json
from pathlib import Path

from mess import meant

HERE = Path(__file__).resolve().parent
FILES = HERE.parent / "files"
EXPECTED = HERE.parent / "expected.json"
ROW = ["row", "lastChange", "kind", "sizeFr", "waterIn", "waterOut"]


def sheet(name, kind="worksheet", state="visible", protected=False):
    return {"name": name, "kind": kind, "state": state, "protected": protected}


def table(name, on, ref, columns, totals=False):
    return {"name": name, "sheet": on, "ref": ref, "columns": columns, "totalsRow": totals}


def the_list(on, rows, header_row, first_row, headers, columns, ref, in_table=None, hidden=()):
    """headers and columns: role -> header text, role -> letter. A role that the list lacks is left out."""
    return {
        "sheet": on,
        "table": in_table,
        "range": ref,
        "headerRow": header_row,
        "firstRow": first_row,
        "lastRow": first_row + len(rows) - 1,
        "headers": headers,
        "columns": columns,
        "hiddenRows": sorted(hidden),
        "rows": [
            [first_row + place] + [answer(row, role, columns) for role in ("lastChange", "kind", "size", "waterIn", "waterOut")]
            for place, row in enumerate(rows)
        ],
    }


def answer(row, role, columns):
    return meant(row, role) if role in columns and role in row else None


def record(file, sheets, tables=(), lists=(), **more):
    """Each workbook's answers stand in one line per list row: a change of one cell is a change of one line."""
    book = _read()
    book["files"][file] = {"sheets": list(sheets), "tables": list(tables), "lists": list(lists), **more}
    _write(book)


def refuse(file, why):
    book = _read()
    book["refused"][file] = why
    _write(book)


def _read():
    if EXPECTED.exists():
        return json.loads(EXPECTED.read_text(encoding="utf-8"))
    return {"rowFields": ROW, "files": {}, "refused": {}}


def _write(book):
    book["files"] = dict(sorted(book["files"].items()))
    book["refused"] = dict(sorted(book["refused"].items()))
    EXPECTED.write_text(_lay_out(book) + "\n", encoding="utf-8")


def _lay_out(value, depth=0):
    line = json.dumps(value, ensure_ascii=False)
    if len(line) + depth * 2 <= 160 or not isinstance(value, (dict, list)):
        return line
    pad = "  " * (depth + 1)
    if isinstance(value, dict):
        inner = [f"{json.dumps(key, ensure_ascii=False)}: {_lay_out(part, depth + 1)}" for key, part in value.items()]
        opened, closed = "{", "}"
    else:
        inner = [_lay_out(part, depth + 1) for part in value]
        opened, closed = "[", "]"
    return opened + "\n" + ",\n".join(pad + part for part in inner) + "\n" + "  " * depth + closed
