"""The whole run: `python -m tests.voice [--firings N] [--stretches N] [--first NUMBER | --only NUMBER ...]`."""

import argparse
import sys
from collections.abc import Sequence

from tests.voice.rules import RULES
from tests.voice.tally import added, examples_of, table_of, tally_of_number

_TELL_EVERY = 20  # firings


def main(arguments: Sequence[str] | None = None) -> None:
    """Follow the firings and print the table."""
    parser = argparse.ArgumentParser(prog="python -m tests.voice", description=__doc__)
    parser.add_argument("--firings", type=int, default=200, help="firings to follow")
    parser.add_argument("--stretches", type=int, default=3, help="parts of a firing, each looked at for two minutes")
    parser.add_argument("--first", type=int, default=0, help="number of the first firing")
    parser.add_argument("--only", type=int, nargs="+", help="the numbers of the firings, instead")
    parser.add_argument("--rules", action="store_true", help="list the rules and their sentences instead")
    options = parser.parse_args(arguments)
    if options.rules:
        for rule in RULES:
            print(f"{rule.name}: {rule.sentence}")
        return
    tally = added(())
    numbers = options.only or range(options.first, options.first + options.firings)
    for done, number in enumerate(numbers, start=1):
        tally = added((tally, tally_of_number(number, options.stretches)))
        if done % _TELL_EVERY == 0:
            print(f"{done} firings, {tally[RULES[0].name].failed} times {RULES[0].name}", file=sys.stderr, flush=True)
    print(table_of(tally))
    print(examples_of(tally), flush=True)


if __name__ == "__main__":
    main()
