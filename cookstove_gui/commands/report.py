"""`report`: a session, a season or a stove as a page for someone else, HTML or PDF."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from cookstove_gui.commands.parsing import Request
from cookstove_gui.commands.question import Asked, Asker, folder_of_logs
from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import RecordRow
from cookstove_gui.phrases.habits import Clocks, Dates, Habits
from cookstove_gui.reports.writing import Report, write_report
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.entries import HeatBand, Session, fold
from cookstove_gui.stove.stove import Stove
from cookstove_gui.study import past_lessons

if TYPE_CHECKING:
    from cookstove_gui.cooking.fires.firing_facts import FiringFacts
    from cookstove_gui.reports.season_cautions import CautionCount


def report(request: Request, complain: Callable[[str], None]) -> int:
    """Write the report; returns the exit code, 2 when some rows of a log could not be read and are missing."""
    source, target = request.logs[0], request.target
    if target is None or target.suffix.lower() not in (".html", ".pdf"):
        raise InputProblem(f"{target} must end in .html or .pdf; give the report one of these endings.")
    if request.cautions and request.season is None:
        raise InputProblem("--cautions counts those of a season; say which one with --season YEAR.")
    if source.is_dir():
        made, is_whole = _of_folder(request, source, complain)
    elif request.season is not None:
        raise InputProblem(f"{source} is one log; a season needs the folder that holds the stove's logs.")
    else:
        made, is_whole = _of_log(request, source, complain)
    write_report(target, made)
    return 0 if is_whole else 2


def _habits(request: Request) -> Habits:
    return Habits(unit=request.unit, dates=Dates(request.dates), clocks=Clocks(request.clocks))


def _of_log(request: Request, log: Path, complain: Callable[[str], None]) -> tuple[Report, bool]:
    from cookstove_gui.reports.session_report import session_report

    asked = Asker(request, complain).ask(log)
    title = log.stem.replace("_", " ")
    record = _projections(asked, title) if request.said else ()
    made = session_report(asked.inputs, title, _habits(request), one_page=request.one_page, record=record)
    return made, asked.is_whole


def _projections(asked: Asked, title: str) -> tuple[RecordRow, ...]:
    """What would have been said during the session, by what the sessions before it had taught."""
    inputs = asked.inputs
    rows = fold(inputs.rows)
    this = Session(number=0, stove=inputs.stove.name, title=title, entries=inputs.rows)
    found = past_lessons(inputs.stove, (*inputs.earlier, this))
    return tuple(row for row in found.record if rows and rows[0].at <= row.made_at <= rows[-1].at)


def _of_folder(request: Request, folder: Path, complain: Callable[[str], None]) -> tuple[Report, bool]:
    past, stove = folder_of_logs(folder, complain)
    band = request.band or band_from_text("bread", "F")
    sessions = past.sessions
    if request.season is None:
        from cookstove_gui.reports.stove_report import stove_report

        return stove_report(stove, sessions, band, _habits(request), one_page=request.one_page), not past.problems
    from cookstove_gui.cooking.fires.firing_facts import firing_facts
    from cookstove_gui.reports.season_report import SeasonAsked, season_report

    facts = tuple(found for one in sessions if (found := firing_facts(stove, one, band)) is not None)
    asked = SeasonAsked(
        stove=stove,
        band=band,
        facts=facts,
        titles={one.number: one.title.replace("_", " ") for one in sessions},
        cautions=_cautions(stove, sessions, facts, request.season, band) if request.cautions else None,
    )
    return season_report(asked, request.season, _habits(request), one_page=request.one_page), not past.problems


def _cautions(
    stove: Stove, sessions: Sequence[Session], facts: Sequence[FiringFacts], year: int, band: HeatBand
) -> tuple[CautionCount, ...]:
    """In how many sessions of a season each caution was due, by what all sessions have taught, as in the window."""
    from cookstove_gui.reports.season_cautions import caution_titles, commonest
    from cookstove_gui.reports.season_figures import season_figures

    character = past_lessons(stove, sessions).character
    began = {one.number: min(row.at for row in one.entries) for one in sessions}
    chosen = {row.session for row in season_figures(facts, year, band).rows}
    return commonest(
        caution_titles(
            Inputs(
                stove=stove,
                rows=one.entries,
                now=max(row.at for row in fold(one.entries)),
                band=band,
                character=character,
                earlier=tuple(other for other in sessions if began[other.number] < began[one.number]),
            )
        )
        for one in sessions
        if one.number in chosen
    )
