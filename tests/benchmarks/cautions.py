"""How often each caution is due: over the sample sessions, and over firings of the invented worlds.

Run by hand: `python -m tests.benchmarks.cautions [--worlds 24]`. Asked every ten minutes from first row to last, on
the one road. A caution that stands most of the time in most firings is soon read past; it wants a better rule.
"""

import argparse
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import timedelta
from pathlib import Path

from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.logbook.log_file import read_log
from cookstove_gui.logbook.stove_file import read_stove
from cookstove_gui.one_road import Memory, present
from cookstove_gui.resource_files import table
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import with_spots_named
from tests.voice.replay import inputs_at, make_case

EVERY_MIN = 10.0
SAMPLES = Path("sample_sessions")


@dataclass(slots=True)
class Tally:
    """Counts over firings, by key of the caution."""

    firings: int = 0
    moments: int = 0
    at_once: int = 0  # cautions due, summed over the moments
    in_firings: Counter[str] = field(default_factory=Counter)
    onsets: Counter[str] = field(default_factory=Counter)
    held: Counter[str] = field(default_factory=Counter)  # moments


def of_samples() -> Iterator[Inputs]:
    """Each sample session, with the ones before it of the same stove."""
    for folder in sorted(path for path in SAMPLES.iterdir() if path.is_dir()):
        earlier: list[Session] = []
        for number, log in enumerate(sorted(folder.glob("*.csv")), start=1):
            rows = tuple(sorted(read_log(log).entries, key=lambda row: row.at))
            stove = with_spots_named(read_stove(folder / "stove.toml"), tuple(row.spot for row in rows))
            yield Inputs(
                stove=stove, rows=rows, now=rows[-1].at, band=band_from_text("bread", "F"), earlier=tuple(earlier)
            )
            earlier.append(Session(number=number, stove=stove.name, title="", entries=rows))


def of_worlds(many: int) -> Iterator[Inputs]:
    """Firings of the invented worlds, those of new stoves left out."""
    for case in map(make_case, range(many)):
        if not case.stove.is_new:
            yield inputs_at(case, case.rows, case.rows[-1].at)


def add(tally: Tally, asked: Inputs) -> None:
    """Follow one firing."""
    memory, now, before, seen = Memory(), min(row.at for row in asked.rows), set[str](), set[str]()
    tally.firings += 1
    while now <= asked.now:
        known = Inputs(
            stove=asked.stove,
            rows=tuple(row for row in asked.rows if row.at <= now),
            now=now,
            band=asked.band,
            character=asked.character,
            earlier=asked.earlier,
        )
        due = {caution.key for caution in present(known, memory).cautions}
        tally.moments += 1
        tally.at_once += len(due)
        tally.held.update(due)
        tally.onsets.update(due - before)
        seen |= due
        before = due
        now += timedelta(minutes=EVERY_MIN)
    tally.in_firings.update(seen)


def tally_of(firings: Iterator[Inputs]) -> Tally:
    """The counts over firings."""
    tally = Tally()
    for asked in firings:
        add(tally, asked)
    return tally


def lines(samples: Tally, worlds: Tally) -> Iterator[str]:
    """A row for each caution, the one that stands longest first."""
    both = (samples, worlds)
    yield "| caution | firings with it | told, a firing | share of the time |"
    yield "|---|---|---|---|"
    keys = [row["key"] for row in table("cautions.toml")["caution"]]
    for key in sorted(keys, key=lambda key: -samples.held[key] / samples.moments - worlds.held[key] / worlds.moments):
        firings = ", ".join(f"{one.in_firings[key]} of {one.firings}" for one in both)
        told = ", ".join(f"{one.onsets[key] / one.firings:.1f}" for one in both)
        held = ", ".join(f"{one.held[key] / one.moments:.0%}".replace("%", " %") for one in both)
        yield f"| {key} | {firings} | {told} | {held} |"
    yield f"\nAt once on average: {', '.join(f'{one.at_once / one.moments:.1f}' for one in both)}."


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--worlds", type=int, default=24, help="firings of the invented worlds")
    asked = parser.parse_args()
    print("\n".join(lines(tally_of(of_samples()), tally_of(of_worlds(asked.worlds)))))


if __name__ == "__main__":
    main()
