"""A supper that is kept comes back the same, and what is damaged of it is left out."""

import json
from dataclasses import replace
from datetime import timedelta

from cookstove_gui.cooking.supper.kept import KeptSupper, supper_from_text, supper_text
from cookstove_gui.cooking.supper.marks import Mark, OwnTime
from cookstove_gui.cooking.supper.plan import Margin
from cookstove_gui.cooking.supper.planning import plan_meal
from tests.cooking.supper.made import NOW, burning, supper


def _kept() -> KeptSupper:
    wanted = supper("bread", "greens", margin=Margin.SAFE)
    wanted = replace(
        wanted,
        marks=(Mark(step="bread/0", began=NOW, ended=NOW + timedelta(minutes=21)),),
        own=(OwnTime(step="greens/0", begin=wanted.table_at - timedelta(minutes=50)),),
    )
    return KeptSupper(supper=wanted, plan=plan_meal(wanted, burning(), NOW + timedelta(minutes=25)))


def test_it_comes_back_the_same() -> None:
    kept = _kept()
    again = supper_from_text(supper_text(kept))
    assert again is not None
    assert again.supper == kept.supper
    assert kept.plan is not None
    assert again.plan is not None
    assert again.plan.steps == kept.plan.steps
    assert (again.plan.clashes, again.plan.moved, again.plan.chance) == (
        kept.plan.clashes, kept.plan.moved, kept.plan.chance,
    )  # fmt: skip


def test_what_another_version_kept_of_a_step_is_passed_over() -> None:
    kept = _kept()
    table = json.loads(supper_text(kept))
    for step in table["plan"]["steps"]:
        step["is_new"] = True
        del step["fails_by"]
    again = supper_from_text(json.dumps(table))
    assert again is not None
    assert kept.plan is not None
    assert again.plan is not None
    assert again.plan.steps == kept.plan.steps


def test_a_plan_that_cannot_be_read_leaves_the_supper() -> None:
    kept = _kept()
    table = json.loads(supper_text(kept))
    table["plan"]["steps"][0]["kind"] = "nonsense"
    again = supper_from_text(json.dumps(table))
    assert again is not None
    assert again.supper == kept.supper
    assert again.plan is None


def test_what_is_no_supper_is_none() -> None:
    for text in ("", "[]", "{}", '{"table_at": "yesterday"}', "not json"):
        assert supper_from_text(text) is None
