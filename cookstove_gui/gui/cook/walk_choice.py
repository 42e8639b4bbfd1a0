"""The walk, changed at the lit spot and kept for the stove."""

from cookstove_gui.desk import Desk, Receipt
from cookstove_gui.desk.log.walking import leave_out, place_on_walk, read_sooner
from cookstove_gui.gui.cook.fire_choices import Ask
from cookstove_gui.gui.widgets.chooser import Answer, Choice

_EARLIER, _LATER, _OUT, _ON = "earlier", "later", "out", "on"


def ask_walk(desk: Desk) -> Ask:
    """Where the lit spot is read on the walk; asked again after each step."""
    place, count = place_on_walk(desk)
    name = desk.walk.spot.label
    moves = (("earlier", _EARLIER), ("later", _LATER), ("leave out", _OUT)) if place else (("read it again", _ON),)
    answers = tuple(Answer(key=str(key), words=words, value=value) for key, (words, value) in enumerate(moves, 1))
    question = f"{name}: {place} of {count} on the walk" if place else f"{name}: not on the walk"

    def enter(value: str, _at: str) -> Receipt | Ask:
        if value in (_EARLIER, _LATER):
            read_sooner(desk, -1 if value == _EARLIER else 1)
        else:
            leave_out(desk, value == _OUT)
        return ask_walk(desk)

    return Ask(choice=Choice(question=question, answers=answers, is_dated=False), enter=enter, enter_text=enter)
