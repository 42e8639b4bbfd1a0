"""What is in the oven is told from the log alone: whatever the order of typing, each row finds what it is about."""

from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.cooking.baking.catalogue import LARGEST, bake_of, mass_of
from cookstove_gui.cooking.baking.in_oven import in_oven, put_in
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import kelvin

START = datetime(2026, 3, 14, 21, 45, tzinfo=UTC)
LOAF, PIE = "loaf of bread", "fruit pie"


def rows(*told: tuple[float, Kind, str, str, str]) -> tuple[Entry, ...]:
    """Minute, kind, note, value and unit of each row."""
    return tuple(
        Entry(
            number=number, at=START + timedelta(minutes=minute), offset_minutes=-300, kind=kind, note=note, value=value,
            unit=unit,
        )
        for number, (minute, kind, note, value, unit) in enumerate(told, start=1)
    )  # fmt: skip


def test_what_went_in_is_in_until_it_comes_out():
    told = rows((0, Kind.OVEN_IN, LOAF, "", ""), (40, Kind.OVEN_OUT, "", "", ""))
    assert [one.name for one in in_oven(told[:1])] == [LOAF]
    assert in_oven(told) == ()
    assert put_in(told)[0].came_out == START + timedelta(minutes=40)


def test_a_loaf_weighs_what_the_log_says():
    (found,) = in_oven(rows((0, Kind.OVEN_IN, LOAF, "2.2", "lb")))
    assert mass_of(found.bake) == pytest.approx(2.2 * 0.45359237)


def test_an_impossible_mass_is_taken_as_the_largest_possible_one():
    (found,) = in_oven(rows((0, Kind.OVEN_IN, LOAF, "500", "kg")))
    assert mass_of(found.bake) == pytest.approx(LARGEST * mass_of(bake_of("bread_loaf")))


@pytest.mark.parametrize(("minute", "is_start"), [(0.0, True), (1.9, True), (2.0, False), (15.0, False)])
def test_a_probe_at_going_in_shows_what_it_starts_at(minute, is_start):
    (found,) = in_oven(rows((0, Kind.OVEN_IN, LOAF, "", ""), (minute, Kind.PROBE, "", "60", "F")))
    assert (found.bake.start == pytest.approx(kelvin(60.0, "F"))) is is_start
    assert len(found.probes) == (0 if is_start else 1)


def test_a_row_finds_what_its_note_names_and_without_a_name_what_went_in_last():
    told = rows(
        (0, Kind.OVEN_IN, PIE, "", ""),
        (10, Kind.OVEN_IN, LOAF, "", ""),
        (20, Kind.PROBE, PIE, "150", "F"),
        (22, Kind.TURNED, "", "", ""),
    )
    pie, loaf = in_oven(told)
    assert [probe.core for probe in pie.probes] == [pytest.approx(kelvin(150.0, "F"))]
    assert (pie.turned_at, loaf.turned_at) == (None, START + timedelta(minutes=22))


def test_of_two_alike_the_first_that_went_in_comes_out_first():
    told = rows((0, Kind.OVEN_IN, LOAF, "", ""), (15, Kind.OVEN_IN, LOAF, "", ""), (40, Kind.OVEN_OUT, LOAF, "", ""))
    assert [one.number for one in in_oven(told)] == [2]


def test_what_is_due_is_due_until_it_was_looked_at():
    told = rows(
        (0, Kind.OVEN_IN, LOAF, "", ""), (5, Kind.DUE, "", "20", "min"), (10, Kind.PROBE, "", "90", "F"),
        (26, Kind.PROBE, "", "140", "F"),
    )  # fmt: skip
    assert in_oven(told[:2])[0].due_at == START + timedelta(minutes=25)
    assert in_oven(told[:3])[0].due_at == START + timedelta(minutes=25)
    assert in_oven(told)[0].due_at is None


def test_what_the_catalogue_does_not_know_is_in_the_oven_all_the_same():
    (found,) = in_oven(rows((0, Kind.OVEN_IN, "clay pot", "", "")))
    assert (found.name, found.bake) == ("clay pot", None)


def test_nothing_is_probed_turned_or_taken_out_of_an_empty_oven():
    assert (
        put_in(rows((0, Kind.PROBE, "", "90", "F"), (1, Kind.TURNED, LOAF, "", ""), (2, Kind.OVEN_OUT, "", "", "")))
        == ()
    )
