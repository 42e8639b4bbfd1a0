"""A folder of logs is the past of its stove, in order of time, with every problem told."""

from pathlib import Path

import pytest

from cookstove_gui.errors import InputProblem
from cookstove_gui.logbook.folder import read_folder, stove_beside, stove_for, title_of
from cookstove_gui.logbook.log_file import write_log
from cookstove_gui.logbook.stove_file import write_stove
from cookstove_gui.stove.stove import SpotKind, stove_with_default_spots

from .strategies import reading


def test_sessions_stand_in_order_of_their_first_clock(tmp_path: Path) -> None:
    write_stove(tmp_path / "stove.toml", stove_with_default_spots("Kitchen"))
    write_log(tmp_path / "a.csv", [reading(1, 5000), reading(2, 5010)])
    write_log(tmp_path / "b.csv", [reading(1, 10), reading(2, 0)])
    past = read_folder(tmp_path)
    assert [(session.number, session.title, session.stove) for session in past.sessions] == [
        (1, "b", "Kitchen"),
        (2, "a", "Kitchen"),
    ]
    assert past.stove == stove_with_default_spots("Kitchen")
    assert past.problems == ()


def test_bad_files_and_rows_are_told_and_the_rest_is_read(tmp_path: Path) -> None:
    write_log(tmp_path / "good.csv", [reading(1)])
    (tmp_path / "prices.csv").write_text("wood,price\noak,3\n")
    text = (tmp_path / "good.csv").read_text()
    (tmp_path / "half.csv").write_text(text + text.splitlines()[1].replace("385", "38x") + "\n")
    (tmp_path / "header.csv").write_text(text.splitlines()[0] + "\n")
    past = read_folder(tmp_path)
    assert [session.title for session in past.sessions] == ["good", "half"]
    assert past.stove is None
    assert [problem.split(str(tmp_path))[1][:11] for problem in past.problems] == ["/half.csv l", "/prices.csv"]


def test_folder_that_is_none_is_told(tmp_path: Path) -> None:
    with pytest.raises(InputProblem, match="not a folder"):
        read_folder(tmp_path / "none")


def test_stove_that_nobody_described_has_every_spot_that_was_read(tmp_path: Path) -> None:
    write_log(tmp_path / "a.csv", [reading(1, spot="oven_shelf"), reading(2, 1, spot="warming_shelf")])
    past = read_folder(tmp_path)
    stove = stove_for(tmp_path, past.sessions)
    shelf, warmer = stove.spot("oven_shelf"), stove.spot("warming_shelf")
    assert stove.name == tmp_path.name
    assert shelf is not None
    assert shelf.kind is SpotKind.OVEN
    assert warmer is not None
    assert warmer.label == "warming shelf"


def test_folder_without_a_stove_file_has_no_stove(tmp_path: Path) -> None:
    assert stove_beside(tmp_path) is None


@pytest.mark.parametrize(
    ("name", "title"),
    [
        ("2025-11-12_roast.csv", "Roast"),
        ("2025-11-12 bread_and pie.csv", "Bread and pie"),
        ("2025-11-12.csv", "2025-11-12"),  # no more than a day: that is its title
        ("monday_2.csv", "monday_2"),
        ("Brot.csv", "Brot"),
    ],
)
def test_a_logs_name_becomes_a_title_without_the_day_that_its_rows_have(name: str, title: str) -> None:
    assert title_of(Path(name)) == title
