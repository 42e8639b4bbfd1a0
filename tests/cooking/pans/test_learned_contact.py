"""Contact learned from the log's own pan rows."""

import numpy as np
import pytest

from cookstove_gui.cooking.pans.boiling_time import COLD_WATER, Goal, time_to_reach
from cookstove_gui.cooking.pans.catalogue import Contact, PanOfWater, pans, usual_contact
from cookstove_gui.cooking.pans.learned_contact import (
    RUN_LOG_SD,
    PanRun,
    calibrate_contact,
    contact_of,
    goal_in,
    litres_in,
    pan_in,
    pan_runs,
)
from cookstove_gui.stove.entries import Entry
from tests.cooking.made import STOVE, fahrenheit, log, projection, session

POT = pans()[0]


def run_with(contact: float, litres: float = 2.0, spot_f: float = 500) -> PanRun:
    """A run that took exactly as long as that contact makes it take."""
    water = PanOfWater(POT, litres)
    steady = projection({"top": [spot_f] * 37})
    taken = time_to_reach(steady, "top", water, contact=Contact(median=contact, log_sd=1e-9)).minutes.p50
    assert taken is not None
    heats = np.full(2, fahrenheit(spot_f))
    return PanRun(
        water=water,
        goal=Goal.BOIL,
        start=COLD_WATER,
        minutes=taken,
        spot_minutes=np.array([0.0, taken]),
        spot_heats=heats,
    )


@pytest.mark.parametrize("contact", [110.0, 200.0, 400.0])
def test_the_contact_of_a_run_is_found_again(contact: float) -> None:
    assert contact_of(run_with(contact)) == pytest.approx(contact, rel=0.02)


def test_a_run_that_no_contact_explains_is_left_out() -> None:
    run = run_with(200.0)
    impossible = PanRun(
        water=run.water,
        goal=run.goal,
        start=run.start,
        minutes=0.2,
        spot_minutes=run.spot_minutes,
        spot_heats=run.spot_heats,
    )
    assert contact_of(impossible) is None
    assert calibrate_contact([impossible], POT) == Contact(
        median=pytest.approx(usual_contact(POT).median), log_sd=pytest.approx(usual_contact(POT).log_sd)
    )


@pytest.mark.parametrize("count", [1, 3, 8])
def test_the_belief_is_the_conjugate_normal_one(count: int) -> None:
    usual = usual_contact(POT)
    found = calibrate_contact([run_with(300.0)] * count, POT)
    precision = usual.log_sd**-2 + count * RUN_LOG_SD**-2
    expected = (np.log(usual.median) * usual.log_sd**-2 + count * np.log(300.0) * RUN_LOG_SD**-2) / precision
    assert np.log(found.median) == pytest.approx(expected, abs=0.01)
    assert found.log_sd == pytest.approx(precision**-0.5)


def test_the_answer_narrows_once_the_stove_has_done_it() -> None:
    steady = projection({"top": [480.0] * 37}, futures=200)
    water = PanOfWater(POT, 2.0)
    before = time_to_reach(steady, "top", water).minutes
    after = time_to_reach(steady, "top", water, contact=calibrate_contact([run_with(170.0)] * 4, POT)).minutes
    assert after.p90 is not None
    assert after.p10 is not None
    assert before.p10 is not None
    assert before.p90 is None or after.p90 - after.p10 < before.p90 - before.p10


def noted(entries: tuple[Entry, ...], *notes: str) -> tuple[Entry, ...]:
    from dataclasses import replace

    return tuple(replace(entry, note=note) for entry, note in zip(entries, notes, strict=True))


def test_runs_are_read_from_pan_rows() -> None:
    rows = noted(
        log(
            (0, "reading", "top_back_left", "480", "F"),
            (5, "pan", "top_back_left", "on", ""),
            (15, "reading", "top_back_left", "500", "F"),
            (19, "pan", "top_back_left", "off", ""),
        ),
        "", "2 litres of water", "", "boiled",
    )  # fmt: skip
    (run,) = pan_runs(STOVE, [session(1, rows)], POT)
    assert run.minutes == 14
    assert run.water.litres == 2.0
    assert run.goal is Goal.BOIL
    assert run.spot_heats == pytest.approx([fahrenheit(480), fahrenheit(500)])
    assert contact_of(run) is not None


@pytest.mark.parametrize(
    "notes",
    [
        ("", "water", "", "boiled"),  # how much is not said
        ("", "2 litres", "", ""),  # what it did is not said
        ("", "2000 litres", "", "boiled"),  # no pan holds that
    ],
)
def test_rows_that_say_too_little_make_no_run(notes: tuple[str, ...]) -> None:
    rows = log(
        (0, "reading", "top_back_left", "480", "F"),
        (5, "pan", "top_back_left", "on", ""),
        (15, "reading", "top_back_left", "500", "F"),
        (19, "pan", "top_back_left", "off", ""),
    )
    assert pan_runs(STOVE, [session(1, noted(rows, *notes))], POT) == ()


def test_a_spot_never_read_makes_no_run() -> None:
    rows = noted(
        log((5, "pan", "top_back_left", "on", ""), (19, "pan", "top_back_left", "off", "")), "2 litres", "boiled"
    )
    assert pan_runs(STOVE, [session(1, rows)], POT) == ()


@pytest.mark.parametrize(
    ("note", "litres"),
    [
        ("2 l", 2.0),
        ("1,5 litres, lid on", 1.5),
        ("kettle, 2 quarts", 1.892706),
        ("500 ml", 0.5),
        ("1 gal", 3.785412),
        ("3 cups", 0.709764),
        ("two potatoes", None),
        ("2 lamb chops", None),
    ],
)
def test_litres_in_a_note(note: str, litres: float | None) -> None:
    assert litres_in(note) == (None if litres is None else pytest.approx(litres))


def test_goals_in_a_note() -> None:
    assert goal_in("Boiled at last") is Goal.BOIL
    assert goal_in("simmering") is Goal.SIMMER
    assert goal_in("moved aside") is None


@pytest.mark.parametrize(
    ("note", "key", "lid"),
    [
        ("kettle, 2 litres, lid on", "kettle", True),
        ("Enamel pot 3 quarts no lid", "enamel pot", False),
        ("iron skillet", "iron skillet", False),
        ("2 litres", None, False),
    ],
)
def test_the_pan_a_note_names(note: str, key: str | None, lid: bool) -> None:
    found = pan_in(note)
    assert (found.key if found else None) == key
    assert (found.lid if found else False) == lid


def test_a_spot_cooler_than_the_boil_explains_no_boiling() -> None:
    run = run_with(200.0)
    cool = PanRun(
        water=run.water,
        goal=run.goal,
        start=run.start,
        minutes=run.minutes,
        spot_minutes=run.spot_minutes,
        spot_heats=np.full(2, fahrenheit(180)),
    )
    assert contact_of(cool) is None


def test_other_stoves_pans_teach_nothing() -> None:
    from dataclasses import replace

    rows = noted(
        log(
            (0, "reading", "top_back_left", "480", "F"),
            (5, "pan", "top_back_left", "on", ""),
            (19, "pan", "top_back_left", "off", ""),
        ),
        "", "2 litres", "boiled",
    )  # fmt: skip
    assert len(pan_runs(STOVE, [session(1, rows)], POT)) == 1
    assert pan_runs(STOVE, [replace(session(1, rows), stove="another")], POT) == ()
