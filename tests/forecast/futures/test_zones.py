"""A spot's heat now: the part of the stove it belongs to, its own share of the excess, and how sure that is."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.forecast.futures.zones import spot_members, zones
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.ensemble import FIELD, Ensemble
from cookstove_gui.forecast.tracking.belief import Belief, LastReading
from cookstove_gui.stove.stove import Spot, SpotKind
from tests.forecast.futures.made import usual_belief
from tests.forecast.logs import BEGAN, STOVE

NAMES = [spot.name for spot in STOVE.spots]
SPOTS = len(NAMES)
TOP = NAMES.index("top_front_left")
NORMAL_80 = 2 * 1.281552  # width of the middle 80 % of a normal distribution, in standard deviations


def _sure(**fields) -> Belief:
    """Every member alike: room 294 K, cooktop 494 K, oven's air 450 K and walls 444 K; no spot differs."""
    belief = usual_belief()
    x = np.zeros_like(belief.ensemble.x)
    for row, kelvin in ((heat.ROOM, 294.0), (heat.PLATE, 494.0), (heat.WALLS, 444.0), (heat.AIR, 450.0)):
        x[row] = kelvin
    x[heat.DIAL], x[heat.LINING] = 440.0, 394.0
    nothing = np.zeros_like(belief.ensemble.remainder)
    defaults = {"ensemble": Ensemble(x, nothing), "spot_width": 1.0, "last_readings": {}}
    return replace(belief, **{**defaults, **fields})


def _zone(belief: Belief, spot: str):
    return next(zone for zone in zones(belief) if zone.spot == spot)


def test_one_zone_for_each_spot_in_the_stoves_order():
    assert [zone.spot for zone in zones(usual_belief())] == NAMES


@pytest.mark.parametrize(
    ("spot", "kelvin"),
    [("oven_centre", 450.0), ("oven_left", 444.0), ("top_back_right", 494.0), ("room", 294.0), ("flue", 384.0)],
)
def test_each_spot_has_the_heat_of_its_part(spot, kelvin):
    # The flue's surface stands at 0.45 of the cooktop's excess of 200 K.
    zone = _zone(_sure(), spot)
    assert (zone.p10, zone.p50, zone.p90) == pytest.approx((kelvin, kelvin, kelvin))


def test_a_spots_shares_are_of_the_excess_over_the_room():
    belief = _sure()
    belief.ensemble.x[FIELD + TOP] = 0.10  # lasting
    belief.ensemble.x[FIELD + SPOTS + TOP] = 0.05  # passing
    assert _zone(belief, NAMES[TOP]).p50 == pytest.approx(494.0 + 0.15 * 200.0)
    assert _zone(belief, NAMES[TOP + 1]).p50 == pytest.approx(494.0)


def test_a_cold_stoves_spots_differ_by_their_share_of_fifteen_kelvin():
    belief = _sure()
    belief.ensemble.x[heat.PLATE] = 295.0
    belief.ensemble.x[FIELD + TOP] = 0.2
    assert _zone(belief, NAMES[TOP]).p50 == pytest.approx(295.0 + 0.2 * 15.0)


def _half_known(belief: Belief, lasting: float, passing: float, together: float = 0.0) -> Belief:
    belief.ensemble.remainder[TOP, TOP] = lasting
    belief.ensemble.remainder[SPOTS + TOP, SPOTS + TOP] = passing
    belief.ensemble.remainder[TOP, SPOTS + TOP] = belief.ensemble.remainder[SPOTS + TOP, TOP] = together
    return belief


def test_doubt_of_lasting_and_passing_share_adds_up_as_variances():
    # sqrt(0.03^2 + 0.04^2) = 0.05 of 200 K; the windows are a fifth wider than the field alone says.
    zone = _zone(_half_known(_sure(), 0.03**2, 0.04**2), NAMES[TOP])
    assert zone.p90 - zone.p10 == pytest.approx(1.2 * NORMAL_80 * 0.05 * 200.0, rel=0.01)
    assert zone.p50 - zone.p10 == pytest.approx(zone.p90 - zone.p50, rel=0.02)
    against = _zone(_half_known(_sure(), 0.03**2, 0.04**2, -0.5 * (0.05**2)), NAMES[TOP])
    assert against.p90 - against.p10 == pytest.approx(0.0, abs=1e-6)


def test_windows_are_as_wide_as_the_readings_have_asked_for():
    narrow, wide = (_half_known(_sure(spot_width=width), 0.0025, 0.0) for width in (0.5, 1.5))
    narrow.ensemble.x[heat.PLATE] += np.linspace(-10.0, 10.0, narrow.ensemble.x.shape[1])
    wide.ensemble.x[heat.PLATE] += np.linspace(-10.0, 10.0, wide.ensemble.x.shape[1])
    widths = [zone.p90 - zone.p10 for zone in (_zone(narrow, NAMES[TOP]), _zone(wide, NAMES[TOP]))]
    assert widths[1] == pytest.approx(3.0 * widths[0], rel=0.05)
    assert _zone(wide, "oven_centre").p90 == pytest.approx(450.0)


@pytest.mark.parametrize(("spot", "row", "factor"), [("top_back_right", "PLATE", 1.35), ("room", "ROOM", 1.8)])
def test_what_the_physics_leaves_out_widens_a_spots_window_about_its_mean(spot, row, factor):
    belief = _sure()
    off = np.linspace(-1.0, 1.0, belief.ensemble.x.shape[1])
    belief.ensemble.x[getattr(heat, row)] += off
    zone = _zone(belief, spot)
    assert zone.p90 - zone.p10 == pytest.approx(factor * 1.6, rel=0.01)
    assert zone.p50 == pytest.approx(belief.ensemble.x[getattr(heat, row)].mean())


def test_members_of_a_spots_own_doubt_go_with_nothing_else():
    belief = _half_known(_sure(), 0.0025, 0.0)
    members = spot_members(belief, TOP)
    order = np.arange(len(members))
    assert abs(np.corrcoef(members, order)[0, 1]) < 0.1
    assert len(np.unique(members)) == len(members)


def test_the_last_reading_of_a_spot_is_told_with_its_age():
    belief = _sure()
    read = LastReading(belief.now - timedelta(minutes=7.5), 480.0)
    zone = _zone(replace(belief, last_readings={NAMES[TOP]: read}), NAMES[TOP])
    assert (zone.last_reading, zone.last_reading_age_min) == (480.0, 7.5)
    never = _zone(belief, NAMES[TOP])
    assert (never.last_reading, never.last_reading_age_min) == (None, None)


def test_a_wall_keeps_its_own_last_reading_and_one_never_read_is_a_wall_of_the_room():
    # Two hours on its rise has fallen to 1/e.
    wall = Spot(name="wall_left", label="", kind=SpotKind.WALL)
    walled = replace(_sure(), stove=replace(STOVE, spots=(wall,)))
    assert zones(walled)[0].p50 == pytest.approx(294.0, abs=0.5)
    fresh, old = (
        zones(replace(walled, last_readings={"wall_left": LastReading(walled.now - timedelta(minutes=age), 334.0)}))[0]
        for age in (0, 120)
    )
    assert fresh.p50 == pytest.approx(334.0, abs=0.1)
    assert old.p50 == pytest.approx(294.0 + 40.0 / np.e, abs=0.5)
    assert old.p90 - old.p10 > 2.0 * (fresh.p90 - fresh.p10)
    assert walled.now > BEGAN
