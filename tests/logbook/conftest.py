"""A logbook in memory and one in a file, each with one made-up stove and one session."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.stove.stove import stove_with_default_spots


def _furnished(logbook: Logbook) -> Logbook:
    logbook.save_stove(stove_with_default_spots("Kitchen"))
    logbook.start_session("Kitchen", "Bread")
    return logbook


@pytest.fixture
def logbook() -> Iterator[Logbook]:
    """In memory."""
    book = _furnished(Logbook.in_memory())
    yield book
    book.close()


@pytest.fixture
def filed(tmp_path: Path) -> Iterator[Logbook]:
    """In a file of its own."""
    book = _furnished(Logbook.open(tmp_path / "logbook.sqlite"))
    yield book
    book.close()
