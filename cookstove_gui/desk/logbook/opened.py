"""A session opened in the Logbook: its oven as it is known now, its stages, what was foretold against what came."""

from dataclasses import dataclass
from datetime import datetime, timedelta

import numpy as np

from cookstove_gui.cooking.fires.firing_facts import FiringFacts, firing_facts
from cookstove_gui.cooking.fires.oven_stages import OvenStage, oven_stages
from cookstove_gui.cooking.supper.marks import Supper
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.plan.supper import suppers_between
from cookstove_gui.forecast.answers import FloatArray, RecordRow
from cookstove_gui.forecast.learning.track_record import track_record, verdict
from cookstove_gui.one_road import looked_back
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.entries import entry_words
from cookstove_gui.phrases.lane import LaneRow, lane_rows_of
from cookstove_gui.phrases.logbook.sessions import session_record_words
from cookstove_gui.phrases.plan.supper import supper_note
from cookstove_gui.reports.foretold import shown_projection
from cookstove_gui.situation import Inputs
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session, fold, reading_kelvin
from cookstove_gui.stove.stove import with_spots_named
from cookstove_gui.units import clock_text, degrees, iso_clock

_NOTED = (Kind.NOTE, Kind.OVEN_IN, Kind.OVEN_OUT, Kind.TURNED, Kind.PROBE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A session as it is opened."""

    session: Session
    inputs: Inputs  # about its last entry
    record: tuple[RecordRow, ...]  # the projections of this session
    suppers: tuple[Supper, ...] = ()  # the meals planned for it


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One reading of the oven."""

    minute: float
    heat: float  # K
    is_doubted: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """What is drawn of a session; minutes from its first entry in force."""

    number: int
    title: str
    began: datetime
    offset_minutes: int
    minutes: float  # until its last entry
    band: HeatBand
    facts: FiringFacts
    at: FloatArray  # (times,) min, of the oven's curve
    low: FloatArray  # (times,) K, tenth percentile
    middle: FloatArray
    high: FloatArray
    readings: tuple[Reading, ...]
    stages: tuple[OvenStage, ...]
    lane: tuple[LaneRow, ...]
    foretold: RecordRow | None  # the projection shown against what came
    notes: tuple[tuple[str, str], ...]  # clock and words
    record_words: str

    def place(self, at: datetime) -> float:
        """Minutes of an instant from the first entry."""
        return (at - self.began).total_seconds() / 60.0


def asked_about(desk: Desk, number: int) -> Asked | None:
    """What is asked when a session is opened; none while nothing is in force in it."""
    session = desk.logbook.session(number)
    rows = fold(session.entries)
    if not rows:
        return None
    stove = with_spots_named(desk.logbook.stove(session.stove), tuple(_named(rows)))
    study = desk.study
    told = study.record.rows if study is not None and study.stove_name == session.stove else ()
    mine = tuple(row for row in told if row.session == session.title and rows[0].at <= row.made_at <= rows[-1].at)
    inputs = desk.inputs_about(stove, session, rows[-1].at)
    suppers = suppers_between(desk.logbook, session.stove, rows[0].at, rows[-1].at)
    return Asked(session=session, inputs=inputs, record=mine, suppers=suppers)


def opened(asked: Asked) -> Opened:
    """The session as it is drawn; takes as long as following it does."""
    stove, session, band = asked.inputs.stove, asked.session, asked.inputs.band
    rows = fold(session.entries)
    facts = firing_facts(stove, session, band)
    assert facts is not None  # there are rows
    trace, doubted = looked_back(asked.inputs)
    at = np.array([_minutes(rows[0].at, moment) for moment in trace.at], dtype=np.float64)
    judged = track_record(session.stove, 1, asked.record)
    return Opened(
        number=session.number,
        title=session.title,
        began=rows[0].at,
        offset_minutes=rows[0].offset_minutes,
        minutes=_minutes(rows[0].at, rows[-1].at),
        band=band,
        facts=facts,
        at=at,
        low=trace.p10,
        middle=trace.p50,
        high=trace.p90,
        readings=tuple(
            Reading(
                minute=_minutes(rows[0].at, row.at), heat=reading_kelvin(row), is_doubted=row.number in doubted
            )
            for row in rows
            if row.kind is Kind.READING and row.spot == stove.oven_spot
        ),
        stages=oven_stages(at.tolist(), trace.p50.tolist(), band) if facts.curve else (),
        lane=lane_rows_of(rows, stove),
        foretold=shown_projection(asked.record, band),
        notes=(
            *(_supper_note(supper, rows[0].offset_minutes) for supper in asked.suppers),  # seen however many follow
            *((clock_text(row.at, row.offset_minutes), entry_words(row, stove)) for row in rows if row.kind in _NOTED),
        ),
        record_words=session_record_words(judged, [verdict(row) for row in asked.record]),
    )  # fmt: skip


def _supper_note(supper: Supper, offset_minutes: int) -> tuple[str, str]:
    edge = Edge(unit="F", now=supper.table_at, offset_minutes=offset_minutes)
    return edge.at(supper.table_at), supper_note(supper, edge)


def values_text(found: Opened, unit: str) -> str:
    """The oven's curve as a table for a spreadsheet: clock and percentiles in the unit shown, separated by tabs."""
    lines = [f"clock\tp10 °{unit}\tp50 °{unit}\tp90 °{unit}"]
    for minute, *heats in zip(found.at, found.low, found.middle, found.high, strict=True):
        clock = iso_clock(found.began + timedelta(minutes=float(minute)), found.offset_minutes)
        lines.append("\t".join((clock, *(f"{float(degrees(heat, unit)):.1f}" for heat in heats))))
    return "\n".join(lines) + "\n"


def _minutes(start: datetime, end: datetime) -> float:
    return (end - start).total_seconds() / 60.0


def _named(rows: tuple[Entry, ...]) -> list[str]:
    return [row.spot for row in rows if row.kind is Kind.READING and row.spot]
