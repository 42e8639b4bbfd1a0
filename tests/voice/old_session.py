"""A firing of a year ago on the table: what the pages show of it as if it were burning."""

import re
from collections.abc import Iterator
from datetime import timedelta

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.spot_heats import spot_heats
from cookstove_gui.desk.heading import shown_cautions, shown_detail, shown_headline
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.one_road import Memory, work_out
from cookstove_gui.phrases.figures import age_text
from tests.held_clock import HeldClock
from tests.voice.replay import Case

_LONG_AGO = timedelta(days=373)
_LONGEST_AGE_H = 48
_LIVE = re.compile(r"\bby \d+:\d\d|\bnow\b|\bAdd |\bPut the|\bClose it|\bShut |\bLook in|\bOpen ")


def old_session_is_over(case: Case) -> Iterator[str]:
    """An old session shows no live cautions, no orders, and no ages in thousands of hours."""
    logbook = Logbook.in_memory()
    try:
        logbook.save_stove(case.stove)
        desk = Desk(logbook, HeldClock(max(row.at for row in case.rows) + _LONG_AGO))
        desk.choose_stove(case.stove.name)
        desk.open_session(logbook.add_session(case.stove.name, "", case.rows).number)
        desk.show(work_out(desk.inputs(), Memory()))
        for caution in shown_cautions(desk):
            yield f"caution “{caution.title}”"
        for text in (shown_headline(desk), shown_detail(desk)):
            if _LIVE.search(text):
                yield f"“{text}”"
        for spot, heat in spot_heats(desk).items():
            hours = re.fullmatch(r"(\d+) h", age_text(heat.age_min))
            if hours and int(hours[1]) > _LONGEST_AGE_H:
                yield f"{spot} was read “{hours[0]}” ago"
    finally:
        logbook.close()
