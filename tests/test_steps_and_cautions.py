"""No step is advised that a caution of the same moment speaks against."""

from dataclasses import replace

import pytest

from cookstove_gui import one_road
from cookstove_gui.advice import Subject, advise
from cookstove_gui.cooking.fires.steps import steps
from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.forecast.answers import Action, ActionKind, TurnKind
from cookstove_gui.resource_files import table
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.entries import Kind
from tests.advice_cases import asked, standing, turn, words
from tests.rows import RISING

STEPS = {"wood", "open air", "shut air", "close bypass"}
HALF_SHUT = tuple(replace(row, value="0.4") if row.kind is Kind.AIR else row for row in RISING)


def against(*wanted: str) -> Caution:
    return Caution(key="made_up", title="Made up", text="Made up.", urgent=False, against=wanted)


def leaving_its_heat() -> Inputs:
    return replace(asked(HALF_SHUT, 50), band=band_from_text("bread", "F"))


def named(action: Action) -> str:
    if action.kind is ActionKind.WOOD:
        return "wood"
    return {ActionKind.AIR: ("shut air", "open air"), ActionKind.BYPASS: ("close bypass", "open bypass")}[action.kind][
        action.value > 0.5
    ]


def test_the_steps_that_cautions_name_are_steps_of_the_stove() -> None:
    rows = table("cautions.toml")["caution"]
    assert {step for row in rows for step in row.get("against", ())} == STEPS


@pytest.mark.parametrize(
    ("key", "step"),
    [
        ("over_fired_flue", "wood"),
        ("over_fired_top", "wood"),
        ("wall", "wood"),
        ("carbon_monoxide", "shut air"),
        ("creosote", "shut air"),
        ("cold_flue", "close bypass"),
        ("bypass_early", "close bypass"),
        ("air_open", "open air"),
    ],
)
def test_a_caution_speaks_against_what_it_warns_of(key: str, step: str) -> None:
    row = next(row for row in table("cautions.toml")["caution"] if row["key"] == key)
    assert step in row["against"]


def test_the_step_advised_gives_way_to_a_caution(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(one_road, "due", lambda *_, **__: ())
    refused: list[str] = []
    while (found := one_road.work_out(leaving_its_heat()).best_step) is not None:
        assert named(found.action) not in refused
        refused.append(named(found.action))
        monkeypatch.setattr(one_road, "due", lambda *_, **__: (against(*refused),))
    assert refused
    assert set(refused) <= {named(action) for action in steps(HALF_SHUT)}


def test_air_is_not_shut_down_while_the_flue_is_too_cool() -> None:
    open_wide = standing(390.0, turns=(turn(TurnKind.AIR_OPEN),))
    assert advise(open_wide).subject is Subject.AIR_OPEN
    assert advise(replace(open_wide, cautions=(against("shut air"),))).subject is Subject.PUT_IN


def test_before_a_bake_that_gets_too_hot_no_air_is_shut_against_a_caution() -> None:
    too_hot = standing(410.0, 0.5)
    assert "Shut the air down a little before you bake." in words(too_hot)
    assert "Add no wood before you bake." in words(replace(too_hot, cautions=(against("shut air"),)))
