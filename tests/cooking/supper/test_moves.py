"""What a new plan begins at another time is told for a while, from where it was at first, with the reason."""

from dataclasses import replace
from datetime import timedelta

import pytest

from cookstove_gui.cooking.supper.marks import OwnTime, Supper
from cookstove_gui.cooking.supper.moves import STAYS_TOLD, moves_between
from cookstove_gui.cooking.supper.plan import Margin, Plan, PlannedStep, StepKind
from tests.cooking.supper.made import NOW, USUAL

PIE = USUAL["apple_pie"]
SUPPER = Supper(table_at=NOW + timedelta(hours=2), dishes=(PIE,))


def plan(begin: float, *, made: float = 0.0, before: Plan | None = None, lit: bool = True, **more: object) -> Plan:
    """A pie that goes in at a minute, as planned at another; with what that moves against the plan before."""
    at = NOW + timedelta(minutes=begin)
    step = PlannedStep(
        key="apple_pie/1", kind=StepKind.HEAT, what="bake", dish="apple_pie", begin=at,
        end=at + timedelta(minutes=45), **more,  # type: ignore[arg-type]
    )  # fmt: skip
    made_at = NOW + timedelta(minutes=made)
    found = Plan(
        table_at=SUPPER.table_at, made_at=made_at, margin=Margin.USUAL, dishes=(PIE,), steps=(step,), chance=None,
        lit=lit,
    )  # fmt: skip
    return replace(found, moved=moves_between(before, found, SUPPER))


def told(found: Plan) -> list[tuple[float, float, str]]:
    """Minutes of where it was and is, and why."""
    minute = timedelta(minutes=1)
    return [((one.was - NOW) / minute, (one.now - NOW) / minute, one.why) for one in found.moved]


def test_a_move_is_told_with_its_reason_and_a_small_one_is_not() -> None:
    first = plan(30)
    assert told(plan(40, made=1, before=first)) == [(30, 40, "heat")]
    assert told(plan(40, made=1, before=first, lit=False)) == [(30, 40, "known")]
    assert told(plan(33, made=1, before=first)) == []
    assert told(first) == []


def test_it_stays_told_for_a_while_however_often_is_planned_again() -> None:
    found = plan(40, made=1, before=plan(30))
    for minute in range(2, 12):
        found = plan(40, made=minute, before=found)
        assert told(found) == [(30, 40, "heat")]
    late = 1.0 + STAYS_TOLD / timedelta(minutes=1) + 0.1
    assert told(plan(40, made=late, before=found)) == []


def test_a_step_that_moves_again_is_told_from_where_it_was_at_first() -> None:
    found = plan(50, made=2, before=plan(40, made=1, before=plan(30)))
    assert told(found) == [(30, 50, "heat")]
    assert told(plan(51, made=3, before=found)) == [(30, 51, "heat")]


def test_a_step_that_is_back_where_it_was_or_has_begun_is_told_no_more() -> None:
    moved = plan(40, made=1, before=plan(30))
    assert told(plan(31, made=2, before=moved)) == []
    assert told(plan(40, made=2, before=moved, begun=True)) == []
    assert told(plan(40, made=2, before=moved, done=True)) == []


@pytest.mark.parametrize(("own", "why"), [((OwnTime(step="apple_pie/1", begin=NOW),), "own"), ((), "heat")])
def test_what_the_cook_set_by_hand_says_so(own: tuple[OwnTime, ...], why: str) -> None:
    (move,) = moves_between(plan(30), plan(40, made=1), replace(SUPPER, own=own))
    assert move.why == why
