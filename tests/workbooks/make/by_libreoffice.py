"""Workbooks that LibreOffice itself writes: a plain list, one locked with a password, one in the old binary format, one with a macro.

Needs LibreOffice and python3-uno. An own profile and pipe, so that nobody's open LibreOffice is touched.
"""

import os
import subprocess
import tempfile
import time
from contextlib import contextmanager
from datetime import date, datetime

import uno
from com.sun.star.awt import Rectangle
from com.sun.star.beans import NamedValue, PropertyValue
from com.sun.star.connection import NoConnectException
from com.sun.star.script import ModuleInfo
from com.sun.star.sheet.ConditionOperator import LESS
from com.sun.star.sheet.ValidationType import LIST
from com.sun.star.table import CellAddress, CellRangeAddress

from answers import FILES, record, refuse, sheet, the_list
from mess import INVENTED, caseload, typed

ROLES = ["id", "kind", "size", "lastChange", "waterIn", "waterOut", "notes"]
HEADS = ["Hosp no", "Type of tube", "Size", "Last change", "Fill mL", "Out mL", "Notes"]
SHEET = "Tubes"
HEADER, FIRST = 3, 4
PASSWORD = "invented"


@contextmanager
def libreoffice():
    pipe = f"workbooks-{os.getpid()}"
    with tempfile.TemporaryDirectory() as profile:
        office = subprocess.Popen(
            ["soffice", "--headless", "--invisible", "--norestore", f"-env:UserInstallation=file://{profile}",
             f"--accept=pipe,name={pipe};urp;"], stderr=subprocess.DEVNULL,
        )
        desktop = connect(pipe)
        try:
            yield desktop
        finally:
            desktop.terminate()
            office.wait(30)


def connect(pipe):
    here = uno.getComponentContext()
    resolver = here.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", here)
    for _ in range(120):
        try:
            there = resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
            return there.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", there)
        except NoConnectException:
            time.sleep(0.5)
    raise SystemExit("LibreOffice did not start")


def named(**values):
    return tuple(PropertyValue(Name=name, Value=value) for name, value in values.items())


def make():
    with libreoffice() as desktop:
        for writer in (write_list, write_encrypted, write_old, write_macro):
            document = desktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, named(Hidden=True))
            document.DocumentProperties.Title = "Feeding tubes"
            document.DocumentProperties.Description = INVENTED
            writer(document)
            document.close(True)


def store(document, file, kind, **more):
    document.storeToURL((FILES / file).as_uri(), named(FilterName=kind, **more))


def fill(document, rows):
    page = document.Sheets.getByIndex(0)
    page.Name = SHEET
    page.getCellByPosition(0, 0).String = INVENTED
    day_format = number_format(document, "DD/MM/YYYY")
    for across, head in enumerate(HEADS):
        cell = page.getCellByPosition(across, HEADER - 1)
        cell.String = head
        cell.CharWeight = 150
    for down, row in enumerate(rows):
        for across, role in enumerate(ROLES):
            put(page.getCellByPosition(across, FIRST - 1 + down), typed(row, role), day_format)
    return page


def number_format(document, code):
    english = uno.createUnoStruct("com.sun.star.lang.Locale", "en", "GB", "")
    known = document.NumberFormats.queryKey(code, english, False)
    return known if known != -1 else document.NumberFormats.addNew(code, english)


def put(cell, value, day_format):
    if isinstance(value, bool):
        cell.Formula = "=TRUE()" if value else "=FALSE()"
    elif isinstance(value, (date, datetime)):
        moment = value if isinstance(value, datetime) else datetime(value.year, value.month, value.day)
        cell.Value = (moment - datetime(1899, 12, 30)).total_seconds() / 86400
        cell.NumberFormat = day_format
    elif isinstance(value, (int, float)):
        cell.Value = value
    elif value is not None:
        cell.String = value


def write_list(document):
    rows = caseload(40, 701, "O")
    page = fill(document, rows)
    last = FIRST + len(rows) - 1
    switch_filter_on(document, f"A{HEADER}:G{last}")
    document.NamedRanges.addNewByName("Sizes", f"$Tubes.$C${FIRST}:$C${last}", CellAddress(0, 0, 0), 0)
    page.Annotations.insertNew(CellAddress(0, 1, FIRST), "Read over the phone. Invented.")
    allow_only(page.getCellRangeByName(f"B{FIRST}:B{last}"))
    mark_low(document, page.getCellRangeByName(f"F{FIRST}:F{last}"))
    page.Charts.addNewByName(
        "Water out", Rectangle(24000, 1500, 9000, 6000), (CellRangeAddress(0, 5, HEADER - 1, 5, last - 1),), True, False
    )
    page.getCellRangeByName(f"E{last + 2}").Formula = f"=SUM(E{FIRST}:E{last})"
    page.getCellRangeByName(f"A{last + 2}").String = "Sum"
    store(document, "libreoffice-list.xlsx", "Calc MS Excel 2007 XML")
    record(
        "libreoffice-list.xlsx",
        [sheet(SHEET)],
        lists=[the_list(SHEET, rows, HEADER, FIRST, dict(zip(ROLES, HEADS)), dict(zip(ROLES, "ABCDEFG")), f"A{HEADER}:G{last}")],
    )


def switch_filter_on(document, span):
    """As a person does it: a named database range would be written as a table."""
    view = document.CurrentController
    view.select(document.Sheets.getByIndex(0).getCellRangeByName(span))
    command = uno.createUnoStruct("com.sun.star.util.URL")
    command.Complete, command.Path, command.Protocol = ".uno:DataFilterAutoFilter", "DataFilterAutoFilter", ".uno:"
    view.Frame.queryDispatch(command, "_self", 0).dispatch(command, ())


def allow_only(cells):
    rule = cells.Validation
    rule.Type = LIST
    rule.setFormula1('"balloon";"Balloon button";"GJ";"PEG"')
    rule.ShowErrorMessage = False
    cells.Validation = rule


def mark_low(document, cells):
    style = document.createInstance("com.sun.star.style.CellStyle")
    document.StyleFamilies.getByName("CellStyles").insertByName("Low", style)
    style.CellBackColor = 0xFFC7CE
    rules = cells.ConditionalFormat
    rules.addNew(named(Operator=LESS, Formula1="4", StyleName="Low"))
    cells.ConditionalFormat = rules


def write_encrypted(document):
    fill(document, caseload(6, 702, "X"))
    locked = (NamedValue("CryptoType", "Standard"), NamedValue("OOXPassword", PASSWORD))
    store(document, "encrypted.xlsx", "Calc MS Excel 2007 XML", EncryptionData=uno.Any("[]com.sun.star.beans.NamedValue", locked))
    refuse("encrypted.xlsx", f"encrypted: an OLE file with an EncryptedPackage; its password is '{PASSWORD}'")


def write_old(document):
    fill(document, caseload(8, 703, "Y"))
    store(document, "old-binary.xls", "MS Excel 97")
    refuse("old-binary.xls", "the binary format of Excel 97 to 2003")


def write_macro(document):
    rows = caseload(12, 704, "M")
    fill(document, rows)
    libraries = document.BasicLibraries
    libraries.VBACompatibilityMode = True
    libraries.ProjectName = "VBAProject"
    library = libraries.createLibrary("VBAProject")
    library.insertModuleInfo("Module1", ModuleInfo(ModuleType=1))
    library.insertByName("Module1", "Sub CountTubes()\n  ' Invented: only counts\n  MsgBox 12\nEnd Sub\n")
    store(document, "with-macro.xlsm", "Calc MS Excel 2007 VBA XML")
    record(
        "with-macro.xlsm",
        [sheet(SHEET)],
        lists=[the_list(SHEET, rows, HEADER, FIRST, dict(zip(ROLES, HEADS)), dict(zip(ROLES, "ABCDEFG")), "A3:G15")],
        macro=True,
    )
