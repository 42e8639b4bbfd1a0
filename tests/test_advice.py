"""What a cook is told to do follows one order of rules; its deadlines stand still until something is read or done."""

from dataclasses import replace
from datetime import timedelta
from functools import cache

import numpy as np
import pytest

from cookstove_gui.advice import LONG_PAST, Deadline, Subject, advise, arrival_of
from cookstove_gui.cooking.baking.catalogue import bake_of
from cookstove_gui.cooking.baking.doneness import Doneness
from cookstove_gui.cooking.baking.in_oven import InOven
from cookstove_gui.cooking.baking.turning import TurnReminder
from cookstove_gui.cooking.baking.under_way import UnderWay
from cookstove_gui.cooking.baking.whole_bake import WholeBake
from cookstove_gui.cooking.fires.first_fires import progress
from cookstove_gui.cooking.safety.cautions import Caution
from cookstove_gui.forecast.answers import (
    Action,
    ActionKind,
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
from cookstove_gui.situation import Alternative, Inputs, Memory, Standing, work_out
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session
from cookstove_gui.stove.stove import SpotKind, Stove
from cookstove_gui.units import kelvin
from tests.cooking.fires.cases import KINDLING, NEW, made
from tests.cooking.made import STOVE
from tests.rows import RISING, START, rows_of

BREAD = HeatBand(name="bread", low=kelvin(365.0, "F"), high=kelvin(425.0, "F"))
MIDDLE = 0.5 * (BREAD.low + BREAD.high)


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


@pytest.mark.parametrize(("chance", "subject"), [(0.59, Subject.PUT_IN), (0.6, Subject.WOOD_DUE)])
def test_a_turn_is_spoken_of_from_six_in_ten_on(chance, subject):
    assert advise(standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 5, chance),))).subject is subject


def test_without_a_reading_nothing_is_said_of_the_oven():
    unread = replace(standing(390.0), rows=RISING[:4])
    assert advise(unread).subject is Subject.NOTHING_READ
    assert advise(replace(unread, rows=RISING[:5])).subject is Subject.PUT_IN


@pytest.mark.parametrize(("in_min", "is_asked"), [(0, True), (10, True), (11, False)])
def test_air_left_wide_open_is_to_be_shut_within_ten_minutes_of_its_time(in_min, is_asked):
    # Ten minutes from now, which is four minutes after the latest row.
    found = advise(standing(390.0, turns=(turn(TurnKind.AIR_OPEN, in_min + 4),)))
    assert (found.subject is Subject.AIR_OPEN) is is_asked
    if is_asked:
        assert found.by is not None
        assert found.by.at == rising().now + timedelta(minutes=in_min)


def test_air_left_wide_open_comes_before_wood():
    both = (turn(TurnKind.RELOAD_DUE, 5), turn(TurnKind.AIR_OPEN, 5))
    assert advise(standing(390.0, turns=both)).subject is Subject.AIR_OPEN


@pytest.mark.parametrize(
    ("oven_f", "slope", "turns"),
    [
        (390.0, 0.0, ()), (378.0, -0.5, ()), (320.0, 0.5, ()), (300.0, 0.0, ()), (450.0, -0.5, ()), (450.0, 0.0, ()),
        (390.0, 0.0, (turn(TurnKind.AIR_OPEN, 5),)), (390.0, 0.0, (turn(TurnKind.RELOAD_DUE, 5),)),
        (390.0, 0.0, (turn(TurnKind.FIRE_OUT),)),
    ],
)  # fmt: skip
def test_a_reading_is_worth_taking_whatever_is_advised(oven_f, slope, turns):
    wanted = advise(standing(oven_f, slope, turns=turns, reading_in=10)).reading
    assert wanted is not None
    assert wanted.spot == "oven_centre"


# What is in the oven


def baking(
    done_in: float | None = 40.0,
    turn_in: float | None = None,
    due_in: float | None = None,
    *,
    key: str = "bread_loaf",
    width: float = 8.0,
) -> UnderWay:
    """A bake that went in half an hour before minute 50, done and to be turned so many minutes after it."""
    bake, now = bake_of(key), rising().now
    done = Quantiles(p10=None, p50=None, p90=None)
    if done_in is not None:
        done = Quantiles(p10=done_in - width, p50=done_in, p90=done_in + width)
    answer = Doneness(
        bake=bake, done_at=bake.done, core_now=None, done_min=done, chance_done=1.0, safe=None, safe_min=None,
        recipe_min=None, late_min=None,
    )  # fmt: skip
    walls = TurnReminder(
        hotter="oven_left",
        cooler="oven_right",
        difference=30.0,
        least=25.0,
        most=35.0,
        chance=1.0,
        in_min=turn_in or 0.0,
    )
    due = None if due_in is None else now + timedelta(minutes=due_in)
    inside = InOven(number=9, name=bake.name, bake=bake, went_in=now - timedelta(minutes=30), due_at=due)
    return UnderWay(inside=inside, asked_at=now, answer=answer, turn=None if turn_in is None else walls)


def with_bakes(base: Standing, *bakes: UnderWay) -> Standing:
    return replace(base, course=replace(base.course, bakes=bakes))


def test_nothing_else_is_put_in_while_a_loaf_is_in_the_oven():
    found = with_bakes(standing(390.0), baking(40.0, turn_in=20.0))
    assert advise(found).subject is Subject.BAKING
    said = words(found)
    assert said.startswith("The loaf of bread is done about 8:30, between 8:22 and 8:38. Turn it at 8:10.")
    assert "Put the loaves in" not in said


@pytest.mark.parametrize(
    ("bake", "subject"),
    [
        ({"done_in": 40.0, "turn_in": 10.0}, Subject.TURN),
        ({"done_in": 40.0, "turn_in": 10.1}, Subject.BAKING),
        ({"done_in": 10.0}, Subject.TAKE_OUT),
        ({"done_in": 10.1}, Subject.BAKING),
        ({"done_in": 40.0, "due_in": 10.0}, Subject.LOOK_AT),
        ({"done_in": -60.0}, Subject.TAKE_OUT),
        ({"done_in": -61.0}, Subject.PUT_IN),  # it is out by now, though nobody wrote it down
        ({"done_in": -1.0, "turn_in": -20.0}, Subject.TAKE_OUT),  # turning is no use any more
        ({"done_in": 30.0, "turn_in": 5.0, "due_in": 8.0}, Subject.TURN),  # the first to come
        ({"done_in": 30.0, "turn_in": 8.0, "due_in": 5.0}, Subject.LOOK_AT),
    ],
)
def test_what_in_the_oven_needs_the_cook_within_minutes_comes_first(bake, subject):
    assert advise(with_bakes(standing(390.0), baking(**bake))).subject is subject


def test_the_order_is_danger_then_the_loaf_that_is_done_then_the_fire_then_the_loaf_that_waits():
    out, soon, later = (turn(TurnKind.FIRE_OUT),), baking(5.0), baking(40.0)
    assert advise(with_bakes(standing(390.0, cautions=(DANGER,)), soon)).subject is Subject.DANGER
    assert advise(with_bakes(standing(390.0, turns=out), soon)).subject is Subject.TAKE_OUT
    assert advise(with_bakes(standing(390.0, turns=out), later)).subject is Subject.FIRE_OUT


def test_of_two_in_the_oven_the_one_that_is_done_first_is_told():
    found = advise(with_bakes(standing(390.0), baking(90.0, key="beef_roast"), baking(40.0)))
    assert found.inside is not None
    assert found.inside.inside.name == "loaf of bread"


def test_a_deadline_in_the_oven_that_has_gone_says_so():
    assert words(with_bakes(standing(390.0), baking(40.0, turn_in=-6.0))).startswith(
        "Turn the loaf of bread now, it was due at 7:44: oven left runs 40 to 60 °F hotter than oven right."
    )
    assert words(with_bakes(standing(390.0), baking(-5.0))).startswith("The loaf of bread was likely done at 7:45.")


def test_what_the_fire_will_not_bake_is_told():
    assert "hardly be done within three hours" in words(with_bakes(standing(300.0), baking(None)))


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


def test_the_window_of_an_arrival_never_leaves_out_where_the_line_enters():
    def window(enters: Quantiles, line: float | None) -> tuple[float, float, float | None] | None:
        outlook = standing(320.0, 0.5).outlook
        band = replace(outlook.band, enters_min=enters, line_enters_min=line)
        found = arrival_of(replace(outlook, band=band))
        if found is None:
            return None
        minutes = [None if at is None else (at - outlook.now).total_seconds() / 60.0 for at in (
            found.earliest, found.likely, found.latest)]  # fmt: skip
        return minutes[0], minutes[1], minutes[2]

    assert window(Quantiles(p10=20.0, p50=30.0, p90=50.0), 32.0) == (20.0, 32.0, 50.0)
    assert window(Quantiles(p10=20.0, p50=30.0, p90=50.0), 15.0) == (15.0, 15.0, 50.0)
    assert window(Quantiles(p10=20.0, p50=30.0, p90=50.0), 55.0) == (20.0, 55.0, 55.0)
    assert window(Quantiles(p10=20.0, p50=None, p90=None), 40.0) == (20.0, 40.0, None)
    assert window(Quantiles(p10=None, p50=None, p90=None), 40.0) == (40.0, 40.0, None)
    assert window(Quantiles(p10=20.0, p50=30.0, p90=50.0), None) is None


def test_an_oven_in_its_heat_is_told_until_when_and_for_which_bake():
    # 378 °F falling by half a kelvin a minute is under 365 °F at the step after 14.4 min.
    found = advise(standing(378.0, -0.5))
    assert found.leaves == rising().now + timedelta(minutes=15)
    assert found.bake_min == 50.0
    assert advise(standing(390.0)).leaves is None


def test_a_heat_that_no_bake_is_named_for_is_only_told_to_be_there():
    some = replace(BREAD, name="some")
    found = advise(replace(standing(378.0, -0.5), band=some))
    assert found.subject is Subject.PUT_IN
    assert (found.bake_min, found.bake) == (0.0, None)


STEP = Alternative(
    action=Action(kind=ActionKind.WOOD, value=2.2), outlook=standing(390.0).outlook, projection=rising().projection
)
WOOD_LATER = (turn(TurnKind.RELOAD_DUE, 40),)


def test_a_step_is_told_where_it_helps_and_not_beside_a_bake_that_is_called_for():
    assert advise(standing(390.0, step=STEP)).step is None
    for oven_f, slope in ((378.0, -0.5), (320.0, 0.5), (300.0, 0.0), (450.0, -0.5), (450.0, 0.0)):
        assert advise(standing(oven_f, slope, step=STEP)).step is STEP


def test_wood_to_come_stands_beside_the_heading_unless_a_step_says_it_or_the_oven_is_too_hot():
    at = rising().course.asked_at + timedelta(minutes=40)
    for oven_f, slope in ((390.0, 0.0), (378.0, -0.5), (320.0, 0.5)):
        assert advise(standing(oven_f, slope, turns=WOOD_LATER)).wood_by == Deadline(at=at, passed=False)
    assert advise(standing(450.0, -0.5, turns=WOOD_LATER)).wood_by is None
    assert advise(standing(320.0, 0.5, turns=WOOD_LATER, step=STEP)).wood_by is None


def test_wood_near_its_time_is_no_heading_on_the_way_up():
    found = advise(standing(320.0, 0.5, turns=(turn(TurnKind.RELOAD_DUE, 5),)))
    assert found.subject is Subject.COMING
    assert found.wood_by is not None


@pytest.mark.parametrize(("wait", "prepares"), [(2.0, False), (3.0, True), (45.0, True), (46.0, False)])
def test_dough_is_made_ready_from_three_quarters_of_an_hour_to_three_minutes_ahead(wait, prepares):
    found = standing(320.0, 0.5)
    band = replace(found.outlook.band, line_enters_min=wait)
    assert advise(replace(found, outlook=replace(found.outlook, band=band))).prepares is prepares


@pytest.mark.parametrize(
    ("oven", "subject"),
    [(BREAD.low - 0.1, Subject.NOT_COMING), (BREAD.low, Subject.PUT_IN), (BREAD.high, Subject.PUT_IN),
     (BREAD.high + 0.1, Subject.TOO_HOT)],
)  # fmt: skip
def test_the_ends_of_a_heat_belong_to_it(oven, subject):
    found = standing(300.0)
    at_heat = standing(390.0).projection
    outlook = replace(found.outlook, oven=Quantiles(p10=oven, p50=oven, p90=oven))
    assert advise(replace(found, outlook=outlook, projection=at_heat)).subject is subject


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


@pytest.mark.parametrize(
    ("minutes_ago", "wanted"),
    [
        (-40.0, Deadline(at=START, passed=False)), (0.0, Deadline(at=START, passed=False)),
        (0.5, Deadline(at=START, passed=True)), (60.0, Deadline(at=START, passed=True)), (60.5, None),
    ],
)  # fmt: skip
def test_a_deadline_has_passed_once_its_minute_is_over_and_is_dropped_after_an_hour(minutes_ago, wanted):
    found = standing(390.0, turns=(turn(TurnKind.RELOAD_DUE, 0),), reading_in=0)
    course = replace(found.course, asked_at=START)
    told = advise(replace(found, course=course, now=START + timedelta(minutes=minutes_ago), rows=RISING[-2:-1]))
    assert (told.by or told.wood_by) == wanted


@pytest.mark.parametrize(("minutes", "is_asked"), [(60.0, True), (60.5, False)])
def test_a_reading_that_was_wanted_over_an_hour_ago_is_not_asked_for(minutes, is_asked):
    found = standing(390.0, reading_in=0)
    told = advise(replace(found, now=found.course.asked_at + timedelta(minutes=minutes)))
    assert (told.reading is not None) is is_asked


@pytest.mark.parametrize(("in_min", "is_due"), [(4, True), (5, False), (20, False)])
def test_a_reading_is_due_now_when_less_than_a_minute_is_left(in_min, is_due):
    # The latest row is four minutes old.
    found = advise(standing(390.0, reading_in=in_min)).reading
    assert found is not None
    assert found.is_due is is_due
    assert found.by.at == rising().course.asked_at + timedelta(minutes=in_min)


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


@pytest.mark.parametrize(("minutes", "asks"), [(2.9, False), (3.0, True)])
def test_nothing_is_asked_for_while_the_walk_goes_on(minutes, asks):
    wood = rows_of((47, Kind.WOOD, "", "5", "lb"), first=len(RISING) + 1)  # no reading: the walk may be over
    found = replace(
        standing(390.0, reading_in=5), rows=(*RISING, *wood), now=RISING[-1].at + timedelta(minutes=minutes)
    )
    assert (advise(found).reading is not None) is asks


def test_no_reading_is_asked_for_where_none_is_worth_taking():
    assert advise(standing(390.0)).reading is None


# First fires


KINDLED = rows_of(
    (0, Kind.LIT, "", "", ""),
    (10, Kind.READING, "top_back_right", "200", "F"),
    (20, Kind.READING, "top_back_right", "260", "F"),
    (28, Kind.READING, "oven_centre", "120", "F"),
)


COLD, WARM = kelvin(99.0, "F"), kelvin(100.0, "F")  # a cooktop is cold below 100 °F


def between_fires(believed: float, *rows: Entry, out: bool = True, done_now: bool = False) -> Standing:
    """A new stove whose first fire has burnt or burns: its cooktop as believed [K], and the rows of this session."""
    base = rising()
    stages = progress(NEW, made(KINDLING)).stages
    first = replace(stages[0], session=0 if done_now else 1)
    tops = {spot.name for spot in STOVE.spots_of(SpotKind.TOP)}
    zones = {name: replace(zone, p50=believed if name in tops else WARM + 200.0) for name, zone in base.zones.items()}
    fires = replace(base.first_fires, needed=True, stages=(first, *stages[1:]))
    turns = (turn(TurnKind.FIRE_OUT),) if out else ()
    return replace(base, rows=rows, zones=zones, first_fires=fires, turns=turns)


LIT = rows_of((0, Kind.LIT, "", "", ""))
READ_COLD = rows_of((40, Kind.READING, "top_back_right", "99", "F"), first=2)
READ_WARM = rows_of((30, Kind.READING, "top_back_right", "100", "F"), first=2)
OVEN_READ = rows_of((41, Kind.READING, "oven_centre", "300", "F"), first=3)


@pytest.mark.parametrize(
    ("believed", "rows", "subject"),
    [
        (COLD, (), Subject.FIRST_FIRE),  # a new day, nothing lit yet
        (WARM, (), Subject.LET_COOL),  # still warm from yesterday
        (COLD, READ_WARM, Subject.FIRST_FIRE),  # not lit: what is believed decides
        (COLD, LIT, Subject.LET_COOL),  # lit, and not read since
        (COLD, (*LIT, *READ_WARM), Subject.LET_COOL),
        (COLD, (*LIT, *READ_WARM, *READ_COLD, *OVEN_READ), Subject.FIRST_FIRE),
        (COLD, (*LIT, *READ_COLD, *OVEN_READ), Subject.FIRST_FIRE),
        (COLD, (*LIT, *OVEN_READ), Subject.LET_COOL),  # only the oven was read
        (WARM, (*LIT, *READ_COLD), Subject.LET_COOL),  # read cold in one place and believed warm in another
    ],
)  # fmt: skip
def test_the_cooktop_is_cold_when_it_is_believed_to_be_and_was_read_so_since_the_fire(believed, rows, subject):
    assert advise(between_fires(believed, *rows)).subject is subject


def test_a_first_fire_is_told_while_it_burns_and_the_cold_waited_for_once_it_has_done_its_stage():
    assert advise(between_fires(WARM, *LIT, out=False)).subject is Subject.FIRST_FIRE
    assert advise(between_fires(WARM, *LIT, out=False, done_now=True)).subject is Subject.LET_COOL
    assert advise(between_fires(WARM, out=False)).subject is Subject.LET_COOL  # nothing was lit today


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
