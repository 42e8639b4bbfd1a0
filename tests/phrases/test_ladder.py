"""Every heading has ever shorter forms that say the same: the last fits the narrowest window; the times stay."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.advice import Advice, Deadline, Subject
from cookstove_gui.cooking.baking.catalogue import bakes
from cookstove_gui.cooking.baking.doneness import Doneness
from cookstove_gui.cooking.baking.in_oven import InOven
from cookstove_gui.cooking.baking.under_way import UnderWay
from cookstove_gui.cooking.fires.first_fires import FirstFires
from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.cooking.safety.food_safety import SafeMinimum
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.forecast.futures.arrival import Arrival
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.ladder import SHORTEST, ladder, plain_ladder, still_learning
from cookstove_gui.resource_files import table
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import HeatBand
from tests.advice_cases import asked, rising
from tests.cooking.made import STOVE
from tests.once import stood
from tests.rows import RISING

NOW = rising().now
EDGE = Edge(unit="F", now=NOW, offset_minutes=600)  # clocks of five figures


def after(minutes: float):
    return NOW + timedelta(minutes=minutes)


def soon(*, passed: bool = False) -> Deadline:
    return Deadline(at=after(4), passed=passed)


def danger(title: str, order: str) -> Advice:
    return Advice(subject=Subject.DANGER, caution=Caution(key="", title=title, text="", urgent=True, order=order))


ARRIVAL = Arrival(likely=after(13), earliest=after(8), latest=after(26))


def done(earliest: float | None, likely: float | None, latest: float | None, name: str = "wholemeal loaf in a tin"):
    """Something in the oven that is done in so many minutes."""
    bake = bakes()[0]
    answer = Doneness(
        bake=bake, done_at=370.0, core_now=None, done_min=Quantiles(p10=earliest, p50=likely, p90=latest),
        chance_done=0.9, safe=None, safe_min=None, recipe_min=None, late_min=None,
    )  # fmt: skip
    inside = InOven(number=1, name=name, bake=bake, went_in=after(-20))
    return UnderWay(inside=inside, asked_at=NOW, answer=answer, turn=None)


INSIDE = done(20, 33, 50)
SAFE = SafeMinimum(key="poultry", temperature=347.0, rest_minutes=0.0, source="invented")
MEAT = replace(INSIDE, answer=replace(INSIDE.answer, safe=SAFE)) if INSIDE.answer else INSIDE
ORDERS = [row for row in table("cautions.toml")["caution"] if "order" in row]
COMING = Advice(subject=Subject.COMING, arrival=ARRIVAL, prepares=True)
ADVICES = [
    *(danger(row["title"], row["order"]) for row in ORDERS),
    Advice(subject=Subject.LET_COOL),
    Advice(subject=Subject.FIRST_FIRE),
    Advice(subject=Subject.LOOK_AT, inside=INSIDE, by=soon()),
    Advice(subject=Subject.LOOK_AT, inside=INSIDE, by=soon(passed=True)),
    Advice(subject=Subject.TURN, inside=INSIDE, by=soon()),
    Advice(subject=Subject.TAKE_OUT, inside=INSIDE, by=soon()),
    Advice(subject=Subject.TAKE_OUT, inside=MEAT, by=soon()),
    Advice(subject=Subject.BAKING, inside=INSIDE),
    Advice(subject=Subject.BAKING, inside=replace(INSIDE, answer=None)),
    Advice(subject=Subject.BAKING, inside=done(5, None, None)),
    Advice(subject=Subject.BAKING, inside=done(5, 60, None)),
    Advice(subject=Subject.BAKING, inside=done(-30, -10, 9)),
    Advice(subject=Subject.NOTHING_READ),
    Advice(subject=Subject.FIRE_OUT),
    Advice(subject=Subject.DOOR_OPEN),
    Advice(subject=Subject.AIR_OPEN, by=soon()),
    Advice(subject=Subject.WOOD_DUE, by=soon()),
    Advice(subject=Subject.WOOD_DUE, by=soon(passed=True)),
    Advice(subject=Subject.PUT_IN, bake_min=50.0),
    Advice(subject=Subject.PUT_IN, bake_min=50.0, leaves=after(90)),
    Advice(subject=Subject.PUT_IN, leaves=after(2)),
    Advice(subject=Subject.TOO_SHORT, bake_min=50.0, leaves=after(20)),
    COMING,
    replace(COMING, arrival=replace(ARRIVAL, latest=None)),
    replace(COMING, arrival=replace(ARRIVAL, earliest=after(0))),
    replace(COMING, arrival=replace(ARRIVAL, latest=ARRIVAL.earliest)),
    replace(COMING, arrival=replace(ARRIVAL, likely=after(0))),
    Advice(subject=Subject.COOLING_IN, arrival=ARRIVAL),
    Advice(subject=Subject.TOUCHES, touches=after(13)),
    Advice(subject=Subject.TOUCHES, touches=after(0)),
    Advice(subject=Subject.NOT_COMING),
    Advice(subject=Subject.TOO_HOT),
]  # fmt: skip


def bands() -> list[HeatBand]:
    names = {band["name"] for kind in table("bands.toml")["table"] for band in kind["bands"]}
    names |= set(table("bands.toml")["baked"]) | {"425–475 °F", "the longest name a cook would give"}
    return [replace(rising().band, name=name) for name in sorted(names)]


def standing_for(advice: Advice, band: HeatBand) -> Standing:
    base = new_stove() if advice.subject is Subject.FIRST_FIRE else rising()
    return replace(base, band=band)


_NEW: list[Standing] = []


def new_stove() -> Standing:
    if not _NEW:
        _NEW.append(stood(asked(RISING, 50, replace(STOVE, is_new=True))))
    return _NEW[0]


def test_every_subject_is_tried() -> None:
    assert {advice.subject for advice in ADVICES} == set(Subject)
    assert isinstance(new_stove().first_fires, FirstFires)


@pytest.mark.parametrize("advice", ADVICES, ids=lambda advice: advice.subject.name)
def test_the_last_rung_fits_and_none_is_longer_than_the_one_before(advice: Advice) -> None:
    for band in bands():
        rungs = ladder(advice, standing_for(advice, band), EDGE)
        assert len(rungs[-1]) <= SHORTEST, rungs
        assert [len(rung) for rung in rungs] == sorted((len(rung) for rung in rungs), reverse=True)
        assert all(rung.endswith(".") and rung[0].isupper() | rung[0].isdigit() for rung in rungs), rungs


def test_the_window_and_the_likely_time_stay_to_the_last_rung() -> None:
    for rung in ladder(COMING, rising(), EDGE):
        assert all(
            EDGE.at(moment) in rung for moment in (ARRIVAL.earliest, ARRIVAL.likely, ARRIVAL.latest) if moment
        ), rung


def test_the_rungs_are_those_of_the_design() -> None:
    at = [EDGE.at(moment) for moment in (ARRIVAL.earliest, ARRIVAL.latest, ARRIVAL.likely) if moment]
    rungs = ladder(COMING, rising(), EDGE)
    assert "Shape the loaves. Bread heat between {} and {}, likely {}.".format(*at) in rungs
    assert "Shape the loaves. Bread heat {}–{}, likely {}.".format(*at) in rungs
    assert "Bread heat {}–{}, likely {}.".format(*at) in rungs


def test_a_danger_is_named_on_every_rung() -> None:
    for advice in ADVICES:
        if advice.caution is not None:
            found = ladder(advice, rising(), EDGE)
            assert all(rung.startswith(advice.caution.title) for rung in found)
            assert found[0] == f"{advice.caution.title}. {advice.caution.order}"


def test_food_that_must_be_measured_is_measured_on_every_rung() -> None:
    for rung in ladder(Advice(subject=Subject.TAKE_OUT, inside=MEAT, by=soon()), rising(), EDGE):
        assert "easure" in rung or "thermometer" in rung


def test_wood_names_its_clock_on_every_rung() -> None:
    for passed in (False, True):
        by = soon(passed=passed)
        assert all(EDGE.at(by.at) in rung for rung in ladder(Advice(subject=Subject.WOOD_DUE, by=by), rising(), EDGE))


def test_no_rung_of_a_first_fire_speaks_of_food_but_to_forbid_it() -> None:
    for rung in ladder(Advice(subject=Subject.FIRST_FIRE), new_stove(), EDGE):
        assert "bake" not in rung.lower()
        assert "food" not in rung or "No food yet" in rung


@pytest.mark.parametrize("key", ["no_readings", "session_over", "working_out"])
def test_plain_words_shorten_too(key: str) -> None:
    rungs = plain_ladder(str(table("phrases.toml")[key]), "Light the fire, then read as you go.")
    assert rungs[0] == table("phrases.toml")[key]
    assert len(rungs[-1]) <= SHORTEST


@pytest.mark.parametrize(
    ("firings", "said"),
    [
        (0, "Still learning this stove."),
        (1, "Still learning this stove, 1 session."),
        (2, "Still learning this stove, 2 sessions."),
        (3, ""),
    ],
)
def test_a_stove_of_few_sessions_is_said_to_be_learned_still(firings: int, said: str) -> None:
    standing = rising()
    character = replace(standing.belief.character, firings=firings)
    assert still_learning(replace(standing, belief=replace(standing.belief, character=character))) == said


def test_nothing_is_said_of_learning_before_a_reading_or_while_first_fires_run() -> None:
    assert still_learning(replace(rising(), rows=())) == ""
    assert still_learning(new_stove()) == ""
