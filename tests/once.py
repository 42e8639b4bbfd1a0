"""What pages ask for is worked out once for all tests: of the same rows the same is found."""

import pickle
from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from cookstove_gui.desk.logbook.opened import opened
from cookstove_gui.gui.background.working_out import WorkingOut
from cookstove_gui.one_road import Memory, work_out
from cookstove_gui.situation import Inputs, Standing
from cookstove_gui.study import Study, StudyInputs, study


class Once:
    """A function of plain values that keeps its results."""

    def __init__(self, work: Callable[[Any], Any]) -> None:
        self._work = work
        self._kept: dict[bytes, Any] = {}

    def __call__(self, asked: Any) -> Any:
        key = pickle.dumps(asked)
        if key not in self._kept:
            self._kept[key] = self._work(asked)
        return self._kept[key]


_opened = Once(opened)
_standing = Once(lambda inputs: work_out(inputs, Memory()))


def stood(inputs: Inputs) -> Standing:
    """How a stove stands, of a program just started."""
    found: Standing = replace(_standing(replace(inputs, serial=0)), serial=inputs.serial)
    return found


_studies: dict[bytes, Study] = {}


def _study(asked: StudyInputs, progressed: Callable[[int, int], None], cancelled: Callable[[], bool]) -> Study | None:
    key = pickle.dumps(asked)
    found = _studies.get(key) or study(asked, progressed, cancelled)
    if found is None or cancelled():
        return None
    return _studies.setdefault(key, found)


def work_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Put it in the place of what the pages' threads call."""
    monkeypatch.setattr("cookstove_gui.gui.logbook.opened_session.opened", _opened)
    monkeypatch.setattr("cookstove_gui.study.study", _study)
    monkeypatch.setattr(WorkingOut, "__call__", lambda _self, inputs: stood(inputs))
