"""What people type into a list of feeding tubes, and beside each thing what a careful human reads in it.

Everything is invented. A pair is (what stands in the cell, what it means); None means "nobody can tell".
The meanings are typed here by hand: they are never worked out by the program that the workbooks test.
"""

from datetime import date, datetime, timedelta
from random import Random

INVENTED = "Invented data: no person in this list exists"

# Only a true date or ISO text can be read. Day and month of 3/4/24 depend on who typed it.
DATES = [
    ("3/4/24", None),
    (None, None),
    ("2026-05-14", "2026-05-14"),
    (date(2025, 8, 31), "2025-08-31"),
    (date(2024, 2, 29), "2024-02-29"),
    ("see letter", None),
    (date(2052, 3, 4), "2052-03-04"),
    ("12/03/2024", None),
    (date(2031, 2, 3), "2031-02-03"),
    ("2026-02-11T09:00", "2026-02-11"),
    (datetime(2025, 11, 3, 14, 30), "2025-11-03"),
    ("14 May 2026", None),
    ("?", None),
    ("Feb 25", None),
    ("31.8.25", None),
    ("2025-02-30", None),
    ("n/k", None),
    (20260514, None),
    (0, None),
    (True, None),
]

KINDS = [
    "BGT ", "?", None, "PEG", "GJ", "RIG", "Balloon button", "bumper", "button", "BALLOON", "PEG disc",
    "balloon J", "see letter", " balloon", "Foley (stop-gap)", "n/k",
]

SIZES = [
    ("14FR", 14), ("CH 14", 14), ("14,0", 14), ("14 Fr x 2.3 cm", 14), ("14G", None), ("12/14", None), (None, None),
    ("14", 14), ("14?", None), ("14-16 Fr", None), (4.7, 4.7), ("Ch. 12", 12), ("FG 16", 16), ("Charrière 20", 20),
    ("18\u00a0Fr", 18), ("１４", 14), ("14 mm", None), ("see box", None), (13.5, 13.5), ("16 French", 16), (0, None),
    (140, None),
]

WATER_IN = [("5 mL", 5), (None, None), ("4,5", 4.5), ("3-5 mL", None), ("n/k", None), ("5.0", 5), (4.5, 4.5), ("max 8", None)]
WATER_OUT = [(None, None), (0, 0), ("4 ml", 4), ("nil", None), ("4,6", 4.6), ("not done", None), (6, 6), ("", None), ("3.5", 3.5)]

NOTES = [
    "=not a formula", "+44 call back", "@clinic", "n/k", "see letter", "-", "<b>&amp; \"quoted\"</b>", "línea ñandú 日本 🙂",
    "two\nlines", "5cc on the label", " leading space", "Spare box lasts until spring. " * 20,
]

PLAIN_KINDS = ["balloon", "balloon", "balloon", "Balloon button", "BGT", "bumper", "PEG", "GJ"]
PLAIN_SIZES = [10, 12, 12, 14, 14, 14, 16, 18, 20]


def _column(count, messy, plain, chance):
    """At most half of a column is messy, so that a list still looks like a list."""
    kept = messy[: min(len(messy), count // 2)]
    cells = kept + [plain() for _ in range(count - len(kept))]
    chance.shuffle(cells)
    return cells


def _day(chance):
    day = date(2025, 6, 2) + timedelta(days=chance.randrange(340))
    return (day, day.isoformat())


def _same(value):
    return (value, value)


def caseload(count, seed, prefix="D"):
    """Rows of pairs: id, kind, size, lastChange, waterIn, waterOut, notes."""
    chance = Random(seed)
    dates = _column(count, DATES, lambda: _day(chance), chance)
    kinds = _column(count, [_same(kind) for kind in KINDS], lambda: _same(chance.choice(PLAIN_KINDS)), chance)
    sizes = _column(count, SIZES, lambda: _same(chance.choice(PLAIN_SIZES)), chance)
    water_in = _column(count, WATER_IN, lambda: _same(chance.choice([4, 5, 5, 5, 8])), chance)
    water_out = _column(count, WATER_OUT, lambda: _same(chance.choice([3.8, 4, 4.2, 4.4, 4.6, 5])), chance)
    notes = _column(count, [_same(note) for note in NOTES], lambda: _same(None), chance)
    return [
        {
            "id": _same(f"{prefix}-{number + 1:03d}"),
            "kind": kinds[number],
            "size": sizes[number],
            "lastChange": dates[number],
            "waterIn": water_in[number],
            "waterOut": water_out[number],
            "notes": notes[number],
        }
        for number in range(count)
    ]


def typed(row, role):
    return row[role][0]


def meant(row, role):
    return row[role][1]
