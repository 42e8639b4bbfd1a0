"""Made-up courses for the tests of advice."""

from dataclasses import replace
from datetime import timedelta
from functools import cache

import numpy as np

from cookstove_gui.cooking.fires.steps import Alternative
from cookstove_gui.cooking.safety.caution import Caution
from cookstove_gui.forecast.answers import (
    BandOutlook,
    NextReading,
    Outlook,
    Projection,
    Quantiles,
    Turn,
    TurnKind,
)
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.heading import detail, headline
from cookstove_gui.situation import Inputs, Standing
from cookstove_gui.stove.entries import Entry, HeatBand, Session
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import kelvin
from tests.cooking.made import STOVE
from tests.once import stood
from tests.rows import RISING, START

BREAD = HeatBand(name="bread", low=kelvin(365.0, "F"), high=kelvin(425.0, "F"))


def asked(rows: tuple[Entry, ...], minute: float, stove: Stove = STOVE, earlier: tuple[Session, ...] = ()) -> Inputs:
    return Inputs(stove=stove, rows=rows, now=START + timedelta(minutes=minute), band=BREAD, earlier=earlier)


@cache
def rising() -> Standing:
    return stood(asked(RISING, 50))


def standing(
    oven_f: float,
    slope: float = 0.0,
    *,
    turns: tuple[Turn, ...] = (),
    reading_in: int | None = None,
    cautions: tuple[Caution, ...] = (),
    step: Alternative | None = None,
) -> Standing:
    """A made-up course: every future of the oven a straight line from `oven_f` [°F], `slope` in kelvin a minute."""
    base = rising()
    minutes = base.projection.minutes
    line = kelvin(oven_f, "F") + slope * minutes
    futures = base.projection.kelvin.copy()
    futures[:, :, base.projection.spots.index("oven_centre")] = line
    inside = (line >= BREAD.low) & (line <= BREAD.high)
    enters = float(minutes[np.argmax(inside)]) if inside.any() else None
    after = minutes[(minutes >= (enters or 0.0)) & ~inside] if enters is not None else np.array([])
    leaves = float(after[0]) if len(after) else None
    at = Quantiles(p10=enters, p50=enters, p90=enters)
    stays = Quantiles(p10=None, p50=None if leaves is None or enters is None else leaves - enters, p90=None)
    outlook = Outlook(
        now=base.now,
        oven=Quantiles(p10=line[0], p50=float(line[0]), p90=line[0]),
        ahead=(),
        band=BandOutlook(
            low=BREAD.low, high=BREAD.high, chance_reached_3h=float(enters is not None), enters_min=at, stays_min=stays,
            line_enters_min=enters, line_leaves_min=leaves,
        ),
    )  # fmt: skip
    wanted = None if reading_in is None else NextReading(spot="oven_centre", in_min=reading_in, narrows=0.2)
    return replace(
        base,
        outlook=outlook,
        projection=Projection(now=base.now, minutes=minutes, spots=base.projection.spots, kelvin=futures),
        turns=turns,
        course=replace(base.course, turns=turns, next_reading=wanted),
        cautions=cautions,
        best_step=step,
    )


def words(found: Standing, minute: float = 50.0) -> str:
    edge = Edge(unit="F", now=START + timedelta(minutes=minute), offset_minutes=-300)
    return f"{headline(found, edge)} {detail(found, edge)}".strip()


def turn(kind: TurnKind, in_min: int = 0, chance: float = 0.9) -> Turn:
    return Turn(kind=kind, chance=chance, in_min=in_min)


DANGER = Caution(
    key="over_fired_flue", title="Flue pipe too hot", text="The pipe is hot.", urgent=True, order="Shut the air down."
)
