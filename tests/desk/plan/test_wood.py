"""Wood for a bake: what the warm-up is taken from, and how much that makes."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.cooking.fires.burn_times import summary
from cookstove_gui.cooking.fires.wood_needs import Load, burning_rate, load_burn, usual_moisture, wood_of
from cookstove_gui.desk.plan.wood import (
    WoodChoice,
    WoodInputs,
    air_now,
    moisture_options,
    plan_wood,
    wood_examples,
    wood_options,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.forecast.model.heat import USUAL_INLET
from cookstove_gui.stove.entries import HeatBand
from tests.cooking.made import START, STOVE, fahrenheit, log, session

BREAD = HeatBand(name="bread", low=fahrenheit(365), high=fahrenheit(425))
CHOICE = WoodChoice(wood="dense hardwood", moisture="seasoned", split=1.5, thickness=0.08, at_heat_min=60.0, air=0.5)


def planned(standing=None, sessions=(), entries=(), stove=STOVE, band=BREAD, **changes):  # type: ignore[no-untyped-def]
    choice = replace(CHOICE, **changes)
    return plan_wood(
        WoodInputs(
            stove=stove, band=band, standing=standing, entries=entries, choice=choice, past=lambda _name: sessions
        )
    )


def standing_at(standing, oven: float, enters_min: float | None):  # type: ignore[no-untyped-def]
    """The standing with the oven at some heat [°F] and its band, bread, to be reached in some minutes."""
    outlook = standing.outlook
    enters = Quantiles(p10=None, p50=enters_min, p90=None)
    oven_now = Quantiles(p10=fahrenheit(oven - 10), p50=fahrenheit(oven), p90=fahrenheit(oven + 10))
    changed = replace(outlook, oven=oven_now, band=replace(outlook.band, enters_min=enters))
    return replace(standing, band=BREAD, outlook=changed)


def rises(*minutes: float):  # type: ignore[no-untyped-def]
    """Firings whose oven takes so long from 75 °F to the low end of bread heat."""
    return tuple(
        session(
            number,
            log(
                (0, "lit", "", "", ""),
                (0, "reading", "oven_centre", "75", "F"),
                (rise, "reading", "oven_centre", "365", "F"),
                start=START - timedelta(days=number),
            ),
        )
        for number, rise in enumerate(minutes, start=1)
    )


def test_a_cold_stove_without_a_past_takes_the_usual_time_and_rate() -> None:
    # common practice, no source: 75 min to baking heat, 2 kg an hour; (75 + 60) min make 4.5 kg or 3 splits of 1.5 kg
    found = planned()
    assert (found.warm_up_min, found.warm_up_from) == (75.0, "common practice")
    assert found.mass.p50 == pytest.approx(4.5)
    assert found.splits.p50 == pytest.approx(3.0)
    assert found.splits.p90 == pytest.approx((found.mass.p90 or 0) / 1.5)


def test_a_cold_stove_with_a_past_takes_its_own_middle_time() -> None:
    found = planned(sessions=rises(50, 90, 60))
    assert found.warm_up_from == "past"
    assert found.warm_up_min == pytest.approx(60.0)


def test_a_burning_stove_takes_what_the_outlook_says(stands) -> None:  # type: ignore[no-untyped-def]
    _, standing = stands
    found = planned(standing_at(standing, 300, 22.0), sessions=rises(60))
    assert (found.warm_up_min, found.warm_up_from) == (22.0, "outlook")


def test_an_oven_at_the_heat_needs_no_warm_up(stands) -> None:  # type: ignore[no-untyped-def]
    _, standing = stands
    for oven in (365.1, 500.0):
        found = planned(standing_at(standing, oven, None))
        assert (found.warm_up_min, found.warm_up_from) == (0.0, "outlook")
        assert found.mass.p50 == pytest.approx(2.0)


def test_an_outlook_that_does_not_get_there_or_is_about_another_band_says_nothing(stands) -> None:  # type: ignore[no-untyped-def]
    _, standing = stands
    assert planned(standing_at(standing, 300, None)).warm_up_from == "common practice"
    pie = HeatBand(name="pie", low=fahrenheit(385), high=fahrenheit(450))
    assert planned(standing_at(standing, 300, 22.0), band=pie).warm_up_from == "common practice"


def test_the_air_is_as_the_log_says_last_or_as_chosen() -> None:
    rows = log((0, "air", "", "1", ""), (9, "air", "", "0.25", ""), (12, "wood", "", "2", "kg"))
    assert air_now(rows) == 0.25
    assert air_now(()) == USUAL_INLET
    assert planned(entries=rows, air=None).air == 0.25
    assert planned(entries=rows, air=1.0).air == 1.0


def test_the_load_is_two_splits() -> None:
    light, heavy = planned(split=1.0).load, planned(split=2.0).load
    assert heavy.to_coals_min == light.to_coals_min  # it is the thickness that tells how long they burn
    assert heavy.heat.watts.p50 == pytest.approx(2 * (light.heat.watts.p50 or 0))


@pytest.mark.parametrize(("minutes", "possible"), [(0.0, True), (720.0, True), (721.0, False), (-1.0, False)])
def test_a_bake_takes_half_a_day_at_most(minutes: float, possible: bool) -> None:
    if possible:
        assert planned(at_heat_min=minutes).mass.p50 == pytest.approx((75 + minutes) / 30)
    else:
        with pytest.raises(InputProblem, match="type how many minutes"):
            planned(at_heat_min=minutes)


def test_only_this_stoves_firings_are_asked_for() -> None:
    asked: list[str] = []
    inputs = WoodInputs(
        stove=STOVE, band=BREAD, standing=None, entries=(), choice=CHOICE, past=lambda name: asked.append(name) or ()
    )
    plan_wood(inputs)
    assert set(asked) == {STOVE.name}


def test_what_is_measured_on_this_stove_stands_beside_the_table() -> None:
    cold = planned()
    assert cold.rate == burning_rate(STOVE, ())
    assert cold.measured == summary(())
    load = Load(wood=wood_of("dense hardwood"), mass=3.0, thickness=0.08, moisture=usual_moisture("seasoned"))
    assert cold.load == load_burn(load, 0.5)


def test_wood_is_chosen_by_its_class_and_by_how_dry_it_is() -> None:
    for key, words in moisture_options():
        assert words.startswith(f"{key} (")
        assert words.endswith(" %)")
        assert usual_moisture(key) is not None
    for key, words in wood_options():
        assert key == words == wood_of(key).name
        examples = wood_examples(key)
        assert examples[0].isupper()
        assert examples.endswith(", and the like.")
