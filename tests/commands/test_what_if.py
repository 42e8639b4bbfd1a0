"""Steps are read as a cook says them."""

import pytest

from cookstove_gui.commands import parsing
from cookstove_gui.commands.what_if import action_from_text
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import LEAVE, Action, ActionKind
from cookstove_gui.stove.entries import USUAL_KINDLING, USUAL_SPLIT


@pytest.mark.parametrize(
    ("text", "action"),
    [
        ("leave", LEAVE),
        ("Leave it", LEAVE),
        ("two splits", Action(kind=ActionKind.WOOD, value=2 * USUAL_SPLIT)),
        ("put on kindling", Action(kind=ActionKind.KINDLING, value=USUAL_KINDLING)),
        ("add 1 split now", Action(kind=ActionKind.WOOD, value=USUAL_SPLIT)),
        ("put a log on", Action(kind=ActionKind.WOOD, value=USUAL_SPLIT)),
        ("half a split", None),
        ("2.5 kg", Action(kind=ActionKind.WOOD, value=2.5)),
        ("2,5kg of wood", Action(kind=ActionKind.WOOD, value=2.5)),
        ("10 lb", Action(kind=ActionKind.WOOD, value=4.5359237)),
        ("air 0.3", Action(kind=ActionKind.AIR, value=0.3)),
        ("set the air to 30 %", Action(kind=ActionKind.AIR, value=0.3)),
        ("air wide open", Action(kind=ActionKind.AIR, value=1.0)),
        ("shut the air", Action(kind=ActionKind.AIR, value=0.0)),
        ("shut the air to 0.1", Action(kind=ActionKind.AIR, value=0.1)),
        ("air half open", Action(kind=ActionKind.AIR, value=0.5)),
        ("bypass closed", Action(kind=ActionKind.BYPASS, value=0.0)),
        ("open the bypass", Action(kind=ActionKind.BYPASS, value=1.0)),
        ("air", None),
        ("air 3", None),
        ("air 0.3 0.4", None),
        ("air please", None),
        ("two", None),
        ("200 kg", None),
        ("0 splits", None),
        ("", None),
        ("leave two splits alone", None),
    ],
)
def test_steps_are_read_as_a_cook_says_them(text: str, action: Action | None) -> None:
    if action is None:
        with pytest.raises(InputProblem, match="write"):
            action_from_text(text)
    else:
        found = action_from_text(text)
        assert (found.kind, found.value) == (action.kind, pytest.approx(action.value))


def test_request_without_options_asks_for_the_usual() -> None:
    request = parsing.parsed(["outlook", "a.csv"])
    assert request is not None
    assert (request.ahead, request.unit, request.band, request.at) == ((15, 30, 60), "F", None, "")
