"""What a pan's time hangs on: the cooktop that it cools, steam, contact and amount; and when it is dry."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.cooking.fit.tasks import task_of
from cookstove_gui.cooking.pans.boiling_time import Goal, simmer_hold, simmer_range, water_time
from cookstove_gui.cooking.pans.catalogue import Contact, PanOfWater, pans
from cookstove_gui.cooking.pans.doubts import WaterSource, pan_draws, usual_doubts
from cookstove_gui.units import degrees
from tests.cooking.made import projection
from tests.cooking.pans.sure import NO_DOUBTS

POT = {one.key: one for one in pans()}["stock pot"]
SURE = Contact(median=150.0, log_sd=1e-9)
CANNER = replace(POT, diameter=0.34, mass=3.0, lid=True)


def steady(heat: float, futures: int = 1):  # type: ignore[no-untyped-def]
    return projection({"top": [heat] * 37}, futures=futures)


def test_draws_are_the_belief_and_unrelated_to_the_order_of_the_futures() -> None:
    draws = pan_draws(Contact(median=100.0, log_sd=0.5), usual_doubts(), 400)
    assert np.median(draws.contact) == pytest.approx(100.0, rel=0.02)
    assert np.std(np.log(draws.contact)) == pytest.approx(0.5, rel=0.02)
    assert abs(np.corrcoef(np.arange(400), draws.contact)[0, 1]) < 0.05
    assert abs(np.corrcoef(draws.contact, draws.amount)[0, 1]) < 0.1


def test_a_large_pan_cools_the_top_that_feeds_it_more_than_a_small_one() -> None:
    only_top = replace(NO_DOUBTS, cooktop=usual_doubts().cooktop)

    def slower(pan, litres: float) -> float:  # type: ignore[no-untyped-def]
        endless, finite = (
            water_time(steady(480), "top", PanOfWater(pan, litres), contact=SURE, doubts=doubts).minutes.p50
            for doubts in (NO_DOUBTS, only_top)
        )
        assert endless is not None
        assert finite is not None
        return finite / endless

    assert 1.02 < slower(replace(POT, lid=True), 2.0) < 1.3
    assert slower(CANNER, 15.0) > 1.25


def test_an_open_pan_boils_dry_and_says_when() -> None:
    """All heat but what the dry pan loses makes steam: the boil-away time of reference 2.12 over the net heat."""
    water = PanOfWater(POT, 1.0)
    found = water_time(steady(560), "top", water, contact=SURE, doubts=NO_DOUBTS)
    assert found.minutes.p50 is not None
    assert found.dry_min is not None
    assert found.dry_min.p50 is not None
    at_boil = SURE.median * POT.base_area * ((560 - 32) / 1.8 + 273.15 - water.boiling)
    boiling_away = 0.97 * 0.999 * 2256.47e3 / (0.9 * at_boil) / 60.0
    assert found.dry_min.p50 - found.minutes.p50 == pytest.approx(boiling_away, rel=0.2)
    lidded = water_time(steady(300), "top", PanOfWater(replace(POT, lid=True), 3.0)).dry_min
    assert lidded is not None
    assert lidded.p50 is None


def test_the_window_hangs_most_on_a_contact_never_seen_and_least_on_one_well_known() -> None:
    top, water = steady(480, 200), PanOfWater(replace(POT, lid=True), 2.0)
    vague, known = (
        water_time(top, "top", water, contact=Contact(median=150.0, log_sd=log_sd)) for log_sd in (0.5, 0.03)
    )
    assert vague.hangs_on[0].source is WaterSource.CONTACT
    assert known.hangs_on[0].source is not WaterSource.CONTACT
    alone = [one.window_min for one in known.hangs_on]
    assert alone == sorted(alone, reverse=True)
    assert known.minutes.p90 - known.minutes.p10 < vague.minutes.p90 - vague.minutes.p10  # type: ignore[operator]


def test_a_well_known_pan_still_leaves_the_cooks_jug_and_the_cooktop_unsure() -> None:
    found = water_time(steady(480, 200), "top", PanOfWater(replace(POT, lid=True), 2.0), contact=SURE).minutes
    assert found.p10 is not None
    assert found.p90 is not None
    assert 0.08 < (found.p90 - found.p10) / (found.p50 or 1.0) < 0.5


@pytest.mark.parametrize(("task", "lid"), [("simmer", True), ("simmer_open", False)])
def test_the_simmer_tasks_bands_are_those_of_the_pan(task: str, lid: bool) -> None:
    """Three litres at the usual contact; to ten degrees, a cook's step, wider where pans differ."""
    low, high = (degrees(heat, "F") for heat in simmer_range(PanOfWater(replace(POT, lid=lid), 3.0)))
    found = task_of(task)
    assert found is not None
    assert degrees(found.low, "F") == pytest.approx(low, abs=15)
    assert degrees(found.high, "F") == pytest.approx(high, abs=25)
    middle = steady(0.5 * (degrees(found.low, "F") + degrees(found.high, "F")), 50)
    assert simmer_hold(middle, "top", PanOfWater(replace(POT, lid=lid), 3.0), 30.0, doubts=NO_DOUBTS).chance > 0.3


def test_a_simmer_is_reached_before_the_boil() -> None:
    water = PanOfWater(POT, 2.0)
    simmer, boil = (water_time(steady(560), "top", water, goal).minutes.p50 for goal in (Goal.SIMMER, Goal.BOIL))
    assert simmer is not None
    assert boil is not None
    assert simmer < boil


def test_what_timed_pans_have_taught_is_no_more_in_doubt_of_cooktop_or_steam() -> None:
    taught = Contact(median=100.0, log_sd=0.2, unlearned=0.25)
    usual, known = (pan_draws(one, usual_doubts(), 64) for one in (replace(taught, unlearned=1.0), taught))
    for part in (lambda draws: draws.cooktop.conductance, lambda draws: draws.evaporation):
        assert np.std(np.log(part(known))) == pytest.approx(0.25 * np.std(np.log(part(usual))), rel=1e-6)
    assert np.std(np.log(known.amount)) == pytest.approx(np.std(np.log(usual.amount)))
