"""A wheel carries all that the program needs, and starts from an unpacked one as it does from a checkout."""

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("made")
    build = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(made)]
    subprocess.run(build, cwd=ROOT, check=True, capture_output=True)
    place = tmp_path_factory.mktemp("unpacked")
    with zipfile.ZipFile(next(made.glob("*.whl"))) as wheel:
        wheel.extractall(place)
    return place


def started(place: Path, folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    """The program from an unpacked wheel alone, in a folder and with a home of its own."""
    surroundings = {**os.environ, "PYTHONPATH": str(place), "QT_QPA_PLATFORM": "offscreen"}
    surroundings |= {"XDG_DATA_HOME": str(folder), "HOME": str(folder)}
    command = [sys.executable, "-m", "cookstove_gui", *arguments]
    return subprocess.run(
        command, cwd=folder, env=surroundings, check=False, capture_output=True, text=True, timeout=60
    )


@pytest.mark.parametrize(
    "name",
    ["resources/tasks.toml", "resources/cautions.toml", "sample_sessions/README.md", "forecast/MODEL.md"],
)
def test_files_beside_the_program_are_in_the_wheel(unpacked: Path, name: str) -> None:
    assert (unpacked / "cookstove_gui" / name).is_file()


def test_tests_are_not_in_the_wheel(unpacked: Path) -> None:
    assert {path.name for path in unpacked.iterdir() if not path.name.endswith(".dist-info")} == {"cookstove_gui"}


def test_a_command_answers_from_the_wheel(unpacked: Path, tmp_path: Path) -> None:
    log = sorted((unpacked / "cookstove_gui/sample_sessions").glob("*/*.csv"))[0]
    done = started(unpacked, tmp_path, "fit", str(log))
    assert (done.returncode, done.stderr) == (0, "")


def test_the_window_paints_and_ends_from_the_wheel(unpacked: Path, tmp_path: Path) -> None:
    done = started(unpacked, tmp_path, "--quit-when-painted", "--logbook", str(tmp_path / "logbook.sqlite"))
    assert done.returncode == 0, done.stderr
    assert (tmp_path / "logbook.sqlite").is_file()
