"""The first fires as they are drawn: a hill for each fire that was tried, and the certificate that its log fills."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from cookstove_gui.cooking.fires.first_fires import Shortfall, Stage, Try, cold_below, stages, tries
from cookstove_gui.cooking.fires.logged_fires import kelvin_or_none, minutes_between
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.earlier import earlier_fires
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import local_day
from cookstove_gui.phrases.my_stove.first_fires import Certificate, certificate
from cookstove_gui.situation import Standing, fire_is_out
from cookstove_gui.stove.entries import Entry
from cookstove_gui.stove.stove import SpotKind, Stove

SIGNED = "first fires signed by, "  # and the stove's name
_LONGEST_NAME = 60
_APART = 6.0  # min; readings of one walk round the cooktop are nearer to each other, and the hottest stands for them


@dataclass(frozen=True, slots=True, kw_only=True)
class Coming:
    """How the hottest spot of the cooktop goes on from now: minutes from now and heat [K]."""

    minutes: tuple[float, ...]
    low: tuple[float, ...]
    middle: tuple[float, ...]
    high: tuple[float, ...]
    cold_min: Quantiles  # when it has gone cold


@dataclass(frozen=True, slots=True, kw_only=True)
class Hill:
    """One fire: its hottest readings of the cooktop over the minutes since it was lit."""

    place: int  # of its stage
    day: date
    minutes: float  # on record
    rings: tuple[tuple[float, float], ...]  # minutes, K
    hottest: float | None  # K, the hottest reading: the highest ring
    counted: float | None  # K, as the stage counts it: of many readings the next hottest, since one may be a slip
    hottest_spot: str
    loads: int
    missing: tuple[Shortfall, ...]
    coming: Coming | None = None  # of the fire that is followed now
    burns: bool = False  # still, and has not done its stage yet


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstFiresPicture:
    """Every stage in order, and the hills under each."""

    stages: tuple[Stage, ...]
    hills: tuple[Hill, ...]
    done: int  # stages
    certificate: Certificate


def first_fires_picture(desk: Desk) -> FirstFiresPicture:
    """What is drawn of the first fires; the session in hand is followed on from now."""
    stove = replace(desk.stove, first_fires_waived=False)
    tried = tries(desk.stove, earlier_fires(desk.logbook, stove, None))
    hills = [_hill(desk, one) for one in tried]
    number = desk.session.number if desk.session and desk.is_live else None
    if tried and desk.standing is not None and tried[-1].fire.session == number:
        burns = bool(hills[-1].missing) and not fire_is_out(desk.standing.turns)
        hills[-1] = replace(hills[-1], coming=_coming(desk.standing), burns=burns)
    done = sum(not one.missing for one in tried)
    found = certificate(desk.stove, tried, desk.unit, signed_by(desk))
    return FirstFiresPicture(stages=stages(), hills=tuple(hills), done=done, certificate=found)


def signed_by(desk: Desk) -> str:
    """Who signs the certificate of this stove; empty while nobody has put a name to it."""
    return desk.setting(SIGNED + desk.stove.name)


def sign(desk: Desk, name: str) -> None:
    """Put a name to the certificate; blank takes it off."""
    tidied = " ".join(name.split())
    if len(tidied) > _LONGEST_NAME:
        raise InputProblem(f"That name is too long for the certificate; use up to {_LONGEST_NAME} letters.")
    desk.set_setting(SIGNED + desk.stove.name, tidied)


def write_certificate(desk: Desk, path: Path) -> None:
    """Write the certificate as .pdf or .html."""
    from cookstove_gui.reports.writing import write_page

    write_page(path, "certificate", first_fires_picture(desk).certificate)


def certificate_pdf(desk: Desk) -> bytes:
    """The same page for the printer."""
    from cookstove_gui.reports.writing import pdf_bytes

    return pdf_bytes("certificate", first_fires_picture(desk).certificate)


def _hill(desk: Desk, one: Try) -> Hill:
    fire = one.fire
    heats = list(_top_readings(desk.stove, fire.rows))
    hottest = max(heats, key=lambda found: found[1], default=None)
    return Hill(
        place=one.place,
        day=local_day(fire.began, fire.rows[0].offset_minutes),
        minutes=fire.minutes,
        rings=_hottest_of_each_walk([(minutes_between(fire.began, row.at), heat) for row, heat in heats]),
        hottest=hottest[1] if hottest else None,
        counted=fire.hottest,
        hottest_spot=hottest[0].spot if hottest else "",
        loads=fire.loads,
        missing=one.missing,
    )


def _top_readings(stove: Stove, rows: Iterable[Entry]) -> Iterable[tuple[Entry, float]]:
    for row in rows:
        heat = kelvin_or_none(row)
        if heat is not None and stove.kind_of(row.spot) is SpotKind.TOP:
            yield row, heat


def _hottest_of_each_walk(readings: list[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    walks: list[list[tuple[float, float]]] = []
    for reading in readings:
        if walks and reading[0] - walks[-1][0][0] <= _APART:
            walks[-1].append(reading)
        else:
            walks.append([reading])
    return tuple(max(walk, key=lambda reading: reading[1]) for walk in walks)


def _coming(standing: Standing) -> Coming | None:
    import numpy as np

    projection = standing.projection
    tops = [spot.name for spot in standing.stove.spots_of(SpotKind.TOP) if spot.name in projection.spots]
    if not tops:
        return None
    hottest = np.max([projection.of(name) for name in tops], axis=0)  # (futures, times)
    low, middle, high = np.quantile(hottest, [0.1, 0.5, 0.9], axis=0)
    cold = hottest < cold_below()
    minutes = np.where(cold.any(axis=1), projection.minutes[cold.argmax(axis=1)], np.inf)
    quantiles = (float(value) for value in np.quantile(minutes, [0.1, 0.5, 0.9], method="higher"))
    p10, p50, p90 = (value if np.isfinite(value) else None for value in quantiles)
    return Coming(
        minutes=tuple(projection.minutes.tolist()),
        low=tuple(low.tolist()),
        middle=tuple(middle.tolist()),
        high=tuple(high.tolist()),
        cold_min=Quantiles(p10=p10, p50=p50, p90=p90),
    )
