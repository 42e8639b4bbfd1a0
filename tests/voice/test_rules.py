"""Each rule passes what is true and catches what is not; the sentences here are made up for it."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import timedelta
from functools import cache

import numpy as np
import pytest

from cookstove_gui.cooking.fires.first_fires import FirstFires, StageProgress, stages
from cookstove_gui.cooking.fires.steps import Alternative
from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.cooking.fit.fit import FitState, ranked
from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.forecast.answers import LEAVE, NextReading
from cookstove_gui.one_road import work_out
from cookstove_gui.phrases.my_stove.first_fires import next_fire_words
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.stove import stove_with_default_spots
from cookstove_gui.units import kelvin
from tests.rows import START, rows_of
from tests.voice import rules
from tests.voice.drawn_line import entering, leaving
from tests.voice.moment import Moment, moment_of
from tests.voice.replay import Pair, Step
from tests.voice.said import Said

TOLD = rows_of(
    (0, Kind.LIT, "", "", ""),
    (2, Kind.WOOD, "", "6", "lb"),
    (22, Kind.READING, "oven_centre", "190", "F"),
    (23, Kind.READING, "top_back_right", "430", "F"),
    (36, Kind.WOOD, "", "5", "lb"),
    (45, Kind.READING, "oven_centre", "300", "F"),
    (46, Kind.READING, "top_back_right", "480", "F"),
    offset_minutes=0,
)


@cache
def rising() -> Moment:
    """46 minutes of a fire that is on its way to bread heat; the local clock is UTC's."""
    asked = Inputs(
        stove=stove_with_default_spots("Invented"),
        rows=TOLD,
        now=START + timedelta(minutes=46),
        band=band_from_text("bread", "F"),
    )
    return moment_of("made", asked, work_out(asked))


def saying(*said: tuple[str, str], **changes: object) -> Moment:
    """The moment with nothing said but this, its standing changed."""
    moment = rising()
    told = tuple(Said(place=place, text=text) for place, text in said)
    return replace(moment, said=told, standing=replace(moment.standing, **changes))  # type: ignore[arg-type]


def broken(look: Callable[[Moment], Iterator[str]], *said: tuple[str, str], **changes: object) -> bool:
    """Whether a rule finds something."""
    return bool(list(look(saying(*said, **changes))))


def pair_of(before: Moment, after: Moment, minutes: float = 1.0) -> Pair:
    """Two moments some minutes apart."""
    at = after.now + timedelta(minutes=minutes)
    later = replace(after, now=at, edge=replace(after.edge, now=at), standing=replace(after.standing, now=at))
    return Pair(before=before, after=later, step=Step.TIME)


def test_a_line_enters_and_leaves_where_it_crosses() -> None:
    minutes, line = np.array([0.0, 10.0, 20.0, 30.0]), np.array([300.0, 320.0, 320.0, 300.0])
    assert entering(minutes, line, 310.0, 330.0) == pytest.approx(5.0)
    assert entering(minutes, 640.0 - line, 310.0, 330.0) == pytest.approx(5.0)  # from above
    assert entering(minutes, line, 295.0, 305.0) == 0.0
    assert entering(minutes, line, 330.0, 340.0) is None
    assert leaving(minutes, line, 295.0, 310.0) == pytest.approx(5.0)
    assert leaving(minutes, line, 310.0, 330.0) == 0.0
    assert leaving(minutes, line, 290.0, 330.0) is None


def test_likely_is_held_to_the_drawn_line() -> None:
    moment = rising()
    minutes, line = moment.line
    enters = entering(minutes, line, moment.standing.band.low, moment.standing.band.high)
    assert enters is not None
    true, false = moment.edge.clock(enters), moment.edge.clock(enters + 12)
    assert not broken(rules.likely_is_the_line, ("headline", f"The oven reaches bread heat, likely {true}."))
    assert broken(rules.likely_is_the_line, ("headline", f"The oven reaches bread heat, likely {false}."))
    hot = band_from_text("600-650", "F")
    assert broken(rules.likely_is_the_line, ("plot", f"likely {true}"), band=hot)


def test_a_step_is_held_to_its_own_line() -> None:
    moment = rising()
    projection = moment.standing.projection
    minutes = projection.minutes[None, :, None]
    slow = replace(projection, kelvin=np.full_like(projection.kelvin, 400.0) + minutes)  # K, one a minute
    step = Alternative(action=LEAVE, outlook=moment.standing.outlook, projection=slow)
    enters = moment.standing.band.low - 400.0
    true, false = (f"Add two splits: reaches bread heat about {moment.edge.clock(at)}." for at in (enters, enters - 20))
    assert not broken(rules.likely_is_the_line, ("detail", true), best_step=step)
    assert broken(rules.likely_is_the_line, ("detail", false), best_step=step)


def test_a_stay_is_held_to_the_drawn_line() -> None:
    wide = band_from_text("250-350", "F")
    moment = rising()
    leaves = leaving(*moment.line, wide.low, wide.high)
    assert leaves is not None
    true, false = moment.edge.clock(leaves), moment.edge.clock(leaves + 15)
    assert not broken(rules.stay_is_the_line, ("headline", f"It likely stays until {true}."), band=wide)
    assert broken(rules.stay_is_the_line, ("headline", f"It likely stays until {false}."), band=wide)


@pytest.mark.parametrize(
    ("look", "false", "true"),
    [
        (
            rules.unlikely_is_plain,
            "The oven is not likely to reach bread heat within three hours. It might by 14:09.",
            "The oven is not likely to reach bread heat within three hours.",
        ),
        (rules.deadline_is_ahead, "Add wood by 12:46.", "Add wood by 12:47."),
        (rules.deadline_is_ahead, "Add wood by 12:40.", "The oven reaches bread heat by 12:40."),
        (rules.clocks_are_ahead, "Shape the loaves, not before 12:45.", "The loaf should have gone in at 12:45."),
        (rules.numbers_are_known, "The oven is at about 913 °F.", "The oven was read at 300 °F."),
        (rules.numbers_are_known, "Done in 11 h.", "Bread takes 50 min."),
    ],
)
def test_a_sentence_is_caught(look: Callable[[Moment], Iterator[str]], false: str, true: str) -> None:
    assert broken(look, ("headline", false))
    assert not broken(look, ("headline", true))


def test_places_that_disagree_about_the_band_are_caught() -> None:
    on_its_way = ("headline", "The oven reaches bread heat between 13:00 and 13:10, likely 13:05.")
    assert broken(rules.one_band_state, on_its_way, ("large", "bread now"), fits=())
    assert not broken(rules.one_band_state, on_its_way, ("large", "bread 13:00–13:10"), fits=())


def test_food_before_first_fires_is_caught() -> None:
    fires = FirstFires(
        needed=True,
        waived=False,
        stages=tuple(StageProgress(stage=stage, done=False, session=None, missing=()) for stage in stages()),
    )
    refused = tuple(replace(fit, state=FitState.REFUSED) for fit in rising().standing.fits if fit.task.is_food)
    look = rules.no_food_before_first_fires
    assert broken(look, ("wood", "About 11 lb of wood."), first_fires=fires, fits=refused)
    assert broken(look, ("headline", "Put the loaves in."), first_fires=fires, fits=refused)
    assert broken(look, first_fires=fires)
    assert not broken(look, ("headline", next_fire_words(fires)), first_fires=fires, fits=refused)


def test_the_next_first_fire_is_not_ordered_while_the_stove_is_hot() -> None:
    first, *rest = (StageProgress(stage=stage, done=False, session=None, missing=()) for stage in stages())
    done = (replace(first, done=True, session=0), *rest)
    fires = FirstFires(needed=True, waived=False, stages=done, just_done=done[0])
    look = rules.no_next_first_fire_while_hot
    assert broken(look, ("headline", next_fire_words(fires)), first_fires=fires)
    assert not broken(look, ("headline", "Let it go cold."), first_fires=fires)
    cold = {name: replace(zone, p50=kelvin(70.0, "F")) for name, zone in rising().standing.zones.items()}
    assert not broken(look, ("headline", next_fire_words(fires)), first_fires=fires, zones=cold)


def test_an_order_against_a_caution_is_caught() -> None:
    hot = (Caution(key="over_fired_flue", title="Flue pipe too hot", text="Add no wood.", urgent=True, spot="flue"),)
    look = rules.no_word_against_a_caution
    assert broken(look, ("detail", "Add two splits: holds it for hours."), cautions=hot)
    assert not broken(look, ("detail", "Add two splits: holds it for hours."), cautions=())
    assert not broken(look, ("detail", "Shut the air."), cautions=hot)


def test_cautions_that_pull_two_ways_are_caught() -> None:
    hot, cool, dry = (
        Caution(key=title, title=title, text=text, urgent=True)
        for title, text in (
            ("Cooktop too hot", "Shut the air down and let it fall."),
            ("Flue too cool", "Burn drier wood or a livelier fire."),
            ("Flue too cool", "Burn only dry wood."),
        )
    )
    look = rules.cautions_speak_with_one_voice
    assert broken(look, cautions=(hot, cool))
    assert not broken(look, cautions=(hot, dry))
    assert not broken(look, cautions=(cool,))


@pytest.mark.parametrize(
    ("leaves", "step", "is_wrong"),
    [
        ("get too hot", "Add two splits: holds it for hours.", True),
        ("get too hot", "Set the air to 30 % open: holds it for hours.", False),
        ("fall too low", "Set the air to 30 % open: holds it for hours.", True),
        ("fall too low", "Build the fire up before you bake.", False),
    ],
)
def test_a_step_the_wrong_way_is_caught(leaves: str, step: str, is_wrong: bool) -> None:
    said = ("headline", f"It may well {leaves} before a bake is done."), ("detail", step)
    assert broken(rules.the_step_works_against_the_leaving, *said) is is_wrong


def test_a_bake_that_will_not_last_is_not_called_for() -> None:
    look, told = rules.bake_has_an_even_chance, ("headline", "Put the loaves in.")
    projection = rising().standing.projection
    steady = replace(projection, kelvin=np.full_like(projection.kelvin, kelvin(395.0, "F")))
    falling = steady.kelvin - 5.0 * steady.minutes[None, :, None] / 3.0  # 50 K in half an hour
    assert not broken(look, told, projection=steady)
    assert broken(look, told, projection=replace(steady, kelvin=falling))
    assert not broken(look, ("headline", "The oven is at bread heat."), projection=replace(steady, kelvin=falling))


def test_a_spot_just_read_is_not_asked_for() -> None:
    asked = ("detail", "Worth reading next: top back right, by 12:55.")
    look = rules.no_reading_asked_twice
    course = rising().standing.course
    read, unread = (NextReading(spot=spot, in_min=5, narrows=0.1) for spot in ("top_back_right", "flue"))
    assert broken(look, asked, course=replace(course, next_reading=read))
    assert not broken(look, asked, course=replace(course, next_reading=unread))


def test_a_deadline_that_recedes_is_caught() -> None:
    before = saying(("headline", "Add wood by 12:50."))
    later = saying(("headline", "Add wood by 12:53."))
    assert list(rules.deadline_never_recedes(pair_of(before, later)))
    assert not list(rules.deadline_never_recedes(pair_of(before, before)))
    assert not list(rules.deadline_never_recedes(pair_of(later, before)))


def test_good_later_that_stays_away_is_caught() -> None:
    def best_in(minutes: float | None) -> Moment:
        fit = next(fit for fit in rising().standing.fits if fit.task.key == "bread")
        spot = replace(fit.spots[0], in_min=minutes, chance_now=0.4)
        return saying(fits=(ranked(replace(fit, spots=(spot,))),))

    look = rules.good_later_comes
    assert list(look(pair_of(best_in(5.0), best_in(5.1))))
    assert list(look(pair_of(best_in(0.5), best_in(15.0))))
    assert list(look(pair_of(best_in(0.5), best_in(None))))
    assert not list(look(pair_of(best_in(5.0), best_in(4.0))))
    assert not list(look(pair_of(best_in(0.5), best_in(0.0))))
    assert not list(look(pair_of(best_in(0.0), best_in(15.0))))
    assert not list(look(pair_of(best_in(60.0), best_in(60.0))))


def test_wood_for_an_open_door_is_caught() -> None:
    quiet, wood = saying(("headline", "The oven is at bread heat.")), saying(("headline", "Add wood now."))
    assert list(rules.no_wood_for_an_open_door(pair_of(quiet, wood, 0.0)))
    assert not list(rules.no_wood_for_an_open_door(pair_of(wood, wood, 0.0)))


def test_pots_are_held_to_their_chances_and_their_spots() -> None:
    moment = rising()
    row = moment.plan.pots[0]

    def with_row(**changes: object) -> Moment:
        return replace(moment, plan=replace(moment.plan, pots=(replace(row, **changes),)))  # type: ignore[arg-type]

    weak = with_row(spot="top_back_left", label="back left", chance=0.3)
    firm = with_row(spot="top_back_left", label="back left", chance=0.7)
    moved = with_row(spot="top_front_left", label="front left", chance=0.7)
    assert list(rules.a_place_has_an_even_chance(weak))
    assert not list(rules.a_place_has_an_even_chance(firm))
    assert list(rules.pots_stay_put(pair_of(firm, moved)))
    assert not list(rules.pots_stay_put(pair_of(firm, firm)))
    assert list(rules.taken_is_true(with_row(spot="", why_not="its spots are taken")))
    assert not list(rules.taken_is_true(with_row(spot="", why_not="too hot")))
