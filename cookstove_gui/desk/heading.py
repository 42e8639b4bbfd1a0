"""What stands over every page, for a session that is being written and for one that is over."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from cookstove_gui.desk.first_start import greeting, is_first_start
from cookstove_gui.phrases.heading import detail, detail_rungs, headline, rungs
from cookstove_gui.phrases.ladder import plain_ladder
from cookstove_gui.phrases.my_stove.first_fires import next_fire_words
from cookstove_gui.resource_files import own_words
from cookstove_gui.units import clock_text, local_offset_minutes

if TYPE_CHECKING:
    from cookstove_gui.cooking.safety.caution import Caution
    from cookstove_gui.desk.desk import Desk

_SHORTER = {
    "no_readings": ("Light the fire, then read as you go.",),
    "working_out": ("Working out how the stove stands.",),
}


def shown_headline(desk: Desk) -> str:
    """The one thing to do now; of a session that is over, that it is."""
    if is_first_start(desk) and not desk.supper.plan:
        return greeting(desk)
    if not _is_told(desk) or desk.standing is None:
        planned = _planned_rungs(desk)
        return planned[0] if planned else own_words(_waiting_words(desk))
    return headline(desk.standing, desk.edge, desk.supper.plan)


def shown_rungs(desk: Desk) -> tuple[str, ...]:
    """The headline from long to short."""
    if is_first_start(desk) and not desk.supper.plan:
        return plain_ladder(greeting(desk), "No fire is lit yet.")
    if not _is_told(desk) or desk.standing is None:
        if planned := _planned_rungs(desk):
            return planned
        key = _waiting_words(desk)
        return plain_ladder(own_words(key), *_SHORTER.get(key, ()))
    return rungs(desk.standing, desk.edge, desk.supper.plan)


def _is_told(desk: Desk) -> bool:
    """Whether anything was read or done in a session that goes on: before that a planned meal speaks."""
    return desk.is_live and bool(desk.entries)


def _waiting_words(desk: Desk) -> str:
    """What is said before the stove's standing is worked out, as a key of the phrases."""
    if not desk.is_live:
        return "session_over"
    return "working_out" if desk.entries else "no_readings"


def _planned_rungs(desk: Desk) -> tuple[str, ...]:
    """What a planned meal calls for now or next, while no fire says more; empty where none is planned."""
    plan, due, following = desk.supper.plan, desk.supper.due, desk.supper.next
    if plan is None or following is None:
        return ()
    from cookstove_gui.phrases.plan.supper import due_rungs, next_words  # not before the first paint without a meal

    edge = replace(desk.edge, now=desk.clock(), offset_minutes=here(desk))
    if due is not None:
        return due_rungs(due, plan, desk.stove, edge)
    return plain_ladder(next_words(following, plan, desk.stove, edge), f"Next at {edge.at(following.at)}.")


def here(desk: Desk) -> int:
    """Offset [min] of the clock that a cook reads now: the session's while one is written, else this computer's."""
    return desk.offset_minutes if desk.is_live else local_offset_minutes(desk.clock())


def shown_detail(desk: Desk) -> str:
    """What stands behind the headline; nothing of a session that is over."""
    return detail(desk.standing, desk.edge, desk.supper.plan) if desk.standing and desk.is_live else ""


def shown_detail_rungs(desk: Desk) -> tuple[str, ...]:
    """The detail in one line, from long to short; nothing of a session that is over but a meal that is planned."""
    if desk.supper.plan is not None and desk.supper.next is not None and not _is_told(desk):
        from cookstove_gui.phrases.plan.supper import plan_rungs

        return plan_rungs(desk.supper.plan, replace(desk.edge, now=desk.clock(), offset_minutes=here(desk)))
    if is_first_start(desk):
        return ("Three ways to begin: on Cook, the keys 1, 2 and 3 choose.", "Three ways to begin.")
    return detail_rungs(desk.standing, desk.edge, desk.supper.plan) if desk.standing and desk.is_live else ()


def shown_cautions(desk: Desk) -> tuple[Caution, ...]:
    """The cautions that hold now; none of a session that is over, and none at the door of a newcomer."""
    if is_first_start(desk):
        return ()
    return desk.cautions if desk.is_live else ()


def shown_clock(desk: Desk) -> str:
    """The time of day: by the session's clock, and over one that is over, by the clock of this computer."""
    return clock_text(desk.clock(), here(desk))


def first_fires_words(desk: Desk) -> str:
    """Why nothing is cooked or loaded yet on a new stove; empty once its first fires are done or waived."""
    fires = desk.first_fires
    if fires.next is None:
        return ""
    return shown_headline(desk) if desk.standing and desk.standing.first_fires.next else next_fire_words(fires)
