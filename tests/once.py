"""What pages, commands and reports ask for is worked out once for all tests: of the same rows the same is found."""

import pickle
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any

import pytest

from cookstove_gui.desk.logbook.opened import opened
from cookstove_gui.forecast.learning.learn import lessons
from cookstove_gui.one_road import Memory, cautions_by_moment, work_out
from cookstove_gui.resource_files import has_own_tables
from cookstove_gui.situation import Inputs, Standing
from cookstove_gui.stove.entries import HeatBand, Session
from cookstove_gui.stove.stove import Stove
from cookstove_gui.study import Study, StudyInputs, study


class Once:
    """A function of plain values that keeps its results."""

    def __init__(self, work: Callable[..., Any]) -> None:
        self._work = work
        self._kept: dict[Any, Any] = {}

    def __call__(self, *asked: Any) -> Any:
        if has_own_tables():  # a cook's own tables answer otherwise
            return self._work(*asked)
        key = _key(asked)
        if key not in self._kept:
            self._kept[key] = self._work(*asked)
        return self._kept[key]


def _key(asked: Any) -> Any:
    """The values, or what is written of them where there are arrays in them."""
    try:
        hash(asked)
    except TypeError:
        return pickle.dumps(asked)
    return asked


_opened, _lessons = Once(opened), Once(lessons)
_cautions = Once(lambda inputs: tuple(cautions_by_moment(inputs)))
_standing = Once(work_out)
_studies: dict[Any, Study] = {}


def stood(inputs: Inputs, _memory: Memory | None = None) -> Standing:
    """How a stove stands; with a memory it is the same."""
    found: Standing = replace(_standing(replace(inputs, serial=0)), serial=inputs.serial)
    return found


def _study(asked: StudyInputs, progressed: Callable[[int, int], None], cancelled: Callable[[], bool]) -> Study | None:
    key = _key(asked)
    found = _studies.get(key) or study(asked, progressed, cancelled)
    if found is None or cancelled():
        return None
    return _studies.setdefault(key, found)


def _learned(stove: Stove, sessions: Sequence[Session], bands: Sequence[HeatBand], known: object, *_: object) -> Any:
    return _lessons(stove, tuple(sessions), tuple(bands), known)


def pages_work_once(patch: pytest.MonkeyPatch) -> None:
    """Put it in the place of what the threads of the pages call."""
    commands_work_once(patch)
    patch.setattr("cookstove_gui.gui.logbook.opened_session.opened", _opened)
    patch.setattr("cookstove_gui.study.study", _study)
    patch.setattr("cookstove_gui.gui.background.working_out.WorkingOut.__call__", lambda _self, inputs: stood(inputs))


def commands_work_once(patch: pytest.MonkeyPatch) -> None:
    """Put it in the place of what commands and reports call."""
    for module in ("commands.lines", "commands.plan", "reports.session_report"):
        patch.setattr(f"cookstove_gui.{module}.work_out", stood)
    patch.setattr("cookstove_gui.reports.due_cautions.cautions_by_moment", _cautions)
    patch.setattr("cookstove_gui.study.lessons", _learned)
