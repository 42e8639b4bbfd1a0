"""A planned supper as a calendar file says the same when it is read again, by the local clock of any place.

Rules of RFC 5545 that are checked: required properties (3.6), lines of 75 octets ended by CRLF (3.1), alarms (3.6.6).
"""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import icalendar
import pytest
import vobject

from cookstove_gui.cooking.supper.dishes import Dish, HandsOn, Heat, Place, Wait
from cookstove_gui.cooking.supper.plan import FireStep, Margin, Plan, PlannedStep, StepKind
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.plan.supper_sheet import calendar_steps, supper_sheet
from cookstove_gui.reports.calendar_file import calendar_bytes
from cookstove_gui.reports.writing import html_text, pdf_bytes
from cookstove_gui.stove.stove import Stove

STOVE = Stove(name="Stove")
LONG_NAME = "Bohnen mit Äpfeln, wie die Nachbarin sie über Nacht im fallenden Ofen macht; sehr lang"
BEANS = Dish(
    key="beans",
    name=LONG_NAME,
    parts=(
        HandsOn(what="cut", minutes=20),
        Wait(what="soak", minutes=60, shortest=30, longest=600),
        Heat(what="bake", place=Place.OVEN, minutes=480, low=400.0, high=420.0),
    ),
)
# The night in which the clocks of New York go from 2:00 to 3:00: 8 March 2026, 7:00 UTC.
EVENING = datetime(2026, 3, 8, 2, 0, tzinfo=UTC)  # 21:00 on the 7th there
ZONE = ZoneInfo("America/New_York")


def step(key: str, kind: StepKind, what: str, begin: float, end: float, **others: object) -> PlannedStep:
    dish = "" if kind is StepKind.FIRE else "beans"
    at = [EVENING + timedelta(minutes=minute) for minute in (begin, end)]
    return PlannedStep(key=key, kind=kind, what=what, dish=dish, begin=at[0], end=at[1], **others)  # type: ignore[arg-type]


PLAN = Plan(
    table_at=EVENING + timedelta(hours=14),
    made_at=EVENING - timedelta(minutes=5),
    margin=Margin.USUAL,
    dishes=(BEANS,),
    steps=(
        step("fire/light", StepKind.FIRE, FireStep.LIGHT, 0, 0),
        step("beans/0", StepKind.HANDS, "cut", -30, -10, done=True),
        step("beans/1", StepKind.WAIT, "soak", -10, 50),
        step("beans/2", StepKind.HEAT, "bake", 60, 540, turn_at=EVENING + timedelta(minutes=400)),
    ),
    chance=0.9,
)
EDGE = Edge(unit="F", now=EVENING, offset_minutes=-300)


def content() -> bytes:
    return calendar_bytes(calendar_steps(PLAN, STOVE, EDGE), PLAN.table_at, PLAN.made_at)


@pytest.fixture
def events() -> list[icalendar.Event]:
    return list(icalendar.Calendar.from_ical(content()).walk("VEVENT"))


def test_each_step_to_come_and_the_table_are_events_and_done_ones_are_not(events: list[icalendar.Event]) -> None:
    titles = [str(one["summary"]) for one in events]
    assert [title[:5] for title in titles] == ["Light", "Bohne", "Bohne", "Suppe"]
    assert not any("cut" in title for title in titles)


def test_another_library_reads_the_same(events: list[icalendar.Event]) -> None:
    again = vobject.readOne(content().decode("utf-8")).vevent_list
    assert [one.summary.value for one in again] == [str(one["summary"]) for one in events]
    for name in ("dtstart", "dtend"):
        assert [getattr(one, name).value for one in again] == [one[name].dt for one in events]
    assert [len(getattr(one, "valarm_list", [])) for one in again] == [len(one.walk("VALARM")) for one in events]


def test_local_clocks_are_right_on_both_sides_of_a_change_of_the_clocks(events: list[icalendar.Event]) -> None:
    bake = events[2]
    begin, end = (bake[name].dt.astimezone(ZONE) for name in ("dtstart", "dtend"))
    assert (begin.strftime("%d %H:%M"), end.strftime("%d %H:%M")) == ("07 22:00", "08 07:00")
    assert bake["dtend"].dt - bake["dtstart"].dt == timedelta(hours=8)


def test_it_calls_when_the_step_begins_is_turned_and_ends(events: list[icalendar.Event]) -> None:
    bake = events[2]
    rings = [bake["dtstart"].dt + alarm["trigger"].dt for alarm in bake.walk("VALARM")]
    assert rings == [EVENING + timedelta(minutes=minute) for minute in (60, 400, 540)]
    assert all(alarm["action"] == "DISPLAY" and alarm["description"] for alarm in bake.walk("VALARM"))


def test_a_wait_keeps_nobody_busy_and_does_not_call(events: list[icalendar.Event]) -> None:
    assert [str(one["transp"]) for one in events] == ["OPAQUE", "TRANSPARENT", "OPAQUE", "OPAQUE"]
    assert not events[1].walk("VALARM")


def test_a_later_plan_of_the_same_meal_moves_its_events_and_adds_none(events: list[icalendar.Event]) -> None:
    later = calendar_bytes(calendar_steps(PLAN, STOVE, EDGE), PLAN.table_at, PLAN.made_at + timedelta(minutes=20))
    again = icalendar.Calendar.from_ical(later).walk("VEVENT")
    assert [one["uid"] for one in again] == [one["uid"] for one in events]
    assert all(new["sequence"] > old["sequence"] for new, old in zip(again, events, strict=True))
    assert 0 < int(again[0]["sequence"]) < 2**31


def test_the_text_keeps_the_rules_of_the_standard() -> None:
    raw = content()
    lines = raw.split(b"\r\n")
    assert lines[-1] == b""
    assert b"\n" not in raw.replace(b"\r\n", b"")
    assert all(len(line) <= 75 for line in lines)
    assert lines[0] == b"BEGIN:VCALENDAR"
    assert lines[-2] == b"END:VCALENDAR"
    assert any(line.startswith(b"PRODID:") for line in lines)
    assert b"VERSION:2.0" in lines
    uids = [line for line in lines if line.startswith(b"UID:")]
    assert len(uids) == len(set(uids)) == lines.count(b"BEGIN:VEVENT")


def test_it_says_who_decides(events: list[icalendar.Event]) -> None:
    assert all("thermometer" in str(one["description"]) for one in events)


def test_the_page_has_a_box_for_each_step_and_clocks_of_the_day() -> None:
    sheet = supper_sheet(PLAN, STOVE, EDGE, lambda at: round(ZONE.utcoffset(at.astimezone(ZONE)).total_seconds() / 60))
    assert (sheet.title, sheet.day) == ("Supper at 12:00", "8 March 2026")
    assert [(line.clock, line.done) for line in sheet.lines] == [
        ("20:30", True),
        ("21:00", False),
        ("22:00", False),
        ("4:40", False),
        ("7:00", False),
    ]
    page = html_text("supper", sheet)
    assert page.count('class="box"') == len(sheet.lines)
    assert "Äpfeln" in page
    assert pdf_bytes("supper", sheet).startswith(b"%PDF")
