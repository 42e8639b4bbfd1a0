"""Futures begin where the belief stands, go on as the stove does, and are as wide as has proved right."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind
from cookstove_gui.forecast.futures.cook import Doing
from cookstove_gui.forecast.futures.projection import generic_width, project, project_each
from cookstove_gui.forecast.futures.tending import tended
from cookstove_gui.forecast.model import heat
from cookstove_gui.forecast.model.character import CORRECTION_MINUTES, WIDTH_AFTER, WIDTH_BEFORE, Corrections
from cookstove_gui.forecast.model.ensemble import FIELD, Ensemble
from cookstove_gui.forecast.model.heat import Controls
from cookstove_gui.forecast.model.spots import passing_covariance
from cookstove_gui.forecast.tracking.belief import Belief, LastReading
from cookstove_gui.forecast.tracking.proof import Proof
from cookstove_gui.stove.entries import HeatBand
from cookstove_gui.stove.stove import Spot, SpotKind
from tests.forecast.futures.made import MINUTES, usual_belief
from tests.forecast.logs import MODERATE, STOVE

NAMES = [spot.name for spot in STOVE.spots]
SPOTS = len(NAMES)
TOP = NAMES.index("top_front_left")
FAR = HeatBand(name="far", low=600.0, high=620.0)


def _even(lasting: float = 0.0, passing: float = 0.0, remainder: float = 0.0) -> Belief:
    """A belief whose spots differ only as said: shares of one spot, and the variance of its lasting one."""
    belief = usual_belief()
    x = belief.ensemble.x.copy()
    x[FIELD:] = 0.0
    x[FIELD + TOP], x[FIELD + SPOTS + TOP] = lasting, passing
    doubt = np.zeros_like(belief.ensemble.remainder)
    doubt[TOP, TOP] = remainder
    return replace(belief, ensemble=Ensemble(x, doubt))


def _shares(belief: Belief) -> np.ndarray:
    """How far (members, times) one spot's futures lie above the cooktop's mean, as a share of its excess."""
    states = tended(belief, LEAVE, MINUTES, None)
    plate, room = states[:, heat.PLATE].T, states[:, heat.ROOM].T
    return (project(belief).of(NAMES[TOP]) - plate) / np.maximum(plate - room, 15.0)


def test_projection_covers_three_hours_of_every_spot():
    projection = project(usual_belief())
    assert projection.minutes.tolist() == MINUTES.tolist()
    assert projection.spots == tuple(NAMES)
    assert projection.kelvin.shape == (640, 37, SPOTS)
    assert projection.now == usual_belief().now


def test_futures_of_the_oven_begin_with_what_is_believed_of_its_air():
    belief = usual_belief()
    air = belief.ensemble.x[heat.AIR]
    oven = project(belief).of("oven_centre")[:, 0]
    assert oven - np.median(air) == pytest.approx(1.3 * (air - np.median(air)))


def test_futures_of_the_room_are_the_rooms():
    assert project(usual_belief()).of("room")[:, 0] == pytest.approx(usual_belief().ensemble.x[heat.ROOM])


def test_a_lasting_share_stays_and_a_passing_one_fades_to_a_third_in_twenty_four_minutes():
    # exp(-t / 24 min); what comes anew has no sign.
    lasting, passing = _shares(_even(lasting=0.2)).mean(axis=0), _shares(_even(passing=0.2)).mean(axis=0)
    assert lasting[[0, 5, 36]] == pytest.approx([0.2] * 3, abs=0.02)
    expected = 0.2 * np.exp(-MINUTES[[0, 5, 36]] / 24.0)
    assert passing[[0, 5, 36]] == pytest.approx(expected, abs=0.02)


def test_what_comes_anew_grows_to_the_spread_within_a_session():
    # A stationary first-order process that is known now: variance sigma^2 (1 - exp(-2 t / 24 min)).
    spread = np.sqrt(passing_covariance(STOVE.spots)[TOP, TOP])
    found = _shares(_even()).std(axis=0)
    expected = spread * np.sqrt(1.0 - np.exp(-2.0 * MINUTES[[0, 2, 5, 36]] / 24.0))
    assert found[[0, 2, 5, 36]] == pytest.approx(expected, rel=0.1, abs=1e-6)


def test_doubt_of_a_lasting_share_is_drawn_once_for_each_future():
    shares = _shares(_even(remainder=0.04))
    assert shares[:, 0].std() == pytest.approx(0.2, rel=0.1)
    # Left with it after three hours: 0.2 against what came anew.
    spread = np.sqrt(passing_covariance(STOVE.spots)[TOP, TOP])
    assert np.corrcoef(shares[:, 0], shares[:, 36])[0, 1] == pytest.approx(0.2 / np.hypot(0.2, spread), abs=0.08)


def test_a_cold_stoves_spots_differ_by_their_share_of_fifteen_kelvin():
    belief = _even(lasting=0.4)
    belief.ensemble.x[heat.PLATE] = belief.ensemble.x[heat.ROOM]
    plate = belief.ensemble.x[heat.PLATE]
    assert project(belief).of(NAMES[TOP])[:, 0] - plate == pytest.approx(np.full(640, 6.0))


# Widths


def _half_width(belief: Belief, spot: str = "oven_centre", band: HeatBand | None = None) -> np.ndarray:
    return np.ptp(project(belief, band=band).of(spot), axis=0)


def _corrected(*width: float) -> Belief:
    belief = usual_belief()
    return replace(belief, character=replace(belief.character, corrections=Corrections(width=width)))


def test_corrections_widen_the_oven_at_their_lead_and_nothing_else():
    plain, wide = _half_width(usual_belief()), _half_width(_corrected(1.0, 1.0, 1.0, 2.0, 2.0, 1.0))
    at = [int(np.flatnonzero(minute == MINUTES)[0]) for minute in (0, 30, 45, 60, 90, 120, 150, 180)]
    assert (wide / plain)[at] == pytest.approx([1.0, 1.0, 1.5, 2.0, 2.0, 2.0, 1.5, 1.0])
    for spot, factor in (("oven_left", 2.0), ("top_front_left", 1.0), ("room", 1.0), ("flue", 1.0)):
        ratio = _half_width(_corrected(*[2.0] * 6), spot) / _half_width(usual_belief(), spot)
        assert ratio == pytest.approx(np.full(37, factor))


def test_widening_leaves_the_middle():
    plain, wide = project(usual_belief()).of("oven_centre"), project(_corrected(*[2.0] * 6)).of("oven_centre")
    assert np.median(wide, axis=0) == pytest.approx(np.median(plain, axis=0))


def test_a_first_rise_is_least_sure_soon_and_what_comes_after_it_later():
    belief = usual_belief()
    reached = HeatBand(name="low", low=350.0, high=380.0)
    leads = np.array(CORRECTION_MINUTES)
    assert generic_width(belief, FAR, leads) == pytest.approx(WIDTH_BEFORE)
    assert generic_width(belief, reached, leads) == pytest.approx(WIDTH_AFTER)
    assert generic_width(belief, None, leads) == pytest.approx(WIDTH_AFTER)
    assert WIDTH_BEFORE[1] == max(*WIDTH_BEFORE, *WIDTH_AFTER)
    assert np.all(np.array(WIDTH_AFTER[2:]) > np.array(WIDTH_BEFORE[2:]))
    assert generic_width(belief, FAR, np.array([45.0]))[0] == pytest.approx(np.mean(WIDTH_BEFORE[2:4]))


@pytest.mark.parametrize(("proved", "before", "after"), [(0.9, 1.0, 0.9), (1.0, 1.0, 1.0), (1.6, 1.6, 1.6)])
def test_only_an_oven_that_has_reached_its_heat_has_earned_narrower_futures(
    proved: float, before: float, after: float
) -> None:
    reached = HeatBand(name="low", low=350.0, high=380.0)
    for band, width in ((FAR, before), (reached, after)):
        told, usual = (
            project(replace(usual_belief(), proof=Proof(factor)), band=band).of("oven_centre").std(axis=0)
            for factor in (proved, 1.0)
        )
        assert told / usual == pytest.approx(width)


@pytest.mark.parametrize(("minutes", "factor"), [(20.0, 1.0), (30.0, 1.0), (45.0, 1.175), (60.0, 1.35), (200.0, 1.35)])
def test_a_fire_whose_log_tells_of_no_deed_is_less_sure(minutes: float, factor: float) -> None:
    told, lead = usual_belief(), np.array([30.0])
    now = told.now + timedelta(minutes=minutes - told.minutes_since_lit)
    silent = replace(told, now=now, loads=0, air_logged=None, controls=Controls(lit=True))
    reached = HeatBand(name="low", low=350.0, high=380.0)
    usual = WIDTH_AFTER[CORRECTION_MINUTES.index(30.0)]
    for band in (reached, None):
        assert generic_width(silent, band, lead)[0] == pytest.approx(factor * usual)
    assert generic_width(silent, FAR, lead)[0] == pytest.approx(WIDTH_BEFORE[CORRECTION_MINUTES.index(30.0)])
    for known in ({"loads": 1}, {"air_logged": 0.5}, {"controls": Controls(lit=False)}):
        assert generic_width(replace(silent, **known), reached, lead)[0] == pytest.approx(usual)


# What is done


def test_a_wall_keeps_its_last_reading_and_drifts_to_the_room():
    # Its rise falls to 1/e in two hours.
    belief = usual_belief()
    wall = Spot(name="wall_left", label="", kind=SpotKind.WALL)
    spots = (STOVE.spots[0], wall)
    x = np.vstack([belief.ensemble.x[:FIELD], np.zeros((4, 640))])
    small = replace(
        belief, stove=replace(STOVE, spots=spots), ensemble=Ensemble(x, np.zeros((4, 4))),
        last_readings={"wall_left": LastReading(belief.now - timedelta(minutes=60), 334.0)},
    )  # fmt: skip
    room = tended(small, LEAVE, MINUTES, None)[:, heat.ROOM].mean(axis=1)
    found = project(small).of("wall_left").mean(axis=0) - room
    for step in (0, 12):
        kept = np.exp(-(60.0 + MINUTES[step]) / 120.0)
        assert found[step] == pytest.approx(kept * (334.0 - room[step]), abs=1.5)
    never = project(replace(small, last_readings={})).of("wall_left")
    assert never.mean(axis=0) == pytest.approx(room, abs=1.5)


def _oven_in(belief: Belief, minutes: float, action: Action = LEAVE, **how: bool) -> float:
    column = int(np.flatnonzero(minutes == MINUTES)[0])
    return float(np.median(project(belief, action, MODERATE, **how).of("oven_centre")[:, column]))


def test_a_fire_that_nobody_touches_cools_sooner_than_one_that_is_fed():
    assert _oven_in(usual_belief(), 180, unfed=True) < _oven_in(usual_belief(), 180) - 20.0


def _state(action: Action, belief: Belief | None = None, minutes: tuple[float, ...] = (0.0, 15.0)) -> np.ndarray:
    return tended(belief or usual_belief(), action, np.array(minutes), None)


@pytest.mark.parametrize(("value", "open_"), [(0.3, 0.3), (-1.0, 0.0), (2.0, 1.0)])
def test_air_and_bypass_are_set_at_once(value, open_):
    assert np.all(_state(Action(kind=ActionKind.AIR, value=value))[0, heat.INLET] == open_)
    assert np.all(_state(Action(kind=ActionKind.BYPASS, value=value))[:, heat.BYPASS] == open_)


def test_what_is_not_done_stays_as_it_was():
    now = usual_belief().ensemble.x
    for action, row in (
        (LEAVE, heat.INLET),
        (LEAVE, heat.BYPASS),
        (Action(kind=ActionKind.AIR, value=1.0), heat.BYPASS),
    ):
        assert np.array_equal(_state(action)[0, row], now[row])
    assert np.array_equal(_state(LEAVE)[0], now[: heat.STATE_ROWS])


def test_wood_put_on_a_stove_that_is_not_lit_burns():
    unlit = replace(usual_belief(), controls=Controls(lit=False))
    wood = Action(kind=ActionKind.WOOD, value=3.0)
    assert _oven_in(unlit, 60, wood) > _oven_in(unlit, 60) + 10.0


WOOD = Doing(action=Action(kind=ActionKind.WOOD, value=2.0))
DOINGS = (
    Doing(), Doing(unfed=True), WOOD, Doing(action=Action(kind=ActionKind.AIR, value=0.3)),
    Doing(action=Action(kind=ActionKind.BYPASS, value=0.0)),
)  # fmt: skip


@pytest.mark.parametrize("lit", [True, False])
@pytest.mark.parametrize("band", [MODERATE, None])
def test_what_is_run_on_together_comes_out_as_it_would_alone(band, lit):
    belief = replace(usual_belief(), controls=Controls(lit=lit))
    spots = belief.stove.spots
    together = project_each(belief, [(doing, spots[index:]) for index, doing in enumerate(DOINGS)], band)
    for index, (doing, found) in enumerate(zip(DOINGS, together, strict=True)):
        alone = project(belief, doing.action, band, unfed=doing.unfed, spots=spots[index:])
        assert found.spots == alone.spots
        assert np.array_equal(found.kelvin, alone.kelvin)


def test_steps_between_do_not_depend_on_what_is_asked_for():
    few, many = _state(LEAVE, minutes=(0.0, 60.0)), _state(LEAVE, minutes=(0.0, 5.0, 15.0, 30.0, 60.0))
    assert few[-1] == pytest.approx(many[-1])


def test_long_steps_beyond_an_hour_end_where_short_ones_do():
    far, near = _state(LEAVE, minutes=(0.0, 120.0)), _state(LEAVE, minutes=(0.0, *np.arange(2.5, 121.0, 2.5)))
    assert np.median(far[-1, heat.AIR]) == pytest.approx(np.median(near[-1, heat.AIR]), abs=6.0)


@pytest.mark.parametrize(
    ("opened_ago", "still_cooler"), [(1.0, (False, False)), (6.0, (True, False)), (60.0, (True, True))]
)
def test_a_door_that_stands_open_is_shut_after_as_long_again_within_reason(opened_ago, still_cooler):
    # At least 2.5 min and at most 15: so the oven's air is coolest at the end of that time and recovers thereafter.
    belief = usual_belief()
    opened = replace(
        belief, controls=Controls(lit=True, door_open=True), door_opened=belief.now - timedelta(minutes=opened_ago)
    )
    air = np.median(_state(LEAVE, opened, (0.0, 2.5, 5.0, 7.5, 10.0, 12.5, 15.0, 17.5))[:, heat.AIR], axis=1)
    assert air[1] < air[0] - 20.0
    assert tuple(bool(air[at] <= air[at - 1] + 1.0) for at in (3, 6)) == still_cooler
    assert air[7] > air[6] + 1.0


def test_a_spot_comes_out_the_same_alone_and_among_all():
    belief = usual_belief()
    whole = project(belief)
    for spot in belief.stove.spots:
        alone = project(belief, spots=[spot])
        assert alone.spots == (spot.name,)
        np.testing.assert_array_equal(alone.of(spot.name), whole.of(spot.name))
