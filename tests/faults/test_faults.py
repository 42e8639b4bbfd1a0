"""The quick part of the long run: a dozen kills, twenty damaged files, a full disk; and the program without sockets."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.stove import stove_with_default_spots
from tests.faults.disk_full import fill_up, mounted, unmount
from tests.faults.flips import damage_files
from tests.logbook.strategies import reading

_KILLED = """
import sys
from pathlib import Path
from tests.faults.kills import kill_while_writing
found = kill_while_writing(Path(sys.argv[1]), 12, 3)
print(found)
sys.exit(0 if found.told > 20 and not (found.lost or found.half_done or found.damaged) else 1)
"""
_NO_SOCKETS = """
import socket, sys
def refuse(*_, **__):
    raise AssertionError("a socket was asked for")
socket.socket = socket.create_connection = socket.getaddrinfo = refuse
sys.argv = ["cookstove-gui", "--quit-when-painted", "--logbook", sys.argv[1]]
from cookstove_gui.__main__ import main
sys.exit(main())
"""


def _run(script: str, *arguments: object) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", script, *map(str, arguments)], capture_output=True, text=True, timeout=120, check=False
    )


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork")
def test_nothing_told_as_saved_is_lost_to_a_kill(tmp_path: Path) -> None:
    done = _run(_KILLED, tmp_path / "logbook.sqlite")
    assert done.returncode == 0, done.stdout + done.stderr


def test_no_damage_goes_unnoticed(tmp_path: Path) -> None:
    whole = tmp_path / "logbook.sqlite"
    book = Logbook.open(whole)
    book.save_stove(stove_with_default_spots("Kitchen"))
    book.start_session("Kitchen", "Bread")
    book.append(1, [reading(number, number, value=str(200 + number)) for number in range(1, 200)])
    book.look_after_file()
    book.close()
    (tmp_path / "work").mkdir()
    found = damage_files(whole, tmp_path / "work", 20, 7)
    assert (found.files, found.silent, found.wrong) == (20, 0, 0)
    assert found.refused
    assert found.saved


def test_a_full_disk_leaves_the_screen_and_the_disk_alike(tmp_path: Path) -> None:
    if not mounted(tmp_path, 600):
        pytest.skip("a small disk can be mounted by root only")
    try:
        found = fill_up(tmp_path, 5)
    finally:
        unmount(tmp_path)
    assert found.saved
    assert found.refused == 60
    assert (found.differing, found.unclear) == (0, 0)


def test_the_whole_program_asks_for_no_socket(tmp_path: Path) -> None:
    done = _run(_NO_SOCKETS, tmp_path / "logbook.sqlite")
    assert done.returncode == 0, done.stderr
