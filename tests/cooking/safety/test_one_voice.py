"""No two cautions of one moment send the cook two ways: the one further up leads, the other gives way to it."""

import re
from itertools import combinations

import pytest

from cookstove_gui.cooking.safety import cautions as told_by
from cookstove_gui.cooking.safety.about import About
from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.cooking.safety.cautions import RULES
from cookstove_gui.forecast.answers import TurnKind
from cookstove_gui.resource_files import table
from tests.cooking.made import log, zone
from tests.cooking.safety.asking import LIT, cautions, turn

# What a sentence tells the cook to do, read off its words.
OPENS = re.compile(r"[Oo]pen (?:the air|(?:the )?bypass and (?:the )?air)|livelier fire")
SHUTS = re.compile(r"[Ss]hut the air|shut it down|air shut|Let the fire go down")
FEEDS = re.compile(r"livelier fire|open the fire door|open the door slowly|then open it slowly")
COOLS = re.compile(r"add no wood|let it fall|Let the fire go down")
HOT_TOP, COOL_FLUE = zone("top_back_left", 750), zone("flue", 200)


def pulls_two_ways(found: list[Caution]) -> bool:
    texts = [one.text.removesuffix(one.decides) for one in found]
    return any(
        (first.search(one) and second.search(other)) or (second.search(one) and first.search(other))
        for first, second in ((OPENS, SHUTS), (FEEDS, COOLS))
        for one, other in combinations(texts, 2)
    )


@pytest.fixture
def made_due(monkeypatch: pytest.MonkeyPatch):
    """The cautions told when those of some keys are due, whatever the moment."""
    words = {name: name for name in ("read_as", "why", "heat", "rise", "minutes", "fats", "pressures")}
    about = About(spot="top_back_left", words=words)

    def told(*keys: str) -> list[Caution]:
        rules = {key: (lambda _, due=key in keys: iter([about] if due else [])) for key in RULES}
        monkeypatch.setattr(told_by, "RULES", rules)
        return list(cautions(log(LIT)).values())

    return told


@pytest.mark.parametrize("key", RULES)
def test_no_two_pull_two_ways(made_due, key: str) -> None:
    for other in RULES:
        found = made_due(key, other)
        assert found
        assert not pulls_two_ways(found)


def test_the_patterns_see_what_would_pull_two_ways(made_due) -> None:
    apart = [made_due(key)[0] for key in ("over_fired_top", "creosote")]
    assert pulls_two_ways(apart)
    assert pulls_two_ways([made_due(key)[0] for key in ("over_fired_flue", "carbon_monoxide")])
    assert not pulls_two_ways([made_due(key)[0] for key in ("over_fired_top", "wall_urgent")])


def test_every_danger_is_told_beside_every_other(made_due) -> None:
    dangers = [row["key"] for row in table("cautions.toml")["caution"] if "order" in row]
    found = made_due(*dangers)
    assert [one.key for one in found] == dangers
    assert all(one.order for one in found)
    assert not pulls_two_ways(found)
    assert not any(OPENS.search(one.order) for one in found)


def test_a_cooktop_too_hot_over_a_cool_flue() -> None:
    rows = log(
        LIT, (40, "wood", "", "", ""), (50, "reading", "flue", "200", "F"), (55, "reading", "flue", "200", "F"),
    )  # fmt: skip
    cool, both = cautions(rows, [COOL_FLUE]), cautions(rows, [COOL_FLUE, HOT_TOP])
    assert "livelier fire" in cool["creosote"].text
    assert "shut air" in cool["creosote"].against
    assert next(iter(both)) == "over_fired_top"
    assert "livelier fire" not in both["creosote"].text
    assert both["creosote"].text.endswith(both["creosote"].decides)
    assert not both["creosote"].against


def test_what_has_nothing_else_to_say_is_silent_until_it_is_over() -> None:
    forgotten = [turn(TurnKind.AIR_OPEN)]
    assert "air_open" in cautions(log(LIT), [zone("flue", 350)], turns=forgotten)
    backward = cautions(log(LIT), [zone("flue", 60), zone("room", 75)], turns=forgotten)
    assert "carbon_monoxide" in backward
    assert "air_open" not in backward
