"""What a cook is told to do follows one order of rules; its deadlines stand still until something is read or done."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from functools import cache

import numpy as np
import pytest

from cookstove_gui.advice import LONG_PAST, Subject, advise
from cookstove_gui.cooking.baking.whole_bake import WholeBake
from cookstove_gui.cooking.safety.cautions import Caution
from cookstove_gui.forecast.answers import BandOutlook, NextReading, Outlook, Projection, Quantiles, Turn, TurnKind
from cookstove_gui.phrases.edge import Edge
from cookstove_gui.phrases.heading import detail, headline
from cookstove_gui.situation import Inputs, Memory, Standing, work_out
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.stove.stove import Stove, stove_with_default_spots
from cookstove_gui.units import kelvin

START = datetime(2026, 1, 10, 12, 0, tzinfo=UTC)
BREAD = HeatBand(name="bread", low=kelvin(365.0, "F"), high=kelvin(425.0, "F"))
STOVE = stove_with_default_spots("Invented stove")
NEW = replace(STOVE, is_new=True)
MIDDLE = 0.5 * (BREAD.low + BREAD.high)


def rows_of(*told: tuple[float, Kind, str, str, str]) -> tuple[Entry, ...]:
    return tuple(
        Entry(
            number=number, at=START + timedelta(minutes=minute), offset_minutes=-300, kind=kind, spot=spot,
            value=value, unit=unit,
        )
        for number, (minute, kind, spot, value, unit) in enumerate(told, start=1)
    )  # fmt: skip


RISING = rows_of(
    (0, Kind.LIT, "", "", ""),
    (0, Kind.AIR, "", "1", ""),
    (2, Kind.WOOD, "", "3", "lb"),
    (20, Kind.WOOD, "", "6", "lb"),
    (22, Kind.READING, "oven_centre", "170", "F"),
    (23, Kind.READING, "top_back_right", "330", "F"),
    (35, Kind.READING, "oven_centre", "240", "F"),
    (36, Kind.WOOD, "", "5", "lb"),
    (45, Kind.READING, "oven_centre", "290", "F"),
    (46, Kind.READING, "top_back_right", "450", "F"),
)


def asked(rows: tuple[Entry, ...], minute: float, stove: Stove = STOVE, earlier: tuple[Session, ...] = ()) -> Inputs:
    return Inputs(stove=stove, rows=rows, now=START + timedelta(minutes=minute), band=BREAD, earlier=earlier)


@cache
def rising() -> Standing:
    return work_out(asked(RISING, 50))


def standing(
    oven_f: float,
    slope: float = 0.0,
    *,
    turns: tuple[Turn, ...] = (),
    reading_in: int | None = None,
    cautions: tuple[Caution, ...] = (),
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
        best_step=None,
    )


def words(found: Standing, minute: float = 50.0) -> str:
    edge = Edge(unit="F", now=START + timedelta(minutes=minute), offset_minutes=-300)
    return f"{headline(found, edge)} {detail(found, edge)}".strip()


def turn(kind: TurnKind, in_min: int = 0, chance: float = 0.9) -> Turn:
    return Turn(kind=kind, chance=chance, in_min=in_min)


DANGER = Caution(
    key="over_fired_flue", title="Flue pipe too hot", text="The pipe is hot.", urgent=True, order="Shut the air down."
)


# The order of the rules


def test_danger_speaks_before_everything():
    found = advise(standing(390.0, cautions=(DANGER,), turns=(turn(TurnKind.RELOAD_DUE),)))
    assert found.subject is Subject.DANGER
    assert words(standing(390.0, cautions=(DANGER,))).startswith("Flue pipe too hot. Shut the air down.")


def test_a_caution_without_an_order_leaves_the_heading_alone():
    assert advise(standing(390.0, cautions=(replace(DANGER, order=""),))).subject is Subject.PUT_IN


def test_a_fire_that_is_out_speaks_before_the_oven_is_praised():
    found = advise(standing(390.0, turns=(turn(TurnKind.FIRE_OUT),)))
    assert found.subject is Subject.FIRE_OUT
    assert found.wood_by is None
    assert found.step is None


def test_an_open_door_is_to_be_closed_before_wood_is_asked_for():
    found = standing(390.0, turns=(turn(TurnKind.DOOR_OPEN), turn(TurnKind.RELOAD_DUE)))
    assert advise(found).subject is Subject.DOOR_OPEN
    assert "wood" not in words(found).lower()


def test_an_unlikely_turn_is_not_spoken_of():
    assert advise(standing(390.0, turns=(turn(TurnKind.FIRE_OUT, chance=0.5),))).subject is Subject.PUT_IN


# The band


def test_a_bake_is_called_for_when_all_of_it_stays_in_its_heat():
    found = advise(standing(390.0))
    assert found.subject is Subject.PUT_IN
    assert found.bake is not None
    assert found.bake.stays == 1.0
    assert words(standing(390.0)).startswith("Put the loaves in.")


def test_no_bake_is_called_for_that_the_oven_will_not_see_through():
    # 378 °F falling by half a kelvin a minute leaves 365 °F after some 15 min; bread takes 50.
    found = advise(standing(378.0, -0.5))
    assert found.subject is Subject.TOO_SHORT
    assert found.bake == WholeBake(stays=0.0, too_hot=0.0, too_cool=1.0)
    said = words(standing(378.0, -0.5))
    assert "Put the loaves in" not in said
    assert "It likely stays only until" in said
    assert "a bake takes about 50 min" in said
    assert "Build the fire up" in said


def test_an_oven_that_climbs_out_of_its_heat_wants_less_air_and_not_more_fire():
    said = words(standing(410.0, 0.5))
    assert "Shut the air down" in said
    assert "Build" not in said


def test_half_the_futures_are_enough_to_call_for_a_bake_and_fewer_are_not():
    steady, falling = standing(390.0), standing(378.0, -0.5)
    count = len(steady.projection.kelvin)
    for stay, subject in ((count // 2, Subject.PUT_IN), (count // 2 - 1, Subject.TOO_SHORT)):
        mixed = falling.projection.kelvin.copy()
        mixed[:stay] = steady.projection.kelvin[:stay]
        found = advise(replace(steady, projection=replace(steady.projection, kelvin=mixed)))
        assert found.subject is subject


def test_likely_is_where_the_line_enters():
    found = advise(standing(320.0, 0.5))
    assert found.arrival is not None
    assert found.subject is Subject.COMING
    assert (found.arrival.likely - rising().now).total_seconds() / 60.0 == pytest.approx(50.0)


def test_no_line_that_enters_no_likely():
    found = standing(300.0)
    assert advise(found).subject is Subject.NOT_COMING
    assert "likely to reach bread heat within three hours" in words(found)
    assert "might" not in words(found)


def test_dough_is_made_ready_while_the_heat_comes_and_not_when_the_oven_falls_out():
    assert words(standing(335.0, 0.5)).startswith("Shape the loaves.")
    assert "Shape" not in words(standing(360.0, -0.5))
    assert "Shape" not in words(standing(250.0, 0.5))


def test_an_oven_above_the_band_cools_into_it():
    assert advise(standing(450.0, -0.5)).subject is Subject.COOLING_IN
    assert advise(standing(450.0, 0.0)).subject is Subject.TOO_HOT


# Deadlines


def test_wood_is_the_thing_to_do_once_its_time_is_near():
    assert advise(standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 10),))).subject is Subject.WOOD_DUE
    far = advise(standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 40),)))
    assert far.subject is Subject.PUT_IN
    assert far.wood_by is not None


def test_a_deadline_that_has_passed_says_so_and_one_long_gone_nothing():
    found = replace(standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 2),)), now=START + timedelta(minutes=55))
    assert "Wood was due at 7:48: add some now" in words(found, 55)
    gone = replace(found, now=found.course.asked_at + timedelta(minutes=2) + LONG_PAST + timedelta(minutes=1))
    assert advise(gone).subject is not Subject.WOOD_DUE


def test_deadlines_stand_still_while_nothing_is_read_or_done():
    memory = Memory()
    told = [advise(work_out(asked(RISING, minute), memory)) for minute in (49.5, 52.0, 58.0, 66.0)]
    fresh = advise(work_out(asked(RISING, 66.0)))
    readings = {one.reading.by.at for one in told if one.reading is not None}
    assert len(readings) == 1
    assert fresh == told[-1]


def test_a_reading_moves_the_deadline():
    later = (*RISING, replace(RISING[-2], number=11, at=START + timedelta(minutes=60), value="330"))
    before, after = (work_out(asked(rows, 64)).course for rows in (RISING, later))
    assert before.asked_at < after.asked_at == later[-1].at


def test_nothing_is_asked_for_while_the_walk_goes_on():
    assert advise(replace(standing(390.0, reading_in=5), now=START + timedelta(minutes=48))).reading is None
    assert advise(replace(standing(390.0, reading_in=5), now=START + timedelta(minutes=50))).reading is not None


# First fires


KINDLED = rows_of(
    (0, Kind.LIT, "", "", ""),
    (10, Kind.READING, "top_back_right", "200", "F"),
    (20, Kind.READING, "top_back_right", "260", "F"),
    (28, Kind.READING, "oven_centre", "120", "F"),
)


def test_while_a_first_fire_burns_its_own_line_is_told():
    found = work_out(asked(KINDLED[:2], 12, NEW))
    assert advise(found).subject is Subject.FIRST_FIRE
    assert words(found, 12).startswith("First fire 1 of 3")


def test_the_next_first_fire_waits_until_the_stove_is_cold():
    hot = work_out(asked(KINDLED, 30, NEW))
    assert advise(hot).subject is Subject.LET_COOL
    assert "First fire 2" not in words(hot, 30)
    cooled = (
        *KINDLED,
        *(
            replace(KINDLED[1], number=5 + place, at=START + timedelta(minutes=400 + place), spot=spot.name, value="72")
            for place, spot in enumerate(STOVE.spots)
            if spot.name.startswith("top")
        ),
    )
    cold = work_out(asked(cooled, 410, NEW))
    assert advise(cold).subject is Subject.FIRST_FIRE
    assert words(cold, 410).startswith("First fire 2 of 3")


def test_no_food_and_no_wood_before_the_first_fires_are_done():
    said = words(work_out(asked(KINDLED, 30, NEW)), 30).lower()
    assert not any(word in said for word in ("loaves", "bread", "split", "add wood"))


def test_a_reading_due_is_asked_for_now_and_one_to_come_by_its_clock():
    late = replace(standing(390.0, reading_in=0), now=START + timedelta(minutes=50))
    assert "Worth reading now: oven centre." in words(late)
    assert "Worth reading by 7:56: oven centre." in words(standing(390.0, reading_in=10))
