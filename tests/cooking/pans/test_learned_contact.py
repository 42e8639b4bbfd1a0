"""Contact learned from the log's own pan rows."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.cooking.pans.boiling_time import Goal, water_time
from cookstove_gui.cooking.pans.catalogue import COLD_WATER, Contact, PanOfWater, pans, usual_contact
from cookstove_gui.cooking.pans.doubts import usual_doubts
from cookstove_gui.cooking.pans.learned_contact import (
    PanRun,
    contact_of,
    goal_in,
    learned_contact,
    litres_in,
    pan_in,
    pan_runs,
    tells_of,
    window_before,
)
from cookstove_gui.physics.air import standard_pressure
from cookstove_gui.physics.pan_course import pan_course
from cookstove_gui.stove.entries import Entry
from tests.cooking.made import START, STOVE, fahrenheit, log, projection, session

POT = replace({one.key: one for one in pans()}["stock pot"], lid=True)


def run_with(contact: float, litres: float = 2.0, spot_f: float = 500) -> PanRun:
    """A run that took exactly as long as that contact makes it take."""
    water = PanOfWater(POT, litres)
    steady = projection({"top": [spot_f] * 37})
    taken = water_time(steady, "top", water, contact=Contact(median=contact, log_sd=1e-9)).minutes.p50
    assert taken is not None
    heats = np.full(2, fahrenheit(spot_f))
    return PanRun(
        spot="top",
        on_at=START,
        offset_minutes=0,
        water=water,
        goal=Goal.BOIL,
        start=COLD_WATER,
        minutes=taken,
        spot_minutes=np.array([-10.0, 0.0]),  # without the pan
        spot_heats=heats,
    )


@pytest.mark.parametrize("contact", [110.0, 200.0, 400.0])
def test_the_contact_of_a_run_is_found_again(contact: float) -> None:
    assert contact_of(run_with(contact)) == pytest.approx(contact, rel=0.04)


def test_a_run_that_no_contact_explains_is_left_out() -> None:
    run = run_with(200.0)
    impossible = replace(run, minutes=0.2)
    assert contact_of(impossible) is None
    assert learned_contact([impossible], POT) == Contact(
        median=pytest.approx(usual_contact(POT).median), log_sd=pytest.approx(usual_contact(POT).log_sd)
    )


@pytest.mark.parametrize(("count", "run_sd"), [(1, 0.2), (3, 0.16330), (8, 0.12060)])
def test_the_belief_is_the_conjugate_normal_one(count: int, run_sd: float, monkeypatch: pytest.MonkeyPatch) -> None:
    # 150 W/(m2 K), ln 5.0106, within a factor of 1.5, ln 0.40547. From run to run 0.2, which counts for four runs: of n
    # that do not differ sqrt(4 x 0.2^2 / (4 + n - 1)). Each run shows 300, ln 5.7038, on a spot read without a fault.
    monkeypatch.setattr("cookstove_gui.cooking.pans.learned_contact.SPOT_SD", 0.0)
    own, shown = (0.40547**2 - run_sd**2) ** -1, run_sd**-2
    precision = own + shown * count
    found = learned_contact([run_with(300.0)] * count, POT)
    assert np.log(found.median) == pytest.approx((own * 5.0106 + shown * count * 5.7038) / precision, abs=0.01)
    assert found.log_sd == pytest.approx((1 / precision + run_sd**2) ** 0.5, rel=1e-3)
    assert found.unlearned == pytest.approx(precision**-0.5 / (0.40547**2 - 0.2**2) ** 0.5, rel=1e-3)


def test_a_pan_on_a_spot_that_boils_only_just_tells_little() -> None:
    """Ten degrees beside the reading are a factor there, and nothing on a hot spot."""
    hot, cool = run_with(300.0), run_with(300.0, litres=0.7, spot_f=270.0)
    assert contact_of(cool) == pytest.approx(300.0, rel=0.1)
    before = usual_contact(POT).median
    moved = [np.log(learned_contact([run], POT).median / before) for run in (hot, cool)]
    assert 0.0 < moved[1] < 0.75 * moved[0]
    assert learned_contact([hot, cool], POT).median > learned_contact([hot], POT).median


def test_runs_that_differ_much_leave_the_next_one_in_more_doubt() -> None:
    alike = learned_contact([run_with(300.0)] * 4, POT)
    apart = learned_contact([run_with(contact) for contact in (150.0, 600.0, 200.0, 450.0)], POT)
    assert apart.log_sd > 1.5 * alike.log_sd
    assert usual_contact(POT).median < apart.median < alike.median  # and it is trusted less


def test_what_is_read_while_the_pan_stands_there_is_not_drawn_down_twice() -> None:
    """Iron read beside the pan is cooler by what the pan draws; read before or meanwhile, the contact is the same."""
    usual = usual_contact(POT).median
    run = run_with(usual)
    top = usual_doubts().cooktop
    spot = np.full(int(run.minutes * 2) + 1, fahrenheit(500))
    course = pan_course(run.water.physical(usual), run.start, spot, 30.0, run.water.kitchen, top)
    at = 0.7 * run.minutes
    read = fahrenheit(500) - float(np.interp(at * 60.0, course.time, course.drawn_down))
    assert read < fahrenheit(500) - 8.0
    meanwhile = replace(run, spot_minutes=np.array([at]), spot_heats=np.array([read]))
    assert contact_of(meanwhile) == pytest.approx(usual, rel=0.05)


def test_a_pan_with_another_base_teaches_nothing() -> None:
    warped = next(pan for pan in pans() if pan.base != POT.base)
    assert learned_contact([run_with(300.0)] * 3, warped) == learned_contact([], warped)
    assert tells_of(run_with(300.0), POT)
    assert not tells_of(run_with(300.0), warped)


def test_a_contact_that_no_pan_has_is_a_slip() -> None:
    # two litres under a lid, twenty hours from cold to the boil on a top of 1200 °F: hardly touching it
    endless = replace(
        run_with(200.0),
        water=PanOfWater(replace(POT, lid=True), 2.0),
        minutes=1200.0,
        spot_minutes=np.array([0.0, 1200.0]),
        spot_heats=np.full(2, fahrenheit(1200)),
    )
    assert contact_of(endless) is None


def test_the_answer_narrows_once_the_stove_has_done_it() -> None:
    steady = projection({"top": [480.0] * 37}, futures=200)
    water = PanOfWater(POT, 2.0)
    before = water_time(steady, "top", water).minutes
    after = water_time(steady, "top", water, contact=learned_contact([run_with(170.0)] * 4, POT)).minutes
    assert after.p90 is not None
    assert after.p10 is not None
    assert before.p10 is not None
    assert before.p90 is None or after.p90 - after.p10 < before.p90 - before.p10


def test_the_window_before_a_run_is_that_of_a_steady_spot_as_hot() -> None:
    # A run whose spot was read at one heat is what `water_time` says of a steady spot of that heat.
    run = run_with(170.0)
    steady = water_time(projection({"top": [500.0] * 37}, futures=60), "top", run.water).minutes
    found = window_before(run, [])
    assert (found.p10, found.p50, found.p90) == pytest.approx((steady.p10, steady.p50, steady.p90), rel=0.02)


def test_each_run_makes_the_window_of_the_next_narrower() -> None:
    run = run_with(170.0)
    wide = [window_before(run, [run] * count) for count in (0, 1, 4)]
    lengths = [one.p90 - one.p10 for one in wide if one.p10 is not None and one.p90 is not None]
    assert lengths[0] > lengths[1] > lengths[2]
    assert all(one.p10 < run.minutes < one.p90 for one in wide if one.p10 is not None and one.p90 is not None)


def noted(entries: tuple[Entry, ...], *notes: str) -> tuple[Entry, ...]:
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


def run_of(*rows: tuple[float, str, str, str, str], notes: tuple[str, ...]) -> PanRun | None:
    """The one run that a log tells of, or none."""
    found = pan_runs(STOVE, [session(1, noted(log(*rows), *notes))], POT)
    return found[0] if found else None


ON, OFF = (25, "pan", "top_back_left", "on", ""), (39, "pan", "top_back_left", "off", "")


@pytest.mark.parametrize(("read_at", "counts"), [(5, True), (4, False), (39, True), (40, False)])
def test_the_spot_is_read_within_twenty_minutes_before_or_meanwhile(read_at: float, counts: bool) -> None:
    rows = sorted(((read_at, "reading", "top_back_left", "480", "F"), ON, OFF), key=lambda row: row[0])
    notes = tuple({"on": "2 litres", "off": "boiled"}.get(row[3], "") for row in rows)
    assert (run_of(*rows, notes=notes) is not None) is counts


def test_a_note_at_the_spot_ends_a_run_and_one_elsewhere_does_not() -> None:
    rows = (
        (20, "reading", "top_back_left", "480", "F"),
        ON,
        (30, "note", "top_front_left", "", ""),
        (33, "note", "top_back_left", "", ""),
        OFF,
    )
    run = run_of(*rows, notes=("", "2 litres", "boils", "simmers", "boiled"))
    assert run is not None
    assert (run.minutes, run.goal) == (8, Goal.SIMMER)


def test_a_pan_that_is_moved_off_before_anything_happened_makes_no_run() -> None:
    rows = ((20, "reading", "top_back_left", "480", "F"), ON, (30, "pan", "top_back_left", "off", ""), OFF)
    assert run_of(*rows, notes=("", "2 litres", "", "boiled")) is None


def test_more_water_put_on_is_not_the_end_unless_it_says_so() -> None:
    again = (30, "pan", "top_back_left", "on", "")
    rows = ((20, "reading", "top_back_left", "480", "F"), ON, again, OFF)
    first = run_of(*rows, notes=("", "2 litres", "a splash more", "boiled"))
    assert first is not None
    assert first.minutes == 14
    boiling = run_of(*rows, notes=("", "2 litres", "boils", "moved"))
    assert boiling is not None
    assert boiling.minutes == 5


def test_the_pan_that_the_note_names_is_the_runs() -> None:
    rows = ((20, "reading", "top_back_left", "480", "F"), ON, OFF)
    named = run_of(*rows, notes=("", "kettle, 2 litres, lid on", "boiled"))
    assert named is not None
    assert (named.water.pan.key, named.water.pan.lid) == ("kettle", True)
    unnamed = run_of(*rows, notes=("", "2 litres", "boiled"))
    assert unnamed is not None
    assert unnamed.water.pan == POT
    for note, lid in (("2 litres, no lid", False), ("2 litres, lid", True)):
        of_no_name = run_of(*rows, notes=("", note, "boiled"))
        assert of_no_name is not None
        assert of_no_name.water.pan == replace(POT, lid=lid)


def test_height_above_the_sea_counts() -> None:
    rows = noted(log((20, "reading", "top_back_left", "480", "F"), ON, OFF), "", "2 litres", "boiled")
    (run,) = pan_runs(STOVE, [session(1, rows)], POT, pressure=float(standard_pressure(2000.0)))
    assert run.water.boiling == pytest.approx(93.315 + 273.15, abs=0.01)  # reference 1.9


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
        ("2 gallons", 7.570824),
        ("1 qt", 0.946353),
        ("1 quart", 0.946353),
        ("3 pints", 1.419528),
        ("1 pt", 0.473176),
        ("3 cups", 0.709764),
        ("1 cup", 0.236588),
        ("1 litre", 1.0),
        ("2 liters", 2.0),
        ("1.5 L", 1.5),
        ("two potatoes", None),
        ("2 lamb chops", None),
    ],
)
def test_litres_in_a_note(note: str, litres: float | None) -> None:
    """Row "9.22" of tests/reference."""
    assert litres_in(note) == (None if litres is None else pytest.approx(litres, rel=1e-5))


def test_goals_in_a_note() -> None:
    assert goal_in("Boiled at last") is Goal.BOIL
    assert goal_in("simmering") is Goal.SIMMER
    assert goal_in("hot enough to poach") is Goal.POACH
    assert goal_in("simmers, nearly a boil") is Goal.BOIL
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
    cool = replace(run, spot_heats=np.full(2, fahrenheit(180)))
    assert contact_of(cool) is None


def test_a_spot_that_warms_evenly_counts_as_its_middle() -> None:
    steady = run_with(200.0, litres=4.0, spot_f=500)
    steady = replace(steady, spot_minutes=np.array([0.0, steady.minutes]))
    assert 10 < steady.minutes < 25
    warming = replace(steady, spot_heats=np.array([fahrenheit(450), fahrenheit(550)]))
    assert contact_of(warming) == pytest.approx(contact_of(steady), rel=0.03)
    # and read only before and after the middle, the line between the readings counts
    early = replace(steady, spot_minutes=np.array([-10.0, steady.minutes + 10.0]), spot_heats=warming.spot_heats)
    assert contact_of(early) == pytest.approx(contact_of(steady), rel=0.03)


def test_a_pan_taken_off_begins_no_run_whatever_its_note_says() -> None:
    rows = ((20, "reading", "top_back_left", "480", "F"), ON, OFF, (45, "note", "top_back_left", "", ""))
    notes = ("", "2 litres", "boiled, 2 litres", "boils over")
    assert len(pan_runs(STOVE, [session(1, noted(log(*rows), *notes))], POT)) == 1


def test_other_stoves_pans_teach_nothing() -> None:
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
