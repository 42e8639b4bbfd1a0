"""Water in words: a clock only for what is likely to come, and what the answer was learned from."""

import pytest
from hypothesis import given

from cookstove_gui.cooking.pans.boiling_time import Goal, SimmerHold, WaterTime
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.water import (
    boiling_words,
    preheat_words,
    runs_words,
    simmer_words,
    water_headline,
    water_when,
)
from tests.phrases.facts import EDGE, HORIZON, ahead, edges, is_plain, of, quantiles


def answer(minutes: Quantiles, goal: Goal = Goal.BOIL, chance: float = 0.3) -> WaterTime:
    return WaterTime(goal=goal, temperature=373.15, minutes=minutes, chance_reached=chance)


def simmer(chance: float, boils: float, falls: float) -> SimmerHold:
    return SimmerHold(chance=chance, chance_boils=boils, chance_falls=falls, litres_lost=of(0, 0, 0))


def test_water_that_boils() -> None:
    assert water_headline("top back left", answer(of(15, 22, 40)), EDGE) == (
        "On top back left it boils about 8:25, in 20 min; between 8:18 and 8:43."
    )


def test_water_that_is_not_likely_to_boil_is_not_given_a_clock() -> None:
    line = water_headline("top back left", answer(of(100, None, None)), EDGE)
    assert "not likely" in line
    assert ahead(line, EDGE) == []


@given(quantiles(), edges())
def test_clocks_lie_ahead(minutes: Quantiles, edge: Edge) -> None:
    told = f"{water_headline('here', answer(minutes), edge)} {water_when(answer(minutes), edge)}"
    assert is_plain(told)
    assert all(found <= HORIZON + 1 for found in ahead(told, edge))
    assert (minutes.p50 is None) is (ahead(water_when(answer(minutes), edge), edge) == [])


def test_a_spot_where_it_hardly_boils() -> None:
    assert water_when(answer(of(100, None, None), chance=0.3), EDGE) == "hardly"
    assert water_when(answer(of(None, None, None), chance=0.05), EDGE) == "no"


@pytest.mark.parametrize(
    ("found", "said"),
    [
        (simmer(0.9, 0.1, 0.0), "holds"),
        (simmer(0.6, 0.2, 0.2), "likely holds"),
        (simmer(0.2, 0.6, 0.2), "boils over it"),
        (simmer(0.2, 0.2, 0.6), "falls off"),
    ],
)
def test_a_simmer(found: SimmerHold, said: str) -> None:
    assert simmer_words(found) == said


def test_where_water_boils_in_the_unit_on_the_screen() -> None:
    assert boiling_words(373.15, EDGE) == "Water boils at 212 °F at this height above the sea."


@pytest.mark.parametrize(("runs", "said"), [(0, "usual guess"), (1, "1 pan of water"), (4, "4 pans of water")])
def test_what_the_pan_was_learned_from(runs: int, said: str) -> None:
    assert said in runs_words(runs)


def test_preheating() -> None:
    assert preheat_words(12.2) == "Empty, the pan needs about 12 min to come up to its spot."
