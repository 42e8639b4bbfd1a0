"""What a stove can do by its log, each figure with the firings behind it; run off the screen's thread."""

from bisect import bisect_right
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta

import numpy as np

from cookstove_gui.cooking.fires import abilities
from cookstove_gui.cooking.fires.abilities import Ability, Figure, Shown
from cookstove_gui.cooking.fires.firing_facts import FiringFacts, firing_facts, sound_curve
from cookstove_gui.cooking.fires.logged_fires import Fire, fires, kelvin_or_none, standing_rows
from cookstove_gui.cooking.fires.outdoors import outdoors_of
from cookstove_gui.cooking.instruments.meant_rows import meant_sessions
from cookstove_gui.cooking.pans.boiling_time import Goal, water_time
from cookstove_gui.cooking.pans.catalogue import Contact, PanOfWater
from cookstove_gui.cooking.pans.learned_contact import learned_contact, pan_runs
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.band_tables import band_table
from cookstove_gui.desk.my_stove.hot_side import FireStage, PastReader, readings_while
from cookstove_gui.desk.my_stove.site import site_here
from cookstove_gui.desk.plan.water import DENSEST, WaterChoice, pan_of
from cookstove_gui.forecast.answers import Projection, Quantiles
from cookstove_gui.logbook.seasons import by_month
from cookstove_gui.phrases.edge import local_day
from cookstove_gui.reports.season_figures import season_row
from cookstove_gui.stove.entries import HeatBand, Kind, Session
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.stove.weather import WeatherKind, WeatherReading

FALLS = tuple(fall / 1.8 for fall in (25.0, 50.0, 100.0, 150.0))  # K; 25 to 150 °F may be asked about
TWO_QUARTS = 1.893  # litres
_HOT = frozenset({FireStage.STEADY, FireStage.FULL})  # while it is cooked on
_WARM_AFTER = timedelta(minutes=30)  # of lighting, before which no pan is put on; judgement
_LEAST_HEATS = 5  # readings of a spot, below which nothing is said of pans there; judgement
_FUTURES = 100
_LONGEST_BOIL_MIN = 60.0
_BEFORE, _AFTER = timedelta(hours=8), timedelta(hours=4)  # of a firing, within which weather is of its day; judgement
_COLD = 340.0  # K; an oven warmer than this at the match says little about a rise; judgement
_DRAWN_MIN = 180.0  # of a rise


@dataclass(frozen=True, slots=True, kw_only=True)
class AbilitiesAsked:
    """What is asked of a stove's past."""

    stove: Stove
    bands: tuple[HeatBand, ...]
    band: HeatBand  # the heat wanted
    fall: float  # K, until which a shut-down load is followed
    live: int  # number of the session that is being written; 0 for none
    weather: tuple[WeatherReading, ...]  # of the air outdoors
    pressure: float  # Pa, of the air at the stove
    now: datetime
    offset_minutes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Rise:
    """The oven of one fire from the match on: minutes, K."""

    session: int
    day: date
    curve: tuple[tuple[float, float], ...]
    is_today: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Abilities:
    """What a stove has shown."""

    asked: AbilitiesAsked | None
    figures: tuple[Figure, ...] = ()
    rises: tuple[Rise, ...] = ()
    outdoors: dict[int, float] = field(default_factory=dict)  # K, of the sessions whose day is known to have been so
    firings: int = 0

    def figure(self, key: str) -> Figure | None:
        """The figure of that key."""
        return next((one for one in self.figures if key_of(one) == key), None)


UNASKED = Abilities(asked=None)


def key_of(found: Figure) -> str:
    """What a figure is known by on the pages."""
    spot = found.spot if found.ability is Ability.BOIL else ""
    return f"{found.ability.name.lower()}:{found.band.name if found.band else spot}"


def abilities_asked(desk: Desk, fall: float) -> AbilitiesAsked:
    """As the logbook stands now."""
    named, wanted = band_table(desk).bands, desk.band
    bands = named if wanted in named else (*named, wanted)
    return AbilitiesAsked(
        stove=desk.stove,
        bands=tuple(sorted(bands, key=lambda band: (band is not wanted, band.low))),
        band=wanted,
        fall=fall,
        live=desk.session.number if desk.session is not None and desk.is_live else 0,
        weather=tuple(
            one
            for one in desk.logbook.facts.all_weather(desk.stove.name)
            if one.kind is WeatherKind.OUTDOORS and one.value is not None
        ),
        pressure=min(site_here(desk).pressure, DENSEST),
        now=desk.clock(),
        offset_minutes=desk.offset_minutes,
    )


def stove_abilities(asked: AbilitiesAsked, past: PastReader) -> Abilities:
    """Every figure the page shows; loads pandas for the months."""
    stove, band, oven = asked.stove, asked.band, asked.stove.oven_spot
    sessions = past(stove.name)
    found = fires(stove, sessions)
    facts = [one for session in sessions if (one := firing_facts(stove, session, band)) is not None]
    figures = (
        *(abilities.rises(found, oven, one) for one in asked.bands),
        abilities.holds(found, oven, band, 1),
        abilities.holds(found, oven, band, 2),
        abilities.lifts(found, oven),
        abilities.falls(found, oven),
        abilities.shut_down(found, oven, asked.fall),
        *_boils(asked, sessions, found),
        abilities.hottest_tops(found, stove),
        abilities.hottest_ovens(found, oven),
        _wood_a_bake(facts, band),
        _wood_a_month(facts, local_day(asked.now, asked.offset_minutes)),
    )
    return Abilities(
        asked=asked,
        figures=figures,
        rises=tuple(_rises(found, oven, asked.live)),
        outdoors=_outdoors(sessions, asked.weather),
        firings=len(found),
    )


def _rises(found: tuple[Fire, ...], oven: str, live: int) -> list[Rise]:
    curves = [(fire, sound_curve(fire.readings_of(oven))) for fire in found]
    return [
        Rise(
            session=fire.session,
            day=local_day(fire.began, fire.rows[0].offset_minutes),
            curve=tuple(reading for reading in curve if reading[0] <= _DRAWN_MIN),
            is_today=fire.session == live,
        )
        for fire, curve in curves
        if len(curve) > 1 and curve[0][1] < _COLD
    ]


def _boils(asked: AbilitiesAsked, sessions: tuple[Session, ...], fires_: tuple[Fire, ...]) -> list[Figure]:
    """Two quarts of cold water on each spot of the cooktop, at the heats it had while it was cooked on."""
    stove = asked.stove
    pan = pan_of(WaterChoice(litres=TWO_QUARTS))
    water = PanOfWater(pan, TWO_QUARTS, pressure=asked.pressure)
    runs = [run for run in pan_runs(stove, sessions, pan, pressure=asked.pressure) if run.goal is Goal.BOIL]
    contact = learned_contact(runs, pan)
    heats: dict[str, list[float]] = {}
    lit = [fire.began for fire in fires_]
    for row in readings_while(stove, meant_sessions(stove, sessions), _HOT):
        heat, begun = kelvin_or_none(row), bisect_right(lit, row.at)
        if heat is not None and begun and row.at - lit[begun - 1] >= _WARM_AFTER:
            heats.setdefault(row.spot, []).append(heat)
    numbers = {row.at: session.number for session in sessions for row in session.entries if row.kind is Kind.PAN}
    found = []
    for spot in stove.spots_of(SpotKind.TOP):
        own = heats.get(spot.name, [])
        if len(own) < _LEAST_HEATS:
            continue
        minutes = _minutes_to_boil(own, spot.name, water, asked, contact)
        shown = tuple(
            Shown(session=numbers[run.on_at], at=run.on_at, offset_minutes=run.offset_minutes, value=run.minutes)
            for run in runs
            if run.spot == spot.name and run.on_at in numbers
        )
        found.append(
            Figure(
                ability=Ability.BOIL, spot=spot.name, shown=shown, low=minutes.p10, middle=minutes.p50,
                high=minutes.p90, readings=len(own),
            )
        )  # fmt: skip
    return sorted(found, key=lambda one: float("inf") if one.middle is None else one.middle)


def _minutes_to_boil(
    heats: list[float], spot: str, water: PanOfWater, asked: AbilitiesAsked, contact: Contact
) -> Quantiles:
    """In each future the spot keeps one of the heats that it had."""
    kept = np.quantile(heats, (np.arange(_FUTURES) + 0.5) / _FUTURES)
    lasting = np.random.default_rng(0).permutation(kept)[:, None, None]  # apart from the doubts of the pan
    projection = Projection(
        now=asked.now, minutes=np.array([0.0, _LONGEST_BOIL_MIN]), spots=(spot,), kelvin=np.repeat(lasting, 2, axis=1)
    )
    return water_time(projection, spot, water, Goal.BOIL, contact=contact).minutes


def _wood_a_bake(facts: list[FiringFacts], band: HeatBand) -> Figure:
    """Of firings that came from cold to the heat wanted and whose every load says how much."""
    shown = [
        Shown(session=one.session, at=one.began, offset_minutes=one.offset_minutes, value=one.wood, wood=one.wood)
        for one in facts
        if one.rise_min is not None and 0 < one.loads == one.weighed
    ]
    return abilities.figure(Ability.WOOD_BAKE, shown, band)


def _wood_a_month(facts: list[FiringFacts], today: date) -> Figure:
    """Of months with a fire; the one that is not over only while there is no other."""
    rows = [season_row(one) for one in facts if one.weighed]
    months = [span for span in by_month(rows) if span.wood > 0.0]
    over = [span for span in months if (span.start.year, span.start.month) != (today.year, today.month)]
    shown = []
    for span in over or months:
        own = [one for one in facts if _month(one) == (span.start.year, span.start.month)]
        last = max(own, key=lambda one: one.began)
        shown.append(
            Shown(
                session=last.session, at=last.began, offset_minutes=last.offset_minutes, value=span.wood, wood=span.wood
            )
        )
    return abilities.figure(Ability.WOOD_MONTH, shown)


def _month(one: FiringFacts) -> tuple[int, int]:
    day = local_day(one.began, one.offset_minutes)
    return day.year, day.month


def _outdoors(sessions: tuple[Session, ...], weather: tuple[WeatherReading, ...]) -> dict[int, float]:
    """The air outdoors [K] of each session that says so, or on whose day it was typed under Flue, draught."""
    found = {}
    for session in sessions:
        rows = standing_rows(session.entries)
        told = outdoors_of(rows)
        if told is None and rows:
            near = [one for one in weather if rows[0].at - _BEFORE <= one.at <= rows[0].at + _AFTER]
            nearest = min(near, key=lambda one: abs(one.at - rows[0].at), default=None)
            told = nearest.value if nearest else None
        if told is not None:
            found[session.number] = told
    return found
