"""A probe in the core narrows the window towards the truth; one that shows what no core can is not believed."""

from datetime import timedelta

import numpy as np
import pytest

from cookstove_gui.cooking.baking.bodies import _bodies, step_of, warmed
from cookstove_gui.cooking.baking.catalogue import BOILING_AT_SEA_LEVEL, bake_of
from cookstove_gui.cooking.baking.doneness import doneness, minutes_to_done
from cookstove_gui.cooking.baking.doubts import Doubt, Ensemble
from cookstove_gui.cooking.baking.probing import Probe
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from tests.cooking.baking.test_doneness import likely, oven_at, trace, window
from tests.cooking.made import START, fahrenheit

LOAF, BEEF = bake_of("bread_loaf"), bake_of("beef_roast")


def truth(bake, oven: float, **moved: float):  # type: ignore[no-untyped-def]
    """Core [K] by minute in a steady oven [°F], and minutes until done, of one whose doubts are so many sd off."""
    rows = np.zeros((1, len(Doubt)))
    for name, value in moved.items():
        rows[0, Doubt[name]] = value
    ensemble, step = Ensemble(rows=rows), step_of(bake)
    warming = warmed(bake, ensemble, np.full(int(5 * 3600 / step), fahrenheit(oven)), step)
    taken = float(minutes_to_done(bake, ensemble, warming, BOILING_AT_SEA_LEVEL)[0])
    return lambda minute: float(np.interp(60.0 * minute, warming.time, warming.core[:, 0])), taken


@pytest.mark.parametrize("off", [-1.5, 1.5])
@pytest.mark.parametrize(("bake", "oven", "minute"), [(LOAF, 395.0, 20.0), (BEEF, 335.0, 70.0)])
def test_a_probe_moves_the_time_towards_the_truth_and_narrows_it(bake, oven, minute, off) -> None:  # type: ignore[no-untyped-def]
    core, taken = truth(bake, oven, CONDUCTION=off, HEAT=off)
    in_at = START - timedelta(minutes=minute)
    before = doneness(bake, oven_at(oven), went_in=in_at, past=trace(oven, oven, minutes=minute))
    after = doneness(
        bake,
        oven_at(oven),
        went_in=in_at,
        past=trace(oven, oven, minutes=minute),
        probes=(Probe(at=START, core=core(minute)),),
    )
    left = taken - minute
    assert abs(likely(after) - left) < 0.85 * abs(likely(before) - left)
    assert window(after) / (likely(after) + minute) < 0.95 * window(before) / (likely(before) + minute)
    assert after.core_now is not None
    assert after.core_now.p50 == pytest.approx(core(minute), abs=3.5)


def test_a_second_probe_narrows_further() -> None:
    core, _ = truth(BEEF, 335.0, CONDUCTION=1.0)
    probes = tuple(Probe(at=START - timedelta(minutes=90 - at), core=core(at)) for at in (40.0, 65.0, 90.0))
    asked = {"went_in": START - timedelta(minutes=90), "past": trace(335, 335, minutes=90)}
    one = doneness(BEEF, oven_at(335), probes=probes[:1], **asked)  # type: ignore[arg-type]
    all_three = doneness(BEEF, oven_at(335), probes=probes, **asked)  # type: ignore[arg-type]
    assert window(all_three) < window(one)


@pytest.mark.parametrize(("shown", "way"), [(300.0, 1), (30.0, -1)])
def test_a_probe_that_shows_what_no_core_can_is_questioned_and_not_believed(shown: float, way: int) -> None:
    asked = {"went_in": START - timedelta(minutes=70), "past": trace(335, 335, minutes=70)}
    without = doneness(BEEF, oven_at(335), **asked)  # type: ignore[arg-type]
    found = doneness(BEEF, oven_at(335), probes=(Probe(at=START, core=fahrenheit(shown)),), **asked)  # type: ignore[arg-type]
    assert found.probe_is_off == way
    assert found.done_min == without.done_min
    assert without.probe_is_off == 0


def test_what_a_reading_is_said_to_do_is_about_what_it_does() -> None:
    """Over members taken for the truth in turn, read when it was said, the windows are as long as was said."""
    asked = {"went_in": START - timedelta(minutes=25), "past": trace(395, 395, minutes=25)}
    said = doneness(LOAF, oven_at(395), **asked).probe_gains[0]  # type: ignore[arg-type]
    assert said.in_min == pytest.approx(0.0)
    came = []
    for off in (-1.2, -0.4, 0.4, 1.2):
        core, _ = truth(LOAF, 395.0, CONDUCTION=off)
        came.append(window(doneness(LOAF, oven_at(395), probes=(Probe(at=START, core=core(25.0)),), **asked)))  # type: ignore[arg-type]
    assert said.window_min == pytest.approx(float(np.mean(came)), rel=0.4)


def test_a_later_reading_tells_more() -> None:
    found = doneness(LOAF, oven_at(395)).probe_gains
    assert [round(one.in_min) for one in found] == [10, 20]
    assert found[1].window_min < found[0].window_min


def test_a_loaf_that_rose_more_is_lighter_for_its_size_and_wider_at_the_same_weight() -> None:
    """At one weight: volume goes with 1 over what is not gas, each side with its cube root, and the mass stays."""
    rows = np.zeros((2, len(Doubt)))
    rows[:, Doubt.GAS] = (-2.0, 2.0)  # rose more, rose less
    body, _ = _bodies(LOAF, Ensemble(rows=rows), STANDARD_PRESSURE)
    assert body.half_thickness[0] > body.half_thickness[1]
    assert body.heat_capacity * body.half_thickness**3 == pytest.approx(
        np.full(2, body.heat_capacity[0] * body.half_thickness[0] ** 3)
    )
    dense, _ = _bodies(BEEF, Ensemble(rows=rows), STANDARD_PRESSURE)
    assert dense.half_thickness[0] == dense.half_thickness[1]
