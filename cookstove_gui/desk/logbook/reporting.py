"""Reports of a session, a season or the stove in use, as their reader is used to them; all may run in a thread."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from cookstove_gui.cooking.fires.firing_facts import firing_facts
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.logbook.opened import asked_about
from cookstove_gui.desk.logbook.seasons import season_asked
from cookstove_gui.errors import InputProblem
from cookstove_gui.phrases.habits import Clocks, Dates, Habits

if TYPE_CHECKING:
    from cookstove_gui.reports.writing import Report

_DATES, _CLOCKS = "report_dates", "report_clocks"


@dataclass(frozen=True, slots=True, kw_only=True)
class About:
    """What a report is about: a session by its number, a season by its first year, or the whole stove."""

    session: int | None = None
    season: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """A report as it is wanted."""

    about: About
    one_page: bool
    cautions: tuple[tuple[str, int], ...] | None = None  # of a season, where they were counted


def habits(desk: Desk) -> Habits:
    """How reports are written: the unit of the screen, dates and clocks as chosen before."""
    dates, clocks = desk.setting(_DATES), desk.setting(_CLOCKS)
    return Habits(
        unit=desk.unit,
        dates=Dates(dates) if dates in set(Dates) else Dates.DAY,
        clocks=Clocks(clocks) if clocks in set(Clocks) else Clocks.H24,
    )


def keep_habits(desk: Desk, *, dates: str | None = None, clocks: str | None = None) -> None:
    """Write dates and clocks so from now on."""
    if dates is not None:
        desk.set_setting(_DATES, Dates(dates))
    if clocks is not None:
        desk.set_setting(_CLOCKS, Clocks(clocks))


def made_report(desk: Desk, wanted: Wanted) -> Report:
    """The report; raises InputProblem where there is nothing to report."""
    if wanted.about.session is not None:
        return _of_session(desk, wanted.about.session, one_page=wanted.one_page)
    if wanted.about.season is not None:
        return _of_season(desk, wanted.about.season, wanted)
    from cookstove_gui.reports.stove_report import stove_report

    stove = desk.stove
    return stove_report(
        stove, desk.logbook.past_sessions(stove.name), desk.band, habits(desk), one_page=wanted.one_page
    )


def write_report(desk: Desk, wanted: Wanted, path: Path) -> None:
    """Write it as .html or .pdf, told by the ending."""
    from cookstove_gui.reports.writing import write_report as write

    write(path, made_report(desk, wanted))


def report_to_print(desk: Desk, wanted: Wanted) -> bytes:
    """The report as a PDF."""
    from cookstove_gui.reports.writing import report_pdf

    return report_pdf(made_report(desk, wanted))


def _of_session(desk: Desk, number: int, *, one_page: bool) -> Report:
    from cookstove_gui.reports.session_report import session_report

    asked = asked_about(desk, number)
    if asked is None:
        title = desk.logbook.session(number).title
        raise InputProblem(f"“{title}” has no entries yet; there is nothing to report.")
    return session_report(asked.inputs, asked.session.title, habits(desk), one_page=one_page, record=asked.record)


def _of_season(desk: Desk, year: int, wanted: Wanted) -> Report:
    from cookstove_gui.reports.season_report import SeasonAsked, season_report

    asked, stove = season_asked(desk, year), desk.stove
    sessions = desk.logbook.past_sessions(stove.name)
    return season_report(
        SeasonAsked(
            stove=stove,
            band=desk.band,
            facts=tuple(found for one in sessions if (found := firing_facts(stove, one, desk.band)) is not None),
            titles={one.number: one.title for one in sessions},
            record=asked.record,
            drifts=asked.drifts,
            cautions=wanted.cautions,
        ),
        year,
        habits(desk),
        one_page=wanted.one_page,
    )
