"""A made-up session that runs through every stage of a fire."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from functools import cache

import pytest

from cookstove_gui.cooking.fit.bands import band_from_text
from cookstove_gui.reports.session_report import SessionReport, session_report
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.checking import check_entry
from cookstove_gui.stove.entries import Entry, Session
from cookstove_gui.stove.stove import Firebox, Stove, default_spots, unchecked
from tests.once import commands_work_once

SEVEN = datetime(2026, 1, 5, 12, 0, tzinfo=UTC)  # in the zone five hours behind


@pytest.fixture(autouse=True)
def _worked_out_once(monkeypatch: pytest.MonkeyPatch) -> None:
    commands_work_once(monkeypatch)


class Log:
    """Rows written one after the other."""

    def __init__(self) -> None:
        self.rows: list[Entry] = []

    def add(self, minute: float, kind: str, **fields: str) -> "Log":
        at = SEVEN + timedelta(minutes=minute)
        self.rows.append(check_entry(number=len(self.rows) + 1, at=at, offset_minutes=-300, kind=kind, **fields))
        return self

    def read(self, minute: float, spot: str, value: float) -> "Log":
        return self.add(minute, "reading", spot=spot, value=str(value), unit="F")


def made_stove() -> Stove:
    """A stove with two thermometers, one of them checked."""
    gun = replace(unchecked("infrared gun", "infrared"), offset=2.0, offset_doubt=1.0, checked_on="2026-01-02")
    dial = unchecked("oven dial", "oven thermometer")
    return Stove(
        name="Kitchen",
        firebox=Firebox.LEFT,
        spots=default_spots(),
        instruments=(gun, dial),
        altitude=300.0,
        note="Made up.",
    )


def made_log() -> Log:
    """Lit at seven, one load, a full load with the air open, the air shut at nine, coals at half past eleven."""
    log = Log()
    log.add(0, "lit").add(0, "air", value="1").add(0, "bypass", value="1")
    log.read(10, "oven_centre", 110).read(11, "top_back_left", 180)
    log.add(25, "wood", value="2", unit="kg").add(30, "bypass", value="0")
    log.read(40, "oven_centre", 230).read(41, "top_back_left", 390).read(55, "oven_centre", 290)
    log.read(56, "top_back_left", 425)
    log.add(60, "wood", note="full load, mostly “oak”")
    log.read(75, "oven_centre", 345).read(76, "top_back_left", 540).read(90, "oven_centre", 390)
    log.read(91, "top_back_left", 560).read(100, "oven_centre", 3900).read(105, "oven_centre", 420)
    log.add(120, "air", value="0.1").add(121, "pan", spot="top_back_left", value="on", note="beans")
    log.read(125, "oven_centre", 425).read(150, "oven_centre", 400).read(200, "oven_centre", 360)
    log.read(201, "top_back_left", 330).add(202, "oven_door", value="open").add(203, "oven_door", value="closed")
    log.read(240, "oven_centre", 300).read(1030, "oven_centre", 95)
    return log


def made_session() -> Session:
    """The same as a session."""
    return Session(number=1, stove="Kitchen", title="Bread & beans", entries=tuple(made_log().rows))


def asked(stove: Stove, session: Session) -> Inputs:
    """A question about a session of a stove never studied, with bread heat wanted."""
    now = max(row.at for row in session.entries) if session.entries else SEVEN
    return Inputs(stove=stove, rows=session.entries, now=now, band=band_from_text("bread", "F"))


@cache
def made_report() -> SessionReport:
    """Its report, made once: drawing the chart takes longest."""
    return session_report(asked(made_stove(), made_session()), made_session().title)


@pytest.fixture
def log() -> Log:
    return Log()


@pytest.fixture
def stove() -> Stove:
    return made_stove()


@pytest.fixture
def session() -> Session:
    return made_session()


@pytest.fixture
def report() -> SessionReport:
    return made_report()


@pytest.fixture
def quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """No cautions are looked for, which takes most of a report's time; for tests that are not about them."""
    monkeypatch.setattr("cookstove_gui.reports.session_report.due_cautions", lambda *_asked: ())
