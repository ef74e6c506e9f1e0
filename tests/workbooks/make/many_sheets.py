"""many-sheets-other-language.xlsx, by openpyxl: Japanese and right-to-left Arabic sheets, one hidden, one very hidden."""

import openpyxl

from answers import record, sheet, the_list
from mess import INVENTED, caseload, typed
from plain_lists import put, save

FILE = "many-sheets-other-language.xlsx"
ROLES = ["id", "kind", "size", "lastChange", "waterIn", "waterOut", "notes"]
SHEETS = [
    ("チューブ一覧", ["番号", "種類", "サイズ", "最終交換日", "注入量 mL", "回収量 mL", "備考"], "yyyy年m月d日",
     {"balloon": "バルーン", "Balloon button": "バルーンボタン", "bumper": "バンパー", "PEG": "胃瘻"}),
    ("قائمة الأنابيب", ["الرقم", "النوع", "المقاس", "آخر تغيير", "الماء الداخل", "الماء الخارج", "ملاحظات"], "yyyy/mm/dd",
     {"balloon": "بالون", "Balloon button": "زر بالون", "bumper": "مصد", "PEG": "تنظير"}),
]


def make():
    book = openpyxl.Workbook()
    book.remove(book.active)
    lists = [fill(book, place, *about) for place, about in enumerate(SHEETS)]
    book.worksheets[1].sheet_view.rightToLeft = True
    for name, state in (("Rest & 'Übersicht' 2", "visible"), ("hidden list", "hidden"), ("very hidden", "veryHidden"), ("🙂", "visible")):
        page = book.create_sheet(name)
        page["A1"] = INVENTED
        page.sheet_state = state
    save(book, FILE)
    record(FILE, [sheet(page.title, state=page.sheet_state) for page in book.worksheets], lists=lists)


def fill(book, place, name, heads, day_format, words):
    rows = caseload(20, 501 + place, "JA"[place])
    page = book.create_sheet(name)
    page["A1"] = INVENTED
    for letter, head in zip("ABCDEFG", heads):
        page[f"{letter}3"] = head
    for down, row in enumerate(rows):
        kind = words.get(typed(row, "kind"), typed(row, "kind"))
        row["kind"] = (kind, kind)
        for letter, role in zip("ABCDEFG", ROLES):
            put(page, f"{letter}{4 + down}", typed(row, role), day_format)
    return the_list(name, rows, 3, 4, dict(zip(ROLES, heads)), dict(zip(ROLES, "ABCDEFG")), "A3:G23")
