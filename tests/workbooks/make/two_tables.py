"""exceljs-two-tables.xlsx: the rows are chosen here, the workbook is written by two_tables.mjs with ExcelJS."""

import json
import subprocess
from datetime import date, datetime

from answers import FILES, HERE, record, sheet, table, the_list
from mess import INVENTED, caseload, typed

FILE = "exceljs-two-tables.xlsx"
SHEET = "Both lists"
ROLES = ["id", "kind", "size", "lastChange", "waterIn", "waterOut"]
LEFT = ["Hosp no", "Kind?", "Size (Fr)", "Date of last change", "Tube's fill, mL", "Water out #"]
RIGHT = ["Child no", "Type [of tube]", "Fr / CH", "Changed on", "In", "Out"]
BELOW = ["Spare for", "Tube size"]
SPARES = [["L-001", 14], ["R-002", "12 Fr"], ["L-004", None]]
HEADER, FIRST = 4, 5
LEFT_ROWS, RIGHT_ROWS = caseload(22, 601, "L"), caseload(16, 602, "R")
LEFT_END, RIGHT_END = FIRST + len(LEFT_ROWS) - 1, FIRST + len(RIGHT_ROWS) - 1
BELOW_HEAD = LEFT_END + 3


def make():
    data = {
        "file": str(FILES / FILE), "sheet": SHEET, "invented": INVENTED, "header": HEADER, "belowHeader": BELOW_HEAD,
        "left": {"heads": LEFT, "rows": cells(LEFT_ROWS)}, "right": {"heads": RIGHT, "rows": cells(RIGHT_ROWS)},
        "below": {"heads": BELOW, "rows": SPARES},
    }
    subprocess.run(["node", HERE / "two_tables.mjs"], input=json.dumps(data), text=True, check=True)
    record(
        FILE,
        [sheet(SHEET), sheet("Workings")],
        [
            table("Adults", SHEET, f"A{HEADER}:F{LEFT_END}", LEFT),
            table("Children", SHEET, f"H{HEADER}:M{RIGHT_END}", RIGHT),
            table("Spares", SHEET, f"A{BELOW_HEAD}:B{BELOW_HEAD + len(SPARES)}", BELOW),
        ],
        [
            the_list(SHEET, LEFT_ROWS, HEADER, FIRST, dict(zip(ROLES, LEFT)), dict(zip(ROLES, "ABCDEF")),
                     f"A{HEADER}:F{LEFT_END}", "Adults"),
            the_list(SHEET, RIGHT_ROWS, HEADER, FIRST, dict(zip(ROLES, RIGHT)), dict(zip(ROLES, "HIJKLM")),
                     f"H{HEADER}:M{RIGHT_END}", "Children"),
        ],
    )


def cells(rows):
    return [[cell(typed(row, role)) for role in ROLES] for row in rows]


def cell(value):
    """JSON has no dates."""
    if isinstance(value, (date, datetime)):
        return {"day": value.isoformat() + ("Z" if isinstance(value, datetime) else "T00:00:00Z")}
    return value
