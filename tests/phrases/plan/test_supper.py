"""The sentences of a planned supper."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.cooking.supper.marks import Mark, Supper
from cookstove_gui.cooking.supper.moments import Moment, MomentKind
from cookstove_gui.cooking.supper.plan import Clash, FireStep, Margin, Move, Plan, PlannedStep, StepKind
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan import supper as words
from tests.cooking.made import STOVE
from tests.cooking.supper.made import NOW, USUAL

EDGE = Edge(unit="F", now=NOW, offset_minutes=0)


def _step(key: str, kind: StepKind, what: str, minute: float = 30.0, **more: object) -> PlannedStep:
    begin = NOW + timedelta(minutes=minute)
    return PlannedStep(
        key=key, kind=kind, what=what, dish="" if key.startswith("fire") else key.split("/")[0], begin=begin,
        end=begin + timedelta(minutes=45), **more,  # type: ignore[arg-type]
    )  # fmt: skip


BAKE = _step("apple_pie/1", StepKind.HEAT, "bake", spot="oven_centre", chance=0.71)
CRUST = _step("apple_pie/0", StepKind.HANDS, "crust and apples", 0.0)
BOIL = _step("greens/1", StepKind.HEAT, "boil the water", 60.0, spot="top_back_left", chance=0.9)
LIGHT = _step("fire/light", StepKind.FIRE, FireStep.LIGHT, 10.0)
PLAN = Plan(
    table_at=NOW + timedelta(hours=2), made_at=NOW, margin=Margin.USUAL,
    dishes=(USUAL["apple_pie"], USUAL["greens"]), steps=(CRUST, LIGHT, BAKE, BOIL), chance=0.6,
)  # fmt: skip


def _moment(step: PlannedStep, kind: MomentKind) -> Moment:
    return Moment(at=step.begin, kind=kind, step=step)


@pytest.mark.parametrize(
    ("moment", "said"),
    [
        (_moment(CRUST, MomentKind.BEGIN), "apple pie: crust and apples"),
        (_moment(BAKE, MomentKind.PUT_IN), "apple pie in, if at 360"),
        (_moment(BAKE, MomentKind.TURN), "turn the apple pie"),
        (_moment(BAKE, MomentKind.TAKE_OUT), "apple pie out, if done"),
        (_moment(BOIL, MomentKind.PUT_ON), "greens: boil the water, top back left"),
        (_moment(BOIL, MomentKind.TAKE_OFF), "greens off the heat"),
        (_moment(LIGHT, MomentKind.FIRE), "light the fire"),
    ],
)
def test_what_to_do_at_a_moment(moment: Moment, said: str) -> None:
    assert words.moment_words(moment, PLAN, STOVE, EDGE) == said
    assert words.due_words(moment, PLAN, STOVE, EDGE) == f"{said[0].upper()}{said[1:]}."


def test_the_heat_to_wait_for_stands_in_the_cooks_unit() -> None:
    said = words.moment_words(_moment(BAKE, MomentKind.PUT_IN), PLAN, STOVE, replace(EDGE, unit="C"))
    assert said == "apple pie in, if at 182"


def test_what_is_due_gets_shorter_and_keeps_the_dish() -> None:
    rungs = words.due_rungs(_moment(BOIL, MomentKind.PUT_ON), PLAN, STOVE, EDGE)
    assert rungs[0] == "Greens: boil the water, top back left."
    assert rungs[-1] == "Greens now."
    assert [len(rung) for rung in rungs] == sorted((len(rung) for rung in rungs), reverse=True)


def test_when_all_fits_the_chance_of_the_whole_and_the_tightest_are_named() -> None:
    assert words.fits_words(PLAN) == ("In time 6\u00a0in\u00a010;", "tightest: apple pie, 7\u00a0in\u00a010")


def test_what_falls_below_the_margin_is_not_called_sure() -> None:
    safe = replace(PLAN, margin=Margin.SAFE)
    assert words.fits_words(safe) == ("In time 6\u00a0in\u00a010;", "not sure of apple pie, 7\u00a0in\u00a010")


def test_the_chance_of_the_whole_is_told_from_the_start_of_the_plan() -> None:
    early = replace(PLAN, made_at=NOW - timedelta(hours=6))
    assert words.fits_words(early)[0] == "In time 6\u00a0in\u00a010;"
    assert " in 6 of 10 futures" in words.chance_words(early)


def test_a_meal_without_heat_is_told_as_hardly_ever_in_time() -> None:
    cold = replace(PLAN, chance=0.0)
    assert words.fits_words(cold)[0] == "In time under\u00a01\u00a0in\u00a010;"
    assert " in under 1 of 10 futures" in words.chance_words(cold)


def test_a_meal_that_wants_no_heat_has_no_chance_to_tell() -> None:
    cold = replace(PLAN, steps=(CRUST,), chance=None)
    assert words.fits_words(cold) == ("Everything fits.", "")
    assert words.chance_words(cold) == ""


@pytest.mark.parametrize(("lit", "known"), [(True, "as the fire burns now"), (False, "before anything is lit")])
def test_the_chance_of_the_whole_says_what_it_is_a_share_of(lit: bool, known: str) -> None:
    assert words.chance_words(replace(PLAN, lit=lit)) == (
        f"Every dish is on time, to ten minutes, in 6 of 10 futures {known}, tended as planned; each reading makes it "
        "surer, or moves steps."
    )


@pytest.mark.parametrize(
    ("clash", "said"),
    [
        (Clash(dish="apple_pie", late_min=20.0), "Apple pie 20 min later, or without it."),
        (
            Clash(dish="apple_pie", late_min=20.0, instead="greens", instead_min=10.0),
            "Apple pie 20 min later, or do it first and the greens 10 min later.",
        ),
        (
            Clash(dish="apple_pie", late_min=0.0, no_heat="apple_pie/1"),
            "Apple pie hardly finds its heat (7 in 10).",
        ),
    ],
)
def test_a_clash_is_named_with_the_least_change(clash: Clash, said: str) -> None:
    assert words.clash_words(clash, PLAN) == said
    assert words.fits_words(replace(PLAN, clashes=(clash,)))[1] == said


@pytest.mark.parametrize(
    ("step", "fails_by", "title", "said", "line"),
    [
        (BAKE, "uneven", "Too uneven;", "Apple pie: the oven is too uneven (2 in 10).", "place too uneven"),
        (BOIL, "uneven", "Too uneven;", "Greens: every spot is too uneven (2 in 10).", "place too uneven"),
        (BOIL, "hot", "Too hot;", "Greens: every spot is too hot (2 in 10).", "place too hot"),
        (BOIL, "", "Too little heat;", "Greens hardly finds its heat (2 in 10).", "fails 8 times in 10"),
    ],
)
def test_it_is_said_why_a_step_finds_no_place(
    step: PlannedStep, fails_by: str, title: str, said: str, line: str
) -> None:
    short = replace(step, chance=0.2, fails_by=fails_by)
    clash = Clash(dish=step.dish, late_min=0.0, no_heat=step.key)
    assert words.fits_words(replace(PLAN, steps=(CRUST, short), clashes=(clash,))) == (title, said)
    assert words.chance_line(short) == line


def test_of_a_dish_that_is_on_the_fire_only_how_late_it_comes_is_said() -> None:
    begun = replace(PLAN, steps=tuple(replace(one, begun=one.kind is StepKind.HEAT) for one in PLAN.steps))
    assert words.clash_words(Clash(dish="apple_pie", late_min=20.0), begun) == "Apple pie 20 min late."


def test_a_step_that_fails_often_says_so() -> None:
    assert words.chance_line(BAKE) == "fails 3 times in 10"
    assert words.chance_line(BOIL) == ""
    assert words.chance_line(replace(BAKE, done=True)) == ""
    assert words.fails_rungs((CRUST, BAKE, BOIL)) == ("bake fails 3 times in 10", "fails 3 times in 10")
    assert words.fails_rungs((replace(BOIL, chance=0.4), BAKE))[0] == "boil the water fails 6 times in 10"
    assert words.fails_rungs((CRUST, BOIL)) == ()
    assert words.fails_rungs((replace(BAKE, chance=0.02), BOIL))[0] == "bake hardly finds heat"
    assert words.chance_line(CRUST) == ""


@pytest.mark.parametrize(
    ("why", "said"),
    [
        ("late", "a step took longer than planned"),
        ("heat", "the fire does otherwise than expected"),
        ("known", "it suits the rest better, by what is known of the stove"),
        ("dish", "the meal changed"),
        ("own", "you set it"),
    ],
)
def test_what_moved_says_from_when_to_when_and_why(why: str, said: str) -> None:
    moved = Move(step="apple_pie/1", was=NOW, now=NOW + timedelta(minutes=10), why=why, at=NOW)
    wood = replace(moved, step="fire/wood/3")
    told = words.moved_words(replace(PLAN, moved=(wood, moved, replace(moved, step="greens/1"))), EDGE)
    clocks = f"at {EDGE.at(moved.now)}, was {EDGE.at(moved.was)}"
    assert told == f"Apple pie: bake {clocks}: {said}. And 1 more."
    assert words.moved_words(replace(PLAN, moved=(wood,)), EDGE) == ""


def test_what_the_times_rest_on() -> None:
    assert words.source_words(replace(PLAN, lit=True)).startswith("Planned from the fire as it burns")
    assert words.source_words(replace(PLAN, firings=1)).endswith("this stove's own rises in 1 fire.")
    assert words.source_words(replace(PLAN, firings=4)).endswith("this stove's own rises in 4 fires.")
    assert "usually takes" in words.source_words(PLAN)


def test_the_line_under_a_dish() -> None:
    pie, greens = PLAN.dishes
    assert words.under_dish(pie, PLAN, STOVE, EDGE) == f"eaten at {EDGE.clock(140.0)}"
    assert words.under_dish(greens, PLAN, STOVE, EDGE) == "1 pot"
    assert words.under_dish(replace(greens, makes=""), PLAN, STOVE, EDGE) == "top back left"


def _eaten(late: float) -> Supper:
    greens = USUAL["greens"]
    end = NOW + timedelta(minutes=late)
    return Supper(table_at=NOW, dishes=(greens,), marks=(Mark(step="greens/2", began=NOW, ended=end),))


@pytest.mark.parametrize(
    ("late", "said"),
    [
        (1.0, f"On the table at {EDGE.clock(1.0)}, as planned."),
        (12.0, f"Ready at {EDGE.clock(12.0)}, 12 min late."),
        (-20.0, f"Ready at {EDGE.clock(-20.0)}, 20 min early."),
    ],
)
def test_how_a_meal_turned_out(late: float, said: str) -> None:
    assert words.turned_out_words(_eaten(late), EDGE) == said
    assert words.earlier_words(_eaten(late), EDGE).endswith(f"Greens. {said}")


def test_a_meal_of_which_a_dish_is_not_done_has_not_turned_out_yet() -> None:
    assert words.turned_out_words(replace(_eaten(1.0), dishes=PLAN.dishes), EDGE) == ""
    assert words.turned_out_words(Supper(table_at=NOW, dishes=()), EDGE) == ""


def test_a_rest_after_the_last_work_counts_at_its_shortest() -> None:
    pie = USUAL["apple_pie"]  # cools 15 min at least, and is eaten 20 min after the table's time
    baked = Mark(step="apple_pie/1", began=NOW - timedelta(minutes=40), ended=NOW + timedelta(minutes=5))
    assert words.turned_out_words(Supper(table_at=NOW, dishes=(pie,), marks=(baked,)), EDGE).startswith("On the table")


def test_the_dishes_of_a_meal_are_named() -> None:
    assert words.in_meal_words(_eaten(0.0)) == "In the meal: Greens."
    assert words.in_meal_words(Supper(table_at=NOW, dishes=())) == ""
