"""A report tells the cautions that were due, each once, the urgent ones first."""

from cookstove_gui.reports.due_cautions import due_cautions
from cookstove_gui.reports.stages import stages
from cookstove_gui.stove.entries import Session, fold
from cookstove_gui.stove.stove import Stove

from .conftest import Log, asked


def _told(stove: Stove, log: Log) -> tuple[tuple[str, str], ...]:
    standing = fold(log.rows)
    session = Session(number=1, stove=stove.name, title="x", entries=tuple(log.rows))
    due = due_cautions(asked(stove, session), standing, stages(standing))
    assert all(one.decides and one.decides in one.text for one in due)
    return tuple((one.title, one.text) for one in due)


def test_too_hot_a_flue_in_the_middle_of_a_stage_is_told_first(stove: Stove, log: Log) -> None:
    log.add(0, "lit").add(1, "air", value="0.6").add(15, "wood")
    for minute, heat in enumerate((150, 220, 300, 380, 460, 530, 590, 610, 560, 490, 430, 380), start=1):
        log.read(5 * minute, "flue", heat)
    told = _told(stove, log)
    assert told[0][0] == "Flue pipe too hot"


def test_caution_about_several_spots_is_told_once_and_names_them(stove: Stove, log: Log) -> None:
    log.add(0, "lit").add(15, "wood").read(60, "wall_left", 208).read(60.5, "floor_front", 210)
    texts = [text for title, text in _told(stove, log) if title == "Wall or floor too hot"]
    assert len(texts) == 1
    assert "wall left" in texts[0].lower()
    assert "floor front" in texts[0].lower()


def test_cold_stove_has_no_caution_about_heat(stove: Stove, log: Log) -> None:
    log.read(0, "oven_centre", 65).read(1, "side_left", 64)
    assert "Hot to touch" not in [title for title, _ in _told(stove, log)]
