"""Importing asks before it leaves anything out, keeps nothing twice, and what goes out comes back the same."""

from datetime import UTC, datetime
from pathlib import Path

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.files import accept_import, export_log, offer_import
from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.logbook import Logbook

HEADER = "clock,kind,spot,value,unit,note\n"
GOOD = HEADER + "2026-01-05T07:02:00-05:00,lit,,,,\n2026-01-05T07:12:00-05:00,reading,oven_centre,140,F,\n"


@pytest.fixture
def desk() -> Desk:
    return Desk(Logbook.in_memory(), lambda: datetime(2026, 2, 1, tzinfo=UTC))


def written(folder: Path, text: str, name: str = "morning.csv") -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def test_good_log_needs_no_answer_and_becomes_a_session(desk: Desk, tmp_path: Path) -> None:
    offer = offer_import(desk, [written(tmp_path, GOOD)])
    assert not offer.needs_answer
    assert accept_import(desk, offer) == 1
    assert [(row.title, row.entry_count) for row in desk.sessions] == [("morning", 2)]


def test_bad_row_is_named_and_nothing_is_kept_until_the_answer(desk: Desk, tmp_path: Path) -> None:
    text = GOOD + "2026-01-05T07:20:00-05:00,reading,oven_centre,abc,F,\n"
    offer = offer_import(desk, [written(tmp_path, text)])
    assert offer.needs_answer
    assert "4" in offer.problems[0]
    assert desk.sessions == ()
    accept_import(desk, offer)
    assert desk.sessions[0].entry_count == 2


def test_same_log_is_not_kept_twice(desk: Desk, tmp_path: Path) -> None:
    path = written(tmp_path, GOOD)
    accept_import(desk, offer_import(desk, [path]))
    offer = offer_import(desk, [path])
    assert (len(offer.files), "already" in offer.problems[0]) == (0, True)


def test_folder_brings_its_stove(desk: Desk, tmp_path: Path) -> None:
    written(tmp_path, GOOD)
    written(tmp_path, 'name = "Invented range"\nfirebox = "right"\n', "stove.toml")
    accept_import(desk, offer_import(desk, [tmp_path]))
    assert (desk.stove.name, desk.stove.firebox, len(desk.sessions)) == ("Invented range", "right", 1)


def test_empty_folder_is_said_in_a_sentence(desk: Desk, tmp_path: Path) -> None:
    with pytest.raises(InputProblem, match="no CSV file"):
        offer_import(desk, [tmp_path])


def test_exported_log_comes_back_row_for_row(desk: Desk, tmp_path: Path) -> None:
    accept_import(desk, offer_import(desk, [written(tmp_path, GOOD)]))
    out = tmp_path / "out"
    out.mkdir()
    export_log(desk, desk.sessions[0].number, out / "again.csv")
    assert (out / "again.csv").read_text(encoding="utf-8").replace("\r\n", "\n") == GOOD


def test_empty_session_is_not_exported(desk: Desk, tmp_path: Path) -> None:
    desk.start_session("nothing yet")
    assert desk.session is not None
    with pytest.raises(InputProblem, match="no entries"):
        export_log(desk, desk.session.number, tmp_path / "nothing.csv")
