"""Water in words: a clock only for what is likely to come, and what the answer was learned from."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.cooking.pans.boiling_time import Goal, SimmerHold, WaterTime
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.water import (
    draw_words,
    minutes_said,
    reason_rungs,
    run_words,
    runs_words,
    spot_captions,
    spot_minutes,
    water_rungs,
)
from tests.phrases.facts import EDGE, HORIZON, ahead, edges, is_plain, of, quantiles


def answer(minutes: Quantiles, goal: Goal = Goal.BOIL, chance: float = 0.3) -> WaterTime:
    return WaterTime(goal=goal, temperature=373.15, minutes=minutes, chance_reached=chance)


def simmer(chance: float, boils: float, falls: float) -> SimmerHold:
    return SimmerHold(chance=chance, chance_boils=boils, chance_falls=falls, litres_lost=of(0, 0, 0))


def rungs(
    minutes: Quantiles, goal: Goal = Goal.BOIL, label: str = "top back left", *, is_soonest: bool = True
) -> tuple[str, ...]:
    return water_rungs(label, answer(minutes, goal), EDGE, is_soonest=is_soonest)


def test_water_that_boils_and_never_without_its_window() -> None:
    assert rungs(of(15, 22, 40)) == (
        "On the back left it boils about 8:25, between 8:18 and 8:43.",
        "Boils about 8:25, between 8:18 and 8:43.",
        "Boils about 8:25, 8:18 to 8:43.",
    )


def test_a_spot_of_the_cooks_own_keeps_its_name() -> None:
    assert rungs(of(15, 22, 40), label="canning lid")[0].startswith("On canning lid it boils")


def test_a_window_without_an_end_is_said_to_have_none() -> None:
    assert rungs(of(15, 22, None))[0].endswith("about 8:25, not before 8:18 and perhaps not at all.")


@pytest.mark.parametrize("goal", list(Goal))
def test_water_that_is_not_likely_to_get_there_is_not_given_a_clock(goal: Goal) -> None:
    for soonest in (True, False):
        for line in rungs(of(100, None, None), goal, is_soonest=soonest):
            assert "likely" in line
            assert ahead(line, EDGE) == []
    assert rungs(of(None, None, None))[0].startswith("No spot is hot enough")
    assert not rungs(of(None, None, None), is_soonest=False)[0].startswith("No spot")


@given(quantiles(), edges(), st.sampled_from(list(Goal)))
def test_clocks_lie_ahead_and_each_way_to_say_it_is_shorter(minutes: Quantiles, edge: Edge, goal: Goal) -> None:
    told = water_rungs("top back left", answer(minutes, goal), edge, is_soonest=True)
    assert all(is_plain(line) for line in told)
    assert all(found <= HORIZON + 1 for line in told for found in ahead(line, edge))
    assert [len(line) for line in told] == sorted((len(line) for line in told), reverse=True)


@pytest.mark.parametrize(
    ("minutes", "chance", "holds", "said"),
    [
        (of(7, 9, 12), 0.9, 0.0, (("9", "min"), ("8:10 to 8:15", "8:10–8:15"))),
        (of(55, 78, None), 0.7, 0.0, (("1 h 20", ""), ("from 8:58",))),
        (of(100, None, None), 0.3, 0.2, (("hardly", ""), ())),
        (of(None, None, None), 0.05, 0.6, (("no boil", ""), ("simmers only",))),
    ],
)
def test_what_stands_on_a_spot(
    minutes: Quantiles, chance: float, holds: float, said: tuple[tuple[str, str], tuple[str, ...]]
) -> None:
    found = answer(minutes, chance=chance)
    assert (spot_minutes(found), spot_captions(found, simmer(holds, 0.0, 1.0 - holds), EDGE)) == said


def test_where_water_boils_and_where_a_simmer_then_holds() -> None:
    simmers = [("top front left", simmer(0.1, 0.9, 0.0)), ("top front right", simmer(0.8, 0.1, 0.1))]
    told = reason_rungs(answer(of(7, 9, 12)), simmers, 6.0, EDGE)
    assert told == (
        "Water boils at 212 °F here. After that a simmer holds on the front right, 8 in 10. Empty, it needs 6 min to "
        "heat up.",
        "Water boils at 212 °F here. After that a simmer holds on the front right, 8 in 10.",
        "Water boils at 212 °F here.",
    )
    assert "No spot likely keeps it" in reason_rungs(answer(of(7, 9, 12)), simmers[:1], None, EDGE)[0]


@pytest.mark.parametrize(
    ("minutes", "said"),
    [(of(7, 9, 12), "9 min, 7 to 12"), (of(7, 9, None), "9 min, from 7"), (of(None, None, None), "not likely")],
)
def test_the_minutes_of_a_pan_read_out(minutes: Quantiles, said: str) -> None:
    assert minutes_said(minutes).startswith(said)


def test_a_pan_of_the_log_read_out() -> None:
    assert run_words(date(2026, 1, 5), of(7, 9, 12), 17.2) == "5 Jan: 7 to 12 min said, 17 came"


@pytest.mark.parametrize(("runs", "said"), [(0, "usual guess"), (1, "1 pan of water"), (4, "4 pans of water")])
def test_what_the_pan_was_learned_from(runs: int, said: str) -> None:
    assert said in runs_words(runs)


def test_a_pan_that_may_boil_dry_is_told_from_when() -> None:
    simmers = [("front left", simmer(0.8, 0.1, 0.1))]
    dry = replace(answer(of(7, 9, 12)), dry_min=of(70, 90, 110))
    assert f"It may boil dry from {EDGE.clock(70)}." in reason_rungs(dry, simmers, None, EDGE)[0]
    late = replace(answer(of(7, 9, 12)), dry_min=of(None, None, None))
    assert "dry" not in reason_rungs(late, simmers, None, EDGE)[0]


@pytest.mark.parametrize(
    ("others", "cost", "said"),
    [
        (0, 0.3, ""),
        (1, 0.3, "Your other pot takes heat too."),
        (3, 4.0, "Your 3 other pots take heat too. This pan takes up to 7 °F from the oven."),
    ],
)
def test_what_else_draws_on_the_cooktop(others: int, cost: float, said: str) -> None:
    assert draw_words(others, cost, Edge(unit="F", now=EDGE.now, offset_minutes=0)) == said
