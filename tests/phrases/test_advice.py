"""What is said of wood and of a heat that does not come can be read off the plot, and is no surer than the futures."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.advice import Subject, advise
from cookstove_gui.cooking.fit.fit import FitState
from cookstove_gui.forecast.answers import Ahead, Quantiles, TurnKind
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.heading import arrival_figure, detail, headline, rungs
from cookstove_gui.phrases.printed import outlook_lines
from cookstove_gui.situation import Standing
from tests.advice_cases import BREAD, rising, standing, turn

EDGE = Edge(unit="F", now=rising().now, offset_minutes=-300)  # 7:50


def off_the_line(oven_f: float, chance: float, touched_min: float | None) -> Standing:
    """A line that never enters the band, though a share of the futures touch it."""
    found = standing(oven_f)
    enters = Quantiles(p10=5.0 if chance > 0.1 else None, p50=touched_min, p90=None)
    band = replace(found.outlook.band, chance_reached_3h=chance, enters_min=enters)
    return replace(found, outlook=replace(found.outlook, band=band))


def test_wood_that_is_due_says_what_the_line_assumes() -> None:
    due = standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 5),))
    assert headline(due, EDGE) == (
        "Add wood by 7:51. Unless you do, the oven falls out of bread heat; the projection counts on it."
    )


def test_wood_to_come_says_that_the_line_assumes_it_and_wood_missed_does_not() -> None:
    to_come = standing(320.0, 0.5, turns=(turn(TurnKind.RELOAD_DUE, 30),))
    assert "Add wood by 8:16; the projection counts on it." in detail(to_come, EDGE)
    missed = standing(320.0, 0.5, turns=(turn(TurnKind.RELOAD_DUE, 0),))
    assert "add some now. " in f"{detail(missed, EDGE)} "


@pytest.mark.parametrize(("chance", "touched_min"), [(0.5, 120.0), (0.8, 19.0)])
def test_a_heat_that_most_futures_touch_is_not_called_unlikely(chance: float, touched_min: float) -> None:
    found = off_the_line(355.0, chance, touched_min)
    clock = EDGE.clock(touched_min)
    assert advise(found).subject is Subject.TOUCHES
    assert headline(found, EDGE) == f"With this fire the oven may touch bread heat about {clock}, but not for long."
    assert headline(found, EDGE) in outlook_lines(found.outlook, BREAD, EDGE)
    assert [rung for rung in rungs(found, EDGE) if "bread heat" not in rung] == [
        f"May touch it about {clock}, briefly."
    ]
    assert arrival_figure(found, EDGE) == f"may touch {clock}"


@pytest.mark.parametrize(("oven_f", "said"), [(355.0, "not likely to reach"), (440.0, "not likely to fall to it")])
def test_a_heat_that_few_futures_touch_is_not_likely(oven_f: float, said: str) -> None:
    found = off_the_line(oven_f, 0.49, None)
    assert said in headline(found, EDGE)
    assert headline(found, EDGE) in outlook_lines(found.outlook, BREAD, EDGE)
    assert arrival_figure(found, EDGE) == "not within 3 h"


def test_the_large_view_names_the_headings_window() -> None:
    found = standing(320.0, 0.5)  # 45 °F below the band, at half a kelvin a minute
    assert arrival_figure(found, EDGE) == "8:40–8:40"
    assert arrival_figure(standing(390.0), EDGE) == "now"
    band = replace(found.outlook.band, enters_min=Quantiles(p10=20.0, p50=60.0, p90=None))
    assert arrival_figure(replace(found, outlook=replace(found.outlook, band=band)), EDGE) == "from 8:10"


def window(*minutes: float) -> Standing:
    """An oven that likely reaches bread heat in the second of some minutes, between the first and the third."""
    found = standing(355.0, 0.5)
    enters = Quantiles(p10=minutes[0], p50=minutes[1], p90=minutes[2])
    band = replace(found.outlook.band, enters_min=enters, line_enters_min=minutes[1])
    return replace(found, outlook=replace(found.outlook, band=band))


def test_a_window_that_has_begun_says_only_its_end_even_where_the_outlook_is_older_than_the_clock() -> None:
    later = replace(EDGE, now=EDGE.now + timedelta(seconds=70))  # 7:51; what stands was worked out at 7:50
    found = window(0.0, 10.0, 30.0)
    for edge in (EDGE, later):
        assert headline(found, edge) == "Shape the loaves. The oven reaches bread heat by 8:20, likely 8:00."
        assert arrival_figure(found, edge) == "by 8:20"
        assert not any("7:50" in rung for rung in rungs(found, edge))
    assert headline(window(0.2, 0.3, 30.0), later) == "The oven is just coming to bread heat."
    assert "between 7:55 and 8:20" in headline(window(5.0, 10.0, 30.0), EDGE)


@pytest.mark.parametrize(("after_s", "said"), [(0, "Add wood now"), (30, "Add wood now"), (60, "Wood was due at 7:50")])
def test_wood_is_due_now_until_its_minute_has_gone(after_s: int, said: str) -> None:
    due = standing(320.0, 0.5, turns=(turn(TurnKind.RELOAD_DUE, 4),))
    at = EDGE.now + timedelta(seconds=after_s)
    assert said in detail(replace(due, now=at), replace(EDGE, now=at))


def test_after_the_fire_it_says_how_the_oven_goes_and_what_the_top_still_does() -> None:
    known = standing(390.0, turns=(turn(TurnKind.FIRE_OUT),))
    dead = replace(known, fits=())
    assert detail(dead, EDGE) == "Oven ≈390 °F."
    later = Ahead(minutes=15, p10=460.0, p50=462.0, p90=464.0, chance_in_band=0.0)  # some 9 K cooler
    out = replace(dead, outlook=replace(dead.outlook, ahead=(later,)))
    assert detail(out, EDGE) == "Oven ≈390 °F and falling."
    boil = next(fit for fit in known.fits if fit.task.key == "boil")
    spot = replace(boil.spots[0], in_min=0.0, until_min=40.0)
    boils = replace(boil, state=FitState.NOW, spots=(spot, *boil.spots[1:]))
    said = detail(replace(out, fits=(boils,)), EDGE)
    assert said == f"Oven ≈390 °F and falling; the top still boils until {EDGE.clock(40.0)}."
