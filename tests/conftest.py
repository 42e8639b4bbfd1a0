"""What every test gets: widgets drawn without a screen, laws that draw the same examples each run, a count by sort."""

import gc
import os
import shutil
import sys
import tempfile
from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest
from hypothesis import settings

from cookstove_gui.logbook.database import Database
from cookstove_gui.logbook.logbook import Logbook
from cookstove_gui.resource_files import own_place, use_own_tables
from tests.reference import checks

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
# A developer's own logbook and tables are no business of a test.
os.environ["XDG_DATA_HOME"] = str(Path(tempfile.gettempdir()) / "cookstove-tests-have-no-data-folder")

# What is compiled of the tests and of the program is kept for the next run: to collect then takes half the time.
sys.dont_write_bytecode = False
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)

# Files of tests lie in memory where the system has room there: each entry is waited for until it is on its disk.
_MEMORY = "/dev/shm"
if os.access(_MEMORY, os.W_OK) and shutil.disk_usage(_MEMORY).free > 500e6:  # bytes
    os.environ.setdefault("PYTEST_DEBUG_TEMPROOT", _MEMORY)

# No deadline: a slow machine is no defect. No chance: what fails here fails everywhere.
settings.register_profile("repeatable", deadline=None, derandomize=True, database=None)
settings.load_profile("repeatable")

SORTS = {"law": "laws", "reference": "against values from outside", "docstring_lint": "of docstrings alone"}


@pytest.fixture(autouse=True)
def _no_own_tables() -> Iterator[None]:
    """What a test changes of tasks, foods and words is gone after it."""
    yield
    if own_place("") is not None:
        use_own_tables(None)


@pytest.fixture(scope="session", autouse=True)
def _logbooks_in_memory_are_copies() -> Iterator[None]:
    """A new logbook in memory is a copy of one made once: to make its tables takes longer than most tests."""
    with Logbook.in_memory()._database._connection() as connection:
        made = connection.serialize()

    def copy(_cls: type[Logbook]) -> Logbook:
        database = Database(None)
        with database._connection() as connection:
            connection.deserialize(made)
        return Logbook(database)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Logbook, "in_memory", classmethod(copy))
        yield


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: Sequence[pytest.Item]) -> None:
    """Mark what hypothesis draws examples for, and what a row of tests/reference names."""
    outside = {row.test for row in checks() if row.test}
    for item in items:
        if getattr(getattr(item, "obj", None), "is_hypothesis_test", False):
            item.add_marker("law")
        if item.nodeid.split("[")[0] in outside:
            item.add_marker("reference")
        item.user_properties += [("sort", sort) for sort in SORTS if item.get_closest_marker(sort)]


def pytest_collection_finish() -> None:
    """Leave what is there for good out of all later collecting of garbage, which is then quick enough for each test."""
    gc.collect()
    gc.freeze()


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Say how many tests of each sort ran."""
    ran = [
        report
        for reports in terminalreporter.stats.values()
        for report in reports
        if isinstance(report, pytest.TestReport) and report.when == "call"
    ]
    of = {sort: sum(("sort", sort) in map(tuple, report.user_properties) for report in ran) for sort in SORTS}
    terminalreporter.write_line(
        f"{len(ran)} tests, of these {', '.join(f'{of[sort]} {words}' for sort, words in SORTS.items())}"
    )
