"""A stove's description goes to another logbook as a file, and never over a stove that is there."""

from dataclasses import replace
from pathlib import Path

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.stove_files import give_stove, take_stove
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Kind
from cookstove_gui.stove.redrawn import with_plates
from cookstove_gui.stove.stove import Firebox


def test_a_stove_given_on_is_the_same_stove_when_it_is_taken_in(held_desk: Desk, tmp_path: Path) -> None:
    drawn = with_plates(replace(held_desk.stove, firebox=Firebox.BELOW, cooktop_width=1.1), 1, 4)
    held_desk.save_stove(drawn)
    give_stove(held_desk, tmp_path / "stove.toml")
    held_desk.save_stove(replace(drawn, name="Cabin"))
    assert take_stove(held_desk, tmp_path / "stove.toml") == drawn.name
    assert held_desk.logbook.stove(drawn.name) == drawn
    assert len(held_desk.stoves) == 2


def test_taking_a_stove_in_leaves_the_one_on_the_table_and_its_session(held_desk: Desk, tmp_path: Path) -> None:
    give_stove(held_desk, tmp_path / "stove.toml")
    (tmp_path / "stove.toml").write_text((tmp_path / "stove.toml").read_text().replace("My stove", "Cabin"))
    held_desk.do(Kind.LIT)
    on_table, session = held_desk.stove, held_desk.session
    assert take_stove(held_desk, tmp_path / "stove.toml") == "Cabin"
    assert (held_desk.stove, held_desk.session) == (on_table, session)
    assert [stove.name for stove in held_desk.stoves] == ["Cabin", on_table.name]


def test_another_stove_of_the_same_name_is_kept_beside_it(held_desk: Desk, tmp_path: Path) -> None:
    ours = replace(held_desk.stove, altitude=900.0)
    give_stove(held_desk, tmp_path / "stove.toml")
    held_desk.save_stove(ours)
    assert take_stove(held_desk, tmp_path / "stove.toml") == f"{ours.name} 2"
    assert take_stove(held_desk, tmp_path / "stove.toml") == f"{ours.name} 2"
    assert [stove.altitude for stove in held_desk.stoves] == [900.0, 0.0]
    assert held_desk.stove == ours


def test_a_file_that_is_no_stove_changes_nothing(held_desk: Desk, tmp_path: Path) -> None:
    before = held_desk.stoves
    (tmp_path / "stove.toml").write_text('firebox = "behind"\n')
    with pytest.raises(InputProblem):
        take_stove(held_desk, tmp_path / "stove.toml")
    assert held_desk.stoves == before
