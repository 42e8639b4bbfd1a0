"""What pages, commands and reports ask for is worked out once for all tests: of the same rows the same is found."""

import hashlib
import pickle
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any

import pytest

from cookstove_gui.desk.logbook.opened import opened
from cookstove_gui.desk.plan.bake import BakeInputs, plan_bake
from cookstove_gui.desk.plan.pots import PotsInputs, plan_pots
from cookstove_gui.desk.plan.water import WaterInputs, plan_water
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
    """The values, or a digest of them where there are arrays in them."""
    try:
        hash(asked)
    except TypeError:
        return hashlib.sha256(pickle.dumps(asked)).digest()
    return asked


_opened, _lessons = Once(opened), Once(lessons)
_cautions = Once(lambda inputs: tuple(cautions_by_moment(inputs)))
_standing = Once(work_out)
_pots, _bake, _water = Once(plan_pots), Once(plan_bake), Once(plan_water)
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


@dataclass(frozen=True)
class _Past:
    """The sessions that a plan looks up, as a value."""

    sessions: tuple[Session, ...]

    def __call__(self, _stove: str) -> tuple[Session, ...]:
        return self.sessions


def _planned(plan: Once) -> Callable[[PotsInputs | BakeInputs | WaterInputs], Any]:
    """A plan for a stove that stands so, whichever entry it stands so after."""

    def found(inputs: PotsInputs | BakeInputs | WaterInputs) -> Any:
        asked = replace(inputs, standing=replace(inputs.standing, serial=0))
        if isinstance(asked, WaterInputs):
            asked = replace(asked, past=_Past(asked.past(asked.stove.name)))
        return plan(asked)

    return found


water_planned = _planned(_water)


def pages_work_once(patch: pytest.MonkeyPatch) -> None:
    """Put it in the place of what the threads of the pages call."""
    commands_work_once(patch)
    patch.setattr("cookstove_gui.gui.logbook.opened_session.opened", _opened)
    patch.setattr("cookstove_gui.study.study", _study)
    for part, plan in (("pots", _planned(_pots)), ("bake", _planned(_bake)), ("water", water_planned)):
        patch.setattr(f"cookstove_gui.gui.plan.{part}.plan_{part}", plan)
    patch.setattr("cookstove_gui.gui.background.working_out.WorkingOut.__call__", lambda _self, inputs: stood(inputs))


def commands_work_once(patch: pytest.MonkeyPatch) -> None:
    """Put it in the place of what commands and reports call."""
    for module in ("commands.lines", "commands.plan", "reports.session_report"):
        patch.setattr(f"cookstove_gui.{module}.work_out", stood)
    patch.setattr("cookstove_gui.reports.due_cautions.cautions_by_moment", _cautions)
    patch.setattr("cookstove_gui.study.lessons", _learned)
