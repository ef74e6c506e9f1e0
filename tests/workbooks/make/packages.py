"""Small tools for the package itself: a still clock for Python's zip writer, and parts changed through an XML library."""

import time
import zipfile
from types import SimpleNamespace

MADE = (2026, 6, 1, 9, 0, 0)


def hold_the_clock():
    """Both Python libraries stamp parts with the hour of writing; the same workbook should be the same file."""
    still = time.struct_time(MADE + (0, 152, 0))
    zipfile.time = SimpleNamespace(time=lambda: 0, localtime=lambda *_: still)


def read_parts(path):
    with zipfile.ZipFile(path) as package:
        return [(entry.filename, package.read(entry)) for entry in package.infolist()]


def write_parts(path, parts):
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as package:
        for name, content in parts:
            entry = zipfile.ZipInfo(name, MADE)
            entry.compress_type = zipfile.ZIP_DEFLATED
            package.writestr(entry, content)


def change_parts(path, changes, into=None):
    """changes: part name -> function from bytes to bytes."""
    parts = read_parts(path)
    missing = set(changes) - {name for name, _ in parts}
    if missing:
        raise SystemExit(f"{path.name} has no part {sorted(missing)}")
    write_parts(into or path, [(name, changes[name](content) if name in changes else content) for name, content in parts])
