"""table-with-totals.xlsx, by XlsxWriter: a table with nearly everything that a clinic's workbook gathers in ten years."""

from lxml import etree

from answers import FILES, record, sheet, table, the_list
from by_xlsxwriter import formats, open_book, put
from mess import INVENTED, caseload, typed
from packages import change_parts

FILE = "table-with-totals.xlsx"
SHEET, GERMAN, LISTS = "Tube list", "Übersicht (DE)", "Lists"
HEADS = ["Hosp no", "Old no", "Type of tube", "Tube #", "Last change", "Fill mL", "Water out", "Loss mL", "Notes [x]"]
ROLES = ["id", None, "kind", "size", "lastChange", "waterIn", "waterOut", None, "notes"]
HEADER, COUNT = 5, 60
FIRST, LAST = HEADER + 1, HEADER + COUNT
TOTALS = LAST + 1
SHOWN_KINDS = ["balloon", "Balloon button", "PEG"]
LOSS = (
    "=IF(AND(ISNUMBER(Caseload[[#This Row],[Fill mL]]),ISNUMBER(Caseload[[#This Row],[Water out]])),"
    'Caseload[[#This Row],[Fill mL]]-Caseload[[#This Row],[Water out]],"")'
)
GERMAN_ROWS = [
    ("P-01", "Ballon-Button", "14 Ch", "2026-01-15"), ("P-02", "PEG mit Halteplatte", "15", "20.02.2026"),
    ("P-03", "Gastrotube", "CH 16", None), ("P-04", "Ballon", "12,0", "siehe Brief"),
]


def is_number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def loss(row):
    put_in, out = typed(row, "waterIn"), typed(row, "waterOut")
    return round(put_in - out, 6) if is_number(put_in) and is_number(out) else ""


def is_shown(row):
    return (typed(row, "kind") or "").lower() in [kind.lower() for kind in SHOWN_KINDS]


def make():
    rows = caseload(COUNT, seed=101)
    book = open_book(FILE)
    look = formats(book)
    page, german, lists = (book.add_worksheet(name) for name in (SHEET, GERMAN, LISTS))
    fill_table(page, look, rows)
    dress(book, page, rows)
    fill_german(book, german, look, rows)
    lists.write_column(0, 0, SHOWN_KINDS + ["bumper", "GJ"])
    lists.hide()
    book.define_name("Tube_kinds", f"={LISTS}!$A$1:$A$5")
    book.define_name("Months_between", "=6")
    book.define_name(f"'{SHEET}'!Seen_by", f"='{SHEET}'!$B$2")
    book.define_name(f"'{GERMAN}'!Seen_by", "=\"niemand\"")
    book.close()
    change_parts(FILES / FILE, {"xl/tables/table1.xml": choose_kinds})
    record(
        FILE,
        [sheet(SHEET), sheet(GERMAN), sheet(LISTS, state="hidden")],
        [table("Caseload", SHEET, f"A{HEADER}:I{TOTALS}", HEADS, totals=True)],
        [
            the_list(
                SHEET, rows, HEADER, FIRST,
                {role: head for role, head in zip(ROLES, HEADS) if role},
                {role: "ABCDEFGHI"[place] for place, role in enumerate(ROLES) if role},
                f"A{HEADER}:I{LAST}", "Caseload", [FIRST + n for n, row in enumerate(rows) if not is_shown(row)],
            )
        ],
        hiddenColumns=["B"],
    )


def fill_table(page, look, rows):
    page.write_string("A1", "Feeding tubes, community team", look["title"])
    page.write_string("A2", "Seen by")
    page.write_string("B2", "nobody")
    page.write_string("C2", INVENTED)
    shown = [row for row in rows if is_shown(row)]
    filled = [typed(row, "waterIn") for row in shown if is_number(typed(row, "waterIn"))]
    lost = [loss(row) for row in shown if loss(row) != ""]
    columns = [{"header": head} for head in HEADS]
    columns[0]["total_string"] = "All shown"
    columns[2].update(total_function="count", total_value=sum(1 for row in shown if typed(row, "kind")))
    columns[4]["format"] = look["date"]
    columns[5].update(total_function="sum", total_value=round(sum(filled), 6), format=look["mL"])
    columns[7].update(formula=LOSS, total_function="average", total_value=sum(lost) / len(lost), format=look["mL"])
    columns[8].update(total_function="count", total_value=sum(1 for row in shown if typed(row, "notes")))
    page.add_table(
        HEADER - 1, 0, TOTALS - 1, len(HEADS) - 1,
        {"name": "Caseload", "total_row": True, "style": "Table Style Light 11", "columns": columns},
    )
    # XlsxWriter leaves the table's name out of a total; Excel writes it, and LibreOffice asks for it.
    kinds, notes = columns[2]["total_value"], columns[8]["total_value"]
    page.write_formula(TOTALS - 1, 2, "=SUBTOTAL(103,Caseload[Type of tube])", None, kinds)
    page.write_formula(TOTALS - 1, 5, "=SUBTOTAL(109,Caseload[Fill mL])", look["mL"], round(sum(filled), 6))
    page.write_formula(TOTALS - 1, 7, "=SUBTOTAL(101,Caseload[Loss mL])", look["mL"], sum(lost) / len(lost))
    page.write_formula(TOTALS - 1, 8, "=SUBTOTAL(103,Caseload[Notes '[x']])", None, notes)
    for down, row in enumerate(rows):
        at = FIRST - 1 + down
        page.write_string(at, 1, f"old-{1000 + down}")
        for across, role in enumerate(ROLES):
            if role:
                day = {"lastChange": look["date"], "waterIn": look["mL"]}.get(role)
                put(page, at, across, typed(row, role), day, look["date"])
        page.write_formula(at, 7, LOSS, look["mL"], loss(row))
        if not is_shown(row):
            page.set_row(at, None, None, {"hidden": True})


def dress(book, page, rows):
    page.set_column("B:B", 9, None, {"hidden": True})
    page.set_column("C:C", 16)
    page.set_column("E:E", 12)
    page.set_column("I:I", 30)
    page.freeze_panes(HEADER, 1)
    red = book.add_format({"bg_color": "#FFC7CE", "font_color": "#9C0006"})
    kinds, days, fills, outs, losses = (f"{letter}{FIRST}:{letter}{LAST}" for letter in "CEFGH")
    page.conditional_format(losses, {"type": "cell", "criteria": ">", "value": 0.5, "format": red})
    page.conditional_format(fills, {"type": "data_bar", "data_bar_2010": True, "bar_color": "#63C384"})
    page.conditional_format(outs, {"type": "3_color_scale"})
    page.conditional_format(outs, {"type": "icon_set", "icon_style": "3_traffic_lights"})
    page.conditional_format(kinds, {"type": "text", "criteria": "containing", "value": "GJ", "format": red})
    page.conditional_format(f"A{FIRST}:A{LAST}", {"type": "duplicate", "format": red})
    page.conditional_format(f"A{FIRST}:I{LAST}", {"type": "formula", "criteria": f'=$C{FIRST}="?"', "format": red})
    page.data_validation(kinds, {"validate": "list", "source": "=Tube_kinds", "error_type": "warning"})
    page.data_validation(f"D{FIRST}:D{LAST}", {"validate": "list", "source": ["10", "12", "14", "16"], "error_type": "information"})
    page.data_validation(days, {"validate": "custom", "value": f"=ISNUMBER(E{FIRST})", "ignore_blank": True, "show_error": False})
    page.write_comment(f"C{FIRST + 2}", "Ask the placing team.\nInvented.", {"author": "Invented"})
    page.write_comment(f"E{FIRST + 6}", "Date read over the phone", {"author": "Invented"})
    page.write_comment(f"D{HEADER}", "French gauge", {"author": "Invented"})
    page.print_area(f"A1:I{TOTALS}")
    page.repeat_rows(HEADER - 1)
    page.set_landscape()
    page.fit_to_pages(1, 0)
    page.set_footer("&LInvented data&RPage &P of &N")
    chart = book.add_chart({"type": "column"})
    chart.add_series({"name": "Water out", "categories": f"='{SHEET}'!$A${FIRST}:$A${LAST}", "values": f"='{SHEET}'!$G${FIRST}:$G${LAST}"})
    chart.set_title({"name": "Water out, mL"})
    page.insert_chart(f"L{HEADER}", chart)


def fill_german(book, page, look, rows):
    page.write_string("A1", "Ernährungssonden – erfundene Daten", look["title"])
    page.write_row("A3", ["Art der Sonde", "Anzahl"], look["head"])
    for down, kind in enumerate(SHOWN_KINDS):
        count = sum(1 for row in rows if (typed(row, "kind") or "").lower() == kind.lower())
        page.write_string(3 + down, 0, kind)
        page.write_formula(3 + down, 1, f"=COUNTIF(Caseload[Type of tube],A{4 + down})", None, count)
    numbers = [typed(row, "size") for row in rows if is_number(typed(row, "size"))]
    page.write_string("A8", "Ch, größte")
    page.write_formula("B8", "=MAX(Caseload[Tube '#])", None, max(numbers))
    page.write_string("A9", "Anmerkungen")
    page.write_formula("B9", "=COUNTA(Caseload[Notes '[x']])", None, sum(1 for row in rows if typed(row, "notes") is not None))
    page.write_string("A10", "Füllung, sichtbar")
    visible = [typed(row, "waterIn") for row in rows if is_shown(row) and is_number(typed(row, "waterIn"))]
    page.write_formula("B10", "=Caseload[[#Totals],[Fill mL]]", None, round(sum(visible), 6))
    page.write_row("D3", ["Nr.", "Art", "Größe (Ch)", "Letzter Wechsel"], look["head"])
    for down, cells in enumerate(GERMAN_ROWS):
        for across, value in enumerate(cells):
            put(page, 3 + down, 3 + across, value)
    chart = book.add_chart({"type": "pie"})
    chart.add_series({"categories": f"='{GERMAN}'!$A$4:$A$6", "values": f"='{GERMAN}'!$B$4:$B$6"})
    page.insert_chart("A13", chart)


def choose_kinds(part):
    """XlsxWriter cannot set a criterion inside a table's filter, so it is put in here."""
    root = etree.fromstring(part)
    main = root.nsmap[None]
    chosen = etree.SubElement(root.find(f"{{{main}}}autoFilter"), f"{{{main}}}filterColumn", colId="2")
    values = etree.SubElement(chosen, f"{{{main}}}filters")
    for kind in SHOWN_KINDS:
        etree.SubElement(values, f"{{{main}}}filter", val=kind)
    return etree.tostring(root, xml_declaration=True, encoding="UTF-8", standalone=True)
