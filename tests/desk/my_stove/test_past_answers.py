"""The hot side and the firings of a stove, as the page My stove asks for them."""

from dataclasses import replace

import pytest

from cookstove_gui.desk.my_stove.past_answers import firing, hot_side
from cookstove_gui.stove.entries import HeatBand, Session
from cookstove_gui.stove.stove import INFRARED, SpotKind, unchecked
from cookstove_gui.units import kelvin
from tests.cooking.made import STOVE, log, session

BREAD = HeatBand(name="bread", low=kelvin(375.0, "F"), high=kelvin(425.0, "F"))
# An oven that comes to heat in an hour, holds it, and falls by 50 °F within three hours and a half of the load.
SHUT_DOWN = (
    (0, "lit", "", "", ""),
    (20, "reading", "oven_centre", "175", "F"),
    (30, "wood", "", "6", "kg"),
    (40, "air", "", "0.1", ""),
    (60, "reading", "oven_centre", "375", "F"),
    (90, "reading", "oven_centre", "440", "F"),
    (200, "reading", "oven_centre", "420", "F"),
    (260, "reading", "oven_centre", "360", "F"),
)
CUT_SHORT = SHUT_DOWN[:6]  # half an hour after the air was shut nothing more was read


def past(*logs: tuple[tuple[float, str, str, str, str], ...]):
    """Reads the sessions of the made-up stove, and none of any other."""
    sessions = tuple(session(number, log(*rows)) for number, rows in enumerate(logs, start=1))

    def read(stove: str) -> tuple[Session, ...]:
        return sessions if stove == STOVE.name else ()

    return read


def test_the_cooktop_is_told_against_its_mean_and_the_oven_against_its_centre() -> None:
    tops = [spot.name for spot in STOVE.spots_of(SpotKind.TOP)]
    rows = [
        (20.0 + later, "reading", top, str(300 + 40 * place), "F")
        for later in (0, 30, 60)
        for place, top in enumerate(tops[:3])
    ]
    found = hot_side(STOVE, past((SHUT_DOWN[0], *rows), CUT_SHORT))
    assert (found.stove, found.sessions) == (STOVE.name, 2)
    cooktop = {row.spot: row for row in found.pattern}
    assert cooktop.keys() == set(tops)
    assert cooktop[tops[0]].mean < 0.0 < cooktop[tops[2]].mean
    assert [cooktop[top].readings for top in tops] == [3, 3, 3, 0, 0, 0]
    assert {row.spot for row in found.oven} <= {spot.name for spot in STOVE.spots_of(SpotKind.OVEN)}


def test_a_firing_tells_the_rise_the_hold_and_the_burns() -> None:
    found = firing(STOVE, BREAD, past(SHUT_DOWN))
    assert found.stove == STOVE.name
    assert found.rise_min.p50 == pytest.approx(60.0)
    # It falls through 375 °F three quarters of the way from 420 to 360: at 245 min, 185 after it came.
    assert found.longest_hold_min == pytest.approx(185.0)
    assert found.typical_hold_min == pytest.approx(185.0)
    assert found.summary.burns == len(found.burns) == 1


def test_loads_that_the_log_leaves_early_are_not_listed_and_the_latest_come_first() -> None:
    assert firing(STOVE, BREAD, past(CUT_SHORT[:5])).burns == ()
    assert [burn.fell for burn in firing(STOVE, BREAD, past(SHUT_DOWN, CUT_SHORT)).burns] == [False, True]


def test_a_stove_without_a_past_has_no_times() -> None:
    found = firing(STOVE, BREAD, past())
    assert (found.rise_min.p50, found.longest_hold_min, found.burns) == (None, None, ())


def test_the_hot_side_is_that_of_corrected_readings() -> None:
    gun = replace(unchecked("gun", INFRARED), emissivity=0.70)
    painted = replace(STOVE, cooktop_surface="stove paint")
    tops = [spot.name for spot in STOVE.spots_of(SpotKind.TOP)]
    rows = [(20.0 + turn, "reading", top, "450", "F") for turn in (0, 30, 60) for top in tops]
    plain, meant = (
        hot_side(replace(painted, instruments=instruments), past(tuple(rows))).pattern[0].usual
        for instruments in ((), (gun,))
    )
    assert plain == pytest.approx(kelvin(450.0, "F"), abs=0.1)
    assert meant is not None
    assert plain is not None
    assert meant < plain - 5  # paint of 0.94 gives off more than a thermometer set to 0.70 takes it for
