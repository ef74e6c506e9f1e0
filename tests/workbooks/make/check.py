"""Opens every workbook with openpyxl and LibreOffice, and compares what openpyxl reads with expected.json: python3 check.py."""

import json
import subprocess
import sys
import tempfile
from datetime import date, datetime
from pathlib import Path

import openpyxl
from openpyxl.utils import range_boundaries

from answers import EXPECTED, FILES

faults = []


def fault(file, text):
    faults.append(f"{file}: {text}")


def tables_of(page):
    """A chart sheet has none; TableList.items() of openpyxl gives addresses only."""
    return dict(getattr(page, "tables", {}))


def check_with_openpyxl(file, about):
    book = openpyxl.load_workbook(FILES / file, data_only=True)
    if [page["name"] for page in about["sheets"]] != book.sheetnames:
        fault(file, f"sheets are {book.sheetnames}")
    for wanted in about["sheets"]:
        page = book[wanted["name"]]
        if page.sheet_state != wanted["state"]:
            fault(file, f"{page.title} is {page.sheet_state}")
        if wanted["kind"] == "worksheet" and page.protection.sheet != wanted["protected"]:
            fault(file, f"{page.title} protected: {page.protection.sheet}")
    found = {name: (page.title, table) for page in book.worksheets for name, table in tables_of(page).items()}
    if sorted(found) != sorted(table["name"] for table in about["tables"]):
        fault(file, f"tables are {sorted(found)}")
    for wanted in about["tables"]:
        title, table = found[wanted["name"]]
        names = [column.name.replace("_x000a_", "\n") for column in table.tableColumns]
        if (title, table.ref, names, bool(table.totalsRowCount)) != (
            wanted["sheet"], wanted["ref"], wanted["columns"], wanted["totalsRow"]
        ):
            fault(file, f"table {wanted['name']}: {title} {table.ref} {names}")
    for wanted in about["lists"]:
        check_list(file, book[wanted["sheet"]], wanted, about.get("headersMergedUpwards", []))


def check_list(file, page, wanted, merged_upwards):
    for role, head in wanted["headers"].items():
        letter = wanted["columns"][role]
        row = wanted["headerRow"] - (letter in merged_upwards)
        if page[f"{letter}{row}"].value != head:
            fault(file, f"header {letter}{row} is {page[f'{letter}{row}'].value!r}, not {head!r}")
    first_column, _, last_column, last_row = range_boundaries(wanted["range"])
    below = [page.cell(wanted["lastRow"] + 1, column).value for column in range(first_column, last_column + 1)]
    totals = any(table.totalsRowCount for table in tables_of(page).values())
    if last_row != wanted["lastRow"] or (any(value is not None for value in below) and not totals):
        fault(file, f"the list does not end at row {wanted['lastRow']}")
    hidden = [row for row in range(wanted["firstRow"], last_row + 1) if page.row_dimensions[row].hidden]
    if hidden != wanted["hiddenRows"]:
        fault(file, f"hidden rows {hidden}")
    for row, day, kind, size, put_in, out in wanted["rows"]:
        cell = {role: page[f"{letter}{row}"].value for role, letter in wanted["columns"].items()}
        if read_day(cell["lastChange"]) != day:
            fault(file, f"row {row}: date {cell['lastChange']!r}, not {day}")
        if (None if cell["kind"] in ("#N/A",) else cell["kind"]) != kind:
            fault(file, f"row {row}: kind {cell['kind']!r}, not {kind!r}")
        for role, meaning in (("size", size), ("waterIn", put_in), ("waterOut", out)):
            if role in cell and number_like(cell[role]) not in (None, meaning) and not (role == "size" and meaning is None):
                fault(file, f"row {row}: {role} {cell[role]!r}, not {meaning}")


def read_day(value):
    if isinstance(value, (datetime, date)):
        return value.isoformat()[:10]
    if isinstance(value, str) and value[4:5] == "-":
        try:
            return datetime.fromisoformat(value).date().isoformat()
        except ValueError:
            return None
    return None


def number_like(value):
    return value if isinstance(value, (int, float)) and not isinstance(value, bool) else None


def check_with_libreoffice(names):
    with tempfile.TemporaryDirectory() as out:
        profile = f"-env:UserInstallation=file://{out}/profile"
        paths = [str(FILES / name) for name in names]
        command = ["soffice", profile, "--headless", "--convert-to", "csv", "--outdir", out]
        subprocess.run(command + paths, check=True, capture_output=True)
        for name in names:
            if not (Path(out) / name).with_suffix(".csv").exists():
                fault(name, "LibreOffice did not open it")


answers = json.loads(EXPECTED.read_text(encoding="utf-8"))
for file, about in answers["files"].items():
    check_with_openpyxl(file, about)
check_with_libreoffice(list(answers["files"]))
listed = sorted(list(answers["files"]) + list(answers["refused"]))
if listed != sorted(path.name for path in FILES.iterdir()):
    fault("files", "expected.json and the folder differ")
print(f"{len(answers['files'])} workbooks opened, {len(answers['refused'])} to be refused; {len(faults)} faults")
sys.exit("\n".join(faults))
