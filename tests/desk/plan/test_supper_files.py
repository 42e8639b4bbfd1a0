"""The planned supper leaves the program as a calendar file and as a page; where nothing is planned it says so."""

from datetime import timedelta
from pathlib import Path

import icalendar
import pytest

from cookstove_gui.cooking.supper.dish_text import usual_dishes
from cookstove_gui.cooking.supper.plan import FireStep, Margin, Plan, PlannedStep, StepKind
from cookstove_gui.desk import Desk
from cookstove_gui.desk.plan.supper_files import write_calendar, write_sheet
from cookstove_gui.errors import InputProblem


@pytest.fixture
def planned_desk(held_desk: Desk) -> Desk:
    now, dish = held_desk.clock(), usual_dishes()[0]
    table = now + timedelta(hours=5)
    held_desk.supper.set_table(table)
    held_desk.supper.add(dish)
    light = PlannedStep(key="fire/light", kind=StepKind.FIRE, what=FireStep.LIGHT, begin=now, end=now)
    supper = held_desk.supper.supper
    assert supper is not None
    plan = Plan(table_at=table, made_at=now, margin=Margin.USUAL, dishes=(dish,), steps=(light,), chance=None)
    assert held_desk.supper.take(supper, plan)
    return held_desk


def test_the_calendar_file_holds_the_steps(planned_desk: Desk, tmp_path: Path) -> None:
    write_calendar(planned_desk, tmp_path / "supper.ics")
    calendar = icalendar.Calendar.from_ical((tmp_path / "supper.ics").read_bytes())
    assert [str(one["summary"]) for one in calendar.walk("VEVENT")] == ["Light the fire", "Supper on the table"]


@pytest.mark.parametrize("name", ["supper.pdf", "supper.html"])
def test_the_page_is_written(planned_desk: Desk, tmp_path: Path, name: str) -> None:
    write_sheet(planned_desk, tmp_path / name)
    assert (tmp_path / name).stat().st_size > 1000


def test_other_endings_and_nothing_planned_are_refused(planned_desk: Desk, tmp_path: Path) -> None:
    for write, name in ((write_calendar, "supper.txt"), (write_sheet, "supper.doc")):
        with pytest.raises(InputProblem):
            write(planned_desk, tmp_path / name)
    planned_desk.supper.clear()
    for write, name in ((write_calendar, "supper.ics"), (write_sheet, "supper.pdf")):
        with pytest.raises(InputProblem) as caught:
            write(planned_desk, tmp_path / name)
        assert "planned" in caught.value.sentence
    assert not list(tmp_path.iterdir())
