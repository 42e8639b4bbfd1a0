"""A planned supper as a calendar file (RFC 5545). Instants are written in UTC, so that every calendar shows them by the
local clock of the day, also over a change of the clocks."""

import hashlib
from datetime import UTC, datetime, timedelta

from cookstove_gui.phrases.plan.supper_sheet import DECIDES, CalendarStep

_PRODUCT = "-//Cookstove companion//Planned supper//EN"
_SHORTEST = timedelta(minutes=5)  # of an event, so that a calendar draws it


def calendar_bytes(steps: tuple[CalendarStep, ...], table_at: datetime, made_at: datetime) -> bytes:
    """The file: an event for each step, with an alarm for each moment at which it calls.

    A later plan of the same meal has the same identifiers and a later SEQUENCE, so that a calendar moves its events.
    """
    from icalendar import Alarm, Calendar, Event

    calendar = Calendar()
    calendar.add("prodid", _PRODUCT)
    calendar.add("version", "2.0")
    for step in steps:
        event = Event()
        event.add("uid", _identifier(step.key, table_at))
        event.add("dtstamp", made_at.astimezone(UTC))
        event.add("sequence", max(int(made_at.timestamp()) - _EPOCH, 0))
        event.add("summary", step.title)
        event.add("description", DECIDES)
        event.add("dtstart", _second(step.begin))
        event.add("dtend", _second(max(step.end, step.begin + _SHORTEST)))
        event.add("transp", "TRANSPARENT" if step.is_free else "OPAQUE")
        for at in step.rings:
            alarm = Alarm()
            alarm.add("action", "DISPLAY")
            alarm.add("description", step.title)
            alarm.add("trigger", _second(at) - _second(step.begin))
            event.add_component(alarm)
        calendar.add_component(event)
    return bytes(calendar.to_ical())


_EPOCH = 1_577_836_800  # 2020-01-01 UTC, so that SEQUENCE stays a 32-bit whole number until 2088


def _second(at: datetime) -> datetime:
    return at.astimezone(UTC).replace(microsecond=0)


def _identifier(key: str, table_at: datetime) -> str:
    meal = f"{table_at.astimezone(UTC):%Y%m%d}/{key}"
    return f"{hashlib.sha256(meal.encode()).hexdigest()[:32]}@cookstove-companion.invalid"
