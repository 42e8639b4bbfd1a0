"""Every sample session is read without a word and written back to the letter."""

from pathlib import Path

import pytest

from cookstove_gui.logbook.folder import read_folder
from cookstove_gui.logbook.log_file import log_text, read_log
from cookstove_gui.resource_files import folder

SAMPLES = folder("sample_sessions")


@pytest.mark.parametrize("path", sorted(SAMPLES.glob("*/*.csv")), ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_sample_comes_back_to_the_letter(path: Path) -> None:
    reading = read_log(path)
    assert reading.problems == ()
    assert log_text(reading.entries).encode() == path.read_bytes()


@pytest.mark.parametrize(
    "place", sorted(path.parent for path in SAMPLES.glob("*/stove.toml")), ids=lambda path: path.name
)
def test_folder_of_samples_is_a_past_of_eight_sessions(place: Path) -> None:
    past = read_folder(place)
    assert past.stove is not None
    assert (len(past.sessions), past.problems) == (8, ())
