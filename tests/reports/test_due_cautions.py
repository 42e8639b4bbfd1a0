"""A report tells the cautions that were due, each once, the urgent ones first."""

from cookstove_gui.phrases.report import ReportClock
from cookstove_gui.reports.due_cautions import DueCaution, due_cautions
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove

from .conftest import SEVEN, Log, asked


def _due(stove: Stove, log: Log) -> tuple[DueCaution, ...]:
    session = Session(number=1, stove=stove.name, title="x", entries=tuple(log.rows))
    return due_cautions(asked(stove, session), ReportClock(SEVEN, -300))


def _told(stove: Stove, log: Log) -> tuple[tuple[str, str], ...]:
    due = _due(stove, log)
    assert all(one.decides in one.text for one in due)
    return tuple((one.title, one.text) for one in due)


def test_too_hot_a_flue_in_the_middle_of_a_stage_is_told_first(stove: Stove, log: Log) -> None:
    log.add(0, "lit").add(1, "air", value="0.6").add(15, "wood")
    for minute, heat in enumerate((150, 220, 300, 380, 460, 530, 590, 610, 560, 490, 430, 380), start=1):
        log.read(5 * minute, "flue", heat)
    told = [title for title, _ in _told(stove, log)]
    assert "Flue pipe too hot" in told[:2]
    assert told.index("Flue pipe too hot") < told.index("Cold flue")


def test_caution_about_several_spots_is_told_once_and_names_them(stove: Stove, log: Log) -> None:
    log.add(0, "lit").add(15, "wood").read(60, "wall_left", 208).read(60.5, "floor_front", 210)
    texts = [text for title, text in _told(stove, log) if title == "Wall or floor too hot"]
    assert len(texts) == 1
    assert "wall left" in texts[0].lower()
    assert "floor front" in texts[0].lower()


def test_cold_stove_has_no_caution_about_heat(stove: Stove, log: Log) -> None:
    log.read(0, "oven_centre", 65).read(1, "side_left", 64)
    assert "Hot to touch" not in [title for title, _ in _told(stove, log)]


def test_a_caution_says_from_when_to_when_it_was_due(stove: Stove, log: Log) -> None:
    log.add(0, "lit").add(1, "air", value="0.6").add(15, "wood")
    for minute, heat in ((30, 420), (40, 560), (50, 760), (60, 770), (70, 560), (80, 430)):
        log.read(minute, "top_front_left", heat)
    (hot,) = (one for one in _due(stove, log) if one.title == "Cooktop too hot")
    assert hot.span == "7:50 to 8:00"


def test_what_is_about_a_part_of_the_stove_comes_before_the_rest(stove: Stove, log: Log) -> None:
    log.add(0, "lit").add(15, "wood").read(60, "wall_left", 208).read(61, "side_left", 330)
    due = [one.title for one in _due(stove, log)]
    assert due.index("Hot to touch") < due.index("Cold flue")
