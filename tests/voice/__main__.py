"""The whole run: `python -m tests.voice [--sessions N] [--every MINUTES] [--first NUMBER] [--workers N]`."""

import argparse
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from functools import partial

from tests.voice.rules import RULES
from tests.voice.tally import added, table_of, tally_of_number


def main(arguments: Sequence[str] | None = None) -> None:
    """Follow the firings and print the table."""
    parser = argparse.ArgumentParser(prog="python -m tests.voice", description=__doc__)
    parser.add_argument("--sessions", type=int, default=240, help="firings to follow")
    parser.add_argument("--every", type=float, default=15.0, help="minutes between moments; 1 is every minute")
    parser.add_argument("--first", type=int, default=0, help="number of the first firing")
    parser.add_argument("--workers", type=int, default=2, help="processes")
    parser.add_argument("--rules", action="store_true", help="list the rules and their sentences instead")
    options = parser.parse_args(arguments)
    if options.rules:
        for rule in RULES:
            print(f"{rule.name}: {rule.sentence}")
        return
    numbers = range(options.first, options.first + options.sessions)
    with ProcessPoolExecutor(options.workers) as pool:
        tallies = pool.map(partial(tally_of_number, every=options.every), numbers)
        print(table_of(added(tallies)), flush=True)


if __name__ == "__main__":
    main()
