"""Makes the workbooks anew: python3 make.py [part ...]. Read ../README.md first."""

import sys

import plain_lists
import table_with_totals

PARTS = {
    "table_with_totals": table_with_totals.make,
    "plain_lists": plain_lists.make,
}

for name in sys.argv[1:] or PARTS:
    PARTS[name]()
    print(name)
