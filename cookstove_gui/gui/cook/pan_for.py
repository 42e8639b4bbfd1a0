"""A pan for a task, as the cook asks by Enter on its row: where it will do now, or will later."""

from dataclasses import replace

from cookstove_gui.desk import Desk, Receipt
from cookstove_gui.desk.cook.good_rows import GoodRow
from cookstove_gui.desk.cook.pan_course import pan_spots
from cookstove_gui.desk.cook.task_places import task_places
from cookstove_gui.desk.log.named_spots import MOST_SHOWN
from cookstove_gui.errors import InputProblem
from cookstove_gui.gui.cook.fire_choices import Ask, answers_to
from cookstove_gui.phrases.edge import spot_label
from cookstove_gui.stove.entries import Kind


def pan_for(desk: Desk, row: GoodRow, at: str) -> Receipt | Ask:
    """Put the pan on the one spot that will do; of several the cook chooses, the likeliest first."""

    def enter(spot: str, at: str) -> Receipt:
        return desk.do(Kind.PAN, value="on", spot=spot, at_text=at)

    places, found = task_places(desk, row.task), pan_spots(desk, row)[:MOST_SHOWN]
    if not found:
        raise InputProblem(f"A pan stands wherever {row.name} would do; take one off first (F10).")
    if len(found) == 1:
        return enter(found[0], at)
    words = {spot: spot_label(desk.stove, spot).removeprefix("top ") for spot in found}
    chances = {spot: f", {places[spot].words}" if spot in places and places[spot].will_do else "" for spot in found}
    ask = answers_to(f"Pan: {row.name}", tuple((words[spot] + chances[spot], spot) for spot in found), enter)
    return replace(ask, is_of_pan=True)
