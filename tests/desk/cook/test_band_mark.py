"""The mark on the band: when the oven comes to it, stays in it, or does not come, at the edge it passes through."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.cooking.fires.first_fires import progress
from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.band_mark import BandMark, arrival_to_come, band_mark
from cookstove_gui.desk.log.on_table import LIVE_FOR
from cookstove_gui.forecast.answers import HORIZON_MINUTES
from cookstove_gui.units import kelvin
from tests.desk.conftest import Going
from tests.held_clock import HeldClock

LOW, HIGH = kelvin(375.0, "F"), kelvin(425.0, "F")


@pytest.fixture(autouse=True)
def band(burning_desk: Desk) -> None:
    burning_desk.choose_band("375-425")


def shown(desk: Desk) -> BandMark:
    mark = band_mark(desk)
    assert mark is not None
    return mark


def minutes(mark: BandMark, desk: Desk) -> list[float]:
    assert mark.window is not None
    assert desk.standing is not None
    return [(at - desk.standing.now) / timedelta(minutes=1) for at in mark.window]


@pytest.mark.parametrize(
    ("points", "edge", "likely"), [(((0, 300), (100, 500)), LOW, 37.5), (((0, 500), (100, 400), (180, 400)), HIGH, 75)]
)
def test_an_oven_on_its_way_is_marked_at_the_edge_it_comes_through(
    going: Going, points: tuple[tuple[float, float], ...], edge: float, likely: float
) -> None:
    desk = going(*points, spread=10)
    mark = shown(desk)
    assert mark.kelvin == pytest.approx(edge)
    assert mark.words == f"likely {desk.edge.clock(likely)}"
    first, middle, last = minutes(mark, desk)
    assert first < middle < last
    assert middle == pytest.approx(likely, abs=0.5)
    assert mark.more == f"between {desk.edge.clock(first)} and {desk.edge.clock(last)}"
    arrival = arrival_to_come(desk)
    assert arrival is not None
    assert arrival.likely == mark.window[1] if mark.window else False


def test_an_arrival_without_an_end_is_drawn_to_the_horizon(going: Going) -> None:
    desk = going((0, 300), (180, 390), spread=40)
    mark = shown(desk)
    assert mark.more == "perhaps much later"
    assert minutes(mark, desk)[2] == HORIZON_MINUTES


@pytest.mark.parametrize(("heat", "edge"), [(300, LOW), (500, HIGH)])
def test_an_oven_that_does_not_come_is_marked_at_the_nearer_edge(going: Going, heat: float, edge: float) -> None:
    desk = going((0, heat))
    mark = shown(desk)
    assert mark.words == f"not likely by {desk.edge.clock(HORIZON_MINUTES)}"
    assert (mark.kelvin, mark.window) == (pytest.approx(edge), None)
    assert arrival_to_come(desk) is None


def test_an_oven_that_comes_near_may_touch_it(going: Going) -> None:
    desk = going((0, 300), (180, 300))
    standing = desk.standing
    assert standing is not None
    touch = replace(standing.outlook.band.enters_min, p10=20.0, p50=40.0)
    band = replace(standing.outlook.band, chance_reached_3h=0.7, enters_min=touch)
    assert desk.show(replace(standing, outlook=replace(standing.outlook, band=band), serial=desk.inputs().serial))
    mark = shown(desk)
    assert mark.words == f"may touch it {desk.edge.clock(40)}"
    assert mark.kelvin == pytest.approx(LOW)


@pytest.mark.parametrize(("end", "edge"), [(500, HIGH), (300, LOW)])
def test_an_oven_that_leaves_is_marked_at_the_edge_it_leaves_through(going: Going, end: float, edge: float) -> None:
    desk = going((0, 400), (100, end), spread=10)
    mark = shown(desk)
    first, leaves, last = minutes(mark, desk)
    assert mark.kelvin == pytest.approx(edge)
    assert leaves == pytest.approx(25, abs=0.5)
    assert first == pytest.approx(25 - 8, abs=1)  # eight in ten lie within 8 °F of the middle, at 1 °F a minute
    assert last == pytest.approx(25 + 8, abs=1)
    assert mark.words == f"until about {desk.edge.clock(leaves)}"
    assert arrival_to_come(desk) is None


def test_a_leaving_that_some_futures_never_see_is_drawn_to_the_horizon(going: Going) -> None:
    desk = going((0, 400), (180, 370), spread=30)
    assert minutes(shown(desk), desk)[2] == HORIZON_MINUTES


def test_an_oven_that_stays_says_so(going: Going) -> None:
    mark = shown(going((0, 400)))
    assert (mark.words, mark.kelvin, mark.window) == ("for hours", pytest.approx(LOW), None)


@pytest.mark.parametrize("state", ["another band", "old", "nothing read", "first fires"])
def test_no_mark_where_nothing_can_be_said(going: Going, held_clock: HeldClock, state: str) -> None:
    desk = going((0, 300), (100, 500))
    standing = desk.standing
    assert standing is not None
    if state == "another band":
        desk.choose_band("200-250")
    elif state == "old":
        held_clock.pass_minutes(LIVE_FOR / timedelta(minutes=1) + 1)
    elif state == "nothing read":
        for row in desk.entries[3:]:
            desk.take_back(row.number)
    else:
        first = progress(replace(desk.stove, is_new=True), ())
        assert desk.show(replace(standing, first_fires=first, serial=desk.inputs().serial))
    assert desk.standing is not None
    assert band_mark(desk) is None
    assert arrival_to_come(desk) is None
