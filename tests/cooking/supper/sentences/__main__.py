"""The score of one half of the sentences."""

import sys

from tests.cooking.supper.sentences import FIELDS, compared

rows = compared(sys.argv[1] if len(sys.argv) > 1 else "tuned")
for row in rows:
    if row.wrong and "-q" not in sys.argv:
        print(row.text)
        for field in row.wrong:
            print(f"    {field}: wanted {row.wanted[field]}, found {row.found[field]}")
print(f"whole sentences right: {sum(not row.wrong for row in rows)} of {len(rows)}")
for field in FIELDS:
    wanted = [(place, repr(one)) for place, row in enumerate(rows) for one in row.wanted[field]]
    found = [(place, repr(one)) for place, row in enumerate(rows) for one in row.found[field]]
    hits = sum(min(wanted.count(one), found.count(one)) for one in set(wanted))
    print(f"{field}: {hits} of {len(wanted)} found, {len(found) - hits} found that are not there")
