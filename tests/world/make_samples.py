"""Makes the folder `sample_sessions/`: invented stoves, each with eight invented firings.

    python -m tests.world.make_samples [FOLDER]

The same program makes the same firings. Everything in them is invented: no stove, person or measurement is real.
"""

import sys
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import numpy as np

from cookstove_gui.logbook.data_package import package_text, tabular_resource
from cookstove_gui.logbook.log_file import COLUMNS, write_log
from cookstove_gui.logbook.package_tables import LOG_FIELDS
from cookstove_gui.logbook.stove_file import write_stove
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import tidy
from tests.world.sessions import WorldSession, make_session
from tests.world.stoves import WorldStove, make_stove, renamed

FIRINGS = 8
_INVENTED = "Invented by a simulation; not measured on any stove."
_ALL_INVENTED = (
    "Everything here is invented: stoves, cooks and numbers come from a simulation written for this project. "
    "No row was measured on a real stove, and none should be used as if it had been."
)


@dataclass(frozen=True, slots=True)
class Sample:
    """One stove of the folder."""

    folder: str
    name: str
    family: str
    seed: int
    unit: str
    offset_minutes: int
    first_day: datetime
    purposes: tuple[str, ...]
    is_new: bool
    surface: str
    note: str


_BAKING = ("bake", "bake", "roast", "bake", "top", "bake", "roast", "bake")
SAMPLES = (
    Sample(
        "brown_cast_stove", "Brown cast stove", "cast left", 423, "F", -300, datetime(2025, 10, 18, 14, 5, tzinfo=UTC),
        _BAKING, False, "oxidised cast iron",
        "Invented. Cast iron, firebox on the left, a kitchen stove in daily use.",
    ),
    Sample(
        "small_sheet_stove", "Small sheet-steel stove", "light right", 423, "F", -420,
        datetime(2025, 11, 2, 15, 40, tzinfo=UTC), ("bake", "top", "bake", "full", "bake", "roast", "bake", "bake"),
        False, "stove paint", "Invented. Light sheet steel, firebox on the right, quick to heat and quick to cool.",
    ),
    Sample(
        "grey_stone_stove", "Grey stone stove", "heavy above", 422, "C", 60, datetime(2025, 12, 6, 7, 20, tzinfo=UTC),
        ("kindling", "medium", "full", "bake", "bake", "roast", "bake", "bake"), True, "oxidised cast iron",
        "Invented. Clad in stone, firebox above the oven, delivered new: its first three firings are the first fires.",
    ),
)  # fmt: skip
_TITLES = {
    "kindling": "first fire, kindling only", "medium": "second fire, medium", "full": "full load, air wide open",
    "bake": "baking", "roast": "slow roast", "top": "cooking on the top",
}  # fmt: skip


def sample_stove(sample: Sample) -> WorldStove:
    """The stove of a sample, read by careful hands."""
    world = make_stove(sample.seed, sample.family)
    hands = replace(
        world.hands, interval=7.0, top_share=0.45, wall_share=0.12, side_share=0.1, logs_wood=0.95, logs_air=0.9,
        wood_words=0.25, oven_rounding=5 if sample.unit == "F" else 2, infrared_rounding=1,
    )  # fmt: skip
    cook = replace(world.cook, notices=max(world.cook.notices, 0.15), leaves_door=0.0)
    described = renamed(world, name=sample.name, is_new=sample.is_new, cooktop_surface=sample.surface, note=sample.note)
    return replace(described, hands=hands, cook=cook)


def sample_sessions(sample: Sample) -> Iterator[tuple[str, WorldSession, tuple[Entry, ...]]]:
    """(file name, firing, rows) of every firing of a sample."""
    world = sample_stove(sample)
    rng = np.random.default_rng([5, sample.seed])
    day = sample.first_day
    for number, purpose in enumerate(sample.purposes, start=1):
        first_fires = sample.is_new and number <= 3  # nothing is cooked on a new stove until they are done
        fired = replace(world, cook=replace(world.cook, uses_pans=0.0 if first_fires else 0.012))
        session = make_session(fired, number, purpose=purpose, unit=sample.unit)
        start = day + timedelta(minutes=int(rng.integers(-40, 90)))
        moved = tuple(
            replace(row, at=row.at - session.start + start, offset_minutes=sample.offset_minutes)
            for row in session.entries
        )
        title = f"invented firing {number}: {_TITLES[purpose]}"
        rows = _with_note(moved, title)
        if number == 2:
            rows = _with_slip(rows)
        local = start + timedelta(minutes=sample.offset_minutes)
        yield f"{local:%Y-%m-%d}_{purpose}.csv", session, rows
        day += timedelta(days=int(rng.integers(2, 7)))


def _with_note(rows: tuple[Entry, ...], text: str) -> tuple[Entry, ...]:
    first = replace(rows[0], kind=Kind.NOTE, spot="", value="", unit="", note=text)
    return tuple(replace(row, number=number) for number, row in enumerate((first, *rows), start=1))


def _with_slip(rows: tuple[Entry, ...]) -> tuple[Entry, ...]:
    """The same rows with one reading typed wrong, taken back and typed again."""
    readings = [row for row in rows if row.kind is Kind.READING and row.spot == "oven_centre"]
    right = readings[len(readings) // 2]
    wrong = replace(right, value=tidy(float(right.value) * 10))
    before = [row for row in rows if row.number < right.number]
    after = [row for row in rows if row.number > right.number]
    void = replace(
        right, at=right.at + timedelta(seconds=9), kind=Kind.VOID, spot="", unit="", value=str(right.number),
        note="one nought too many",
    )  # fmt: skip
    return tuple(
        replace(row, number=number) for number, row in enumerate([*before, wrong, void, right, *after], start=1)
    )


def write_samples(folder: Path) -> None:
    """Write every sample, the data package and the words about it."""
    resources = []
    for sample in SAMPLES:
        place = folder / sample.folder
        place.mkdir(parents=True, exist_ok=True)
        for old in place.glob("*.csv"):
            old.unlink()
        write_stove(place / "stove.toml", sample_stove(sample).stove)
        for name, session, rows in sample_sessions(sample):
            write_log(place / name, rows)
            title = f"{sample.name}: {session.plan.purpose}, {session.duration / 60:.1f} h"
            resources.append(tabular_resource(f"{sample.folder}/{name}", title, LOG_FIELDS, _INVENTED))
    text = package_text("invented-cookstove-sessions", "Invented wood cookstove sessions", _ALL_INVENTED, resources)
    (folder / "datapackage.json").write_text(text, encoding="utf-8")
    (folder / "README.md").write_text(_readme(), encoding="utf-8")


def _readme() -> str:
    stoves = "\n".join(
        f"- `{sample.folder}/`: {sample.note.removeprefix('Invented. ')} Readings in °{sample.unit}."
        for sample in SAMPLES
    )
    return f"""# Invented sample sessions

**Everything in this folder is invented.** The stoves, the people and every number come from a simulation
(`tests/world/`); nothing was measured on a real stove and no real person, maker or place is meant.

{stoves}

Each folder holds a `stove.toml` (the stove as its owner would describe it) and {FIRINGS} sessions, one CSV file
each, with the columns `{",".join(COLUMNS)}`. The people in them forget to write some things
down, round, and slip now and then, as people do: about one reading in a hundred is wrong. `datapackage.json`
describes the files (Frictionless Data Package).

Make them again with `python -m tests.world.make_samples`.
"""


if __name__ == "__main__":
    write_samples(Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).resolve().parents[2] / "sample_sessions")
