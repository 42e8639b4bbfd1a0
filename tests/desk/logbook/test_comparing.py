"""Sessions beside each other: in the order asked for, from the match, by their local clock, and as a table."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from cookstove_gui.cooking.fires.comparing import Figure
from cookstove_gui.desk import Desk
from cookstove_gui.desk.logbook.comparing import Compared, compared, values_text
from cookstove_gui.one_road import work_out
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import kelvin
from tests.held_clock import HeldClock

from .made import keep


@pytest.fixture
def two(held_desk: Desk, held_clock: HeldClock) -> Compared:
    """A loaf of nine days ago, and a stew of three days ago."""
    rye = keep(held_desk, "Rye", held_clock() - timedelta(days=9), (80, 200, 330, 400))
    stew = keep(held_desk, "Stew", held_clock() - timedelta(days=3), (90, 180), step=30)
    return compared(held_desk, [stew, rye])


def test_they_stand_in_the_order_asked_for_with_their_days(two: Compared) -> None:
    assert [(one.title, one.name) for one in two.sessions] == [("Stew", "11 Mar"), ("Rye", "5 Mar")]
    assert [one.number for one in two.sessions] == [facts.session for facts in two.found.facts]


def test_curve_lane_and_length_count_from_the_match(two: Compared) -> None:
    stew, rye = two.sessions
    assert [(round(minute), heat) for minute, heat in stew.curve] == [
        (3, pytest.approx(kelvin(90.0, "F"))),
        (33, pytest.approx(kelvin(180.0, "F"))),
    ]
    assert [(minute, row.kind) for minute, row in rye.lane] == [
        (pytest.approx(0.0), Kind.LIT),
        (pytest.approx(2.0), Kind.WOOD),
    ]
    assert (stew.minutes, rye.minutes) == (pytest.approx(33.0), pytest.approx(78.0))


@pytest.mark.parametrize(("utc", "local"), [((15, 20), 620.0), ((2, 10), 1270.0), ((5, 0), 0.0), ((4, 59), 1439.0)])
def test_by_the_clock_is_by_that_of_the_stove_five_hours_behind(
    held_desk: Desk, utc: tuple[int, int], local: float
) -> None:
    number = keep(held_desk, "Rye", datetime(2026, 3, 5, *utc, tzinfo=UTC))
    (one,) = compared(held_desk, [number]).sessions
    assert one.clock_min == pytest.approx(local)


def test_the_one_on_the_stove_is_today_until_it_is_over(burning_desk: Desk, held_clock: HeldClock) -> None:
    session = burning_desk.session
    assert session is not None
    old = keep(burning_desk, "Rye", held_clock() - timedelta(days=9))
    assert [one.name for one in compared(burning_desk, [session.number, old]).sessions] == ["today", "5 Mar"]
    held_clock.pass_minutes(24 * 60)
    assert [one.name for one in compared(burning_desk, [session.number, old]).sessions] == ["14 Mar", "5 Mar"]


def test_a_session_without_entries_is_left_out(held_desk: Desk, held_clock: HeldClock) -> None:
    rye = keep(held_desk, "Rye", held_clock() - timedelta(days=9))
    empty = held_desk.logbook.start_session(held_desk.stove.name, "Empty").number
    assert [one.number for one in compared(held_desk, [empty, rye]).sessions] == [rye]


def test_the_rise_compared_is_that_to_the_heat_wanted(held_desk: Desk, held_clock: HeldClock) -> None:
    held_desk.choose_band("300-350")
    rye = keep(held_desk, "Rye", held_clock() - timedelta(days=9), (80, 200, 330, 400))
    found = compared(held_desk, [rye])
    assert found.band == held_desk.band
    # 300 °F lies ten thirteenths of the way from 200 at 28 min to 330 at 53 min.
    assert found.found.facts[0].rise_min == pytest.approx(28.0 + 25.0 * 100.0 / 130.0)


def test_spots_have_the_names_that_the_cook_gave_them(held_desk: Desk, held_clock: HeldClock) -> None:
    rye = keep(held_desk, "Rye", held_clock() - timedelta(days=9))
    labels = compared(held_desk, [rye]).labels
    assert labels == {spot.name: spot.label for spot in held_desk.stove.spots}
    assert labels["oven_centre"] != "oven_centre"


@pytest.mark.parametrize(("unit", "heats"), [("F", ("90", "180")), ("C", ("32", "82"))])
def test_the_table_has_a_line_for_each_reading_in_the_unit_shown(
    two: Compared, unit: str, heats: tuple[str, str]
) -> None:
    stew = replace(two, sessions=two.sessions[:1])
    assert values_text(stew, unit) == (
        f"session\tday\tminutes since lit\toven °{unit}\n"
        f"Stew\t11 Mar\t3.0\t{heats[0]}\n"
        f"Stew\t11 Mar\t33.0\t{heats[1]}\n"
    )
    assert [line.partition("\t")[0] for line in values_text(two, unit).splitlines()[1:]] == ["Stew"] * 2 + ["Rye"] * 4


def test_the_one_on_the_stove_brings_its_projection(burning_desk: Desk, held_clock: HeldClock) -> None:
    session = burning_desk.session
    assert session is not None
    old = keep(burning_desk, "Rye", held_clock() - timedelta(days=9))
    burning_desk.show(work_out(burning_desk.inputs()))
    standing = burning_desk.standing
    assert standing is not None
    found = compared(burning_desk, [old, session.number])
    assert [one.coming is None for one in found.sessions] == [True, False]
    coming, facts = found.sessions[1].coming, found.found.facts[1]
    assert coming is not None
    began = (standing.now - facts.began).total_seconds() / 60.0
    assert coming.minutes[0] == pytest.approx(began)
    assert coming.minutes[-1] == pytest.approx(began + 180.0)
    assert all(low <= middle <= high for low, middle, high in zip(coming.low, coming.middle, coming.high, strict=True))
    assert Figure.BEST in found.likely
    assert found.found.figures[Figure.BEST][1] == pytest.approx(max(coming.middle))
    assert found.found.figures[Figure.BEST][0] == pytest.approx(kelvin(400.0, "F"))


@pytest.mark.parametrize(("band", "is_rise"), [("350-400", True), ("200-260", False)])
def test_a_likely_arrival_from_below_counts_as_todays_rise(
    burning_desk: Desk, held_clock: HeldClock, band: str, is_rise: bool
) -> None:
    session = burning_desk.session
    assert session is not None
    burning_desk.choose_band(band)
    burning_desk.show(work_out(burning_desk.inputs()))
    standing = burning_desk.standing
    assert standing is not None
    assert standing.outlook.band.line_enters_min
    found = compared(burning_desk, [session.number, keep(burning_desk, "Rye", held_clock() - timedelta(days=9))])
    coming = found.sessions[0].coming
    assert coming is not None
    assert (coming.arrival is not None) is (Figure.RISE in found.likely) is is_rise
    if is_rise:
        likely = coming.now + standing.outlook.band.line_enters_min
        assert found.found.figures[Figure.RISE][0] == pytest.approx(likely)
