"""The first fires as they are drawn: a hill for each, what did not count beside it, the certificate by the log."""

import statistics
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

import html5lib
import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.my_stove.describing import rename_stove
from cookstove_gui.desk.my_stove.first_fires import first_fires_picture, sign, signed_by, write_certificate
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Entry, Kind
from cookstove_gui.units import kelvin
from tests.held_clock import HeldClock
from tests.once import stood

KINDLING = ((8, 200), (16, 352), (25, 300), (40, 150))
MEDIUM = ((12, 170), (45, 490), (80, 588), (100, 510), (125, 230))
FULL = ((15, 250), (70, 690), (120, 640), (180, 430), (225, 300))


@pytest.fixture
def new_desk(held_desk: Desk) -> Desk:
    held_desk.save_stove(replace(held_desk.stove, is_new=True))
    return held_desk


def fire(
    desk: Desk,
    began: datetime,
    readings: tuple[tuple[int, int], ...],
    wood: tuple[int, ...] = (),
    air: tuple[tuple[int, float], ...] = (),
) -> int:
    """A made-up fire in a session of its own; returns the session's number."""
    what = [(0, Kind.LIT, "", "", "")]
    what += [(minute, Kind.READING, "top_front_left", str(heat), "F") for minute, heat in readings]
    what += [(minute + 1, Kind.READING, "top_back_right", str(heat - 40), "F") for minute, heat in readings]
    what += [(minute, Kind.WOOD, "", "2", "lb") for minute in wood]
    what += [(minute, Kind.AIR, "", str(opened), "") for minute, opened in air]
    session = desk.logbook.start_session(desk.stove.name, "fire")
    rows = [
        Entry(
            number=number,
            at=began + timedelta(minutes=minute),
            offset_minutes=-300,
            kind=kind,
            spot=spot,
            value=value,
            unit=unit,
        )
        for number, (minute, kind, spot, value, unit) in enumerate(sorted(what), start=1)
    ]
    desk.logbook.append(session.number, rows)
    return session.number


def all_three(desk: Desk, now: datetime) -> None:
    fire(desk, now - timedelta(hours=72), KINDLING)
    fire(desk, now - timedelta(hours=48), MEDIUM, wood=(20, 50))
    fire(desk, now - timedelta(hours=24), FULL, wood=(15,), air=((5, 1.0), (75, 0.2)))


def test_before_any_fire_there_is_no_hill_and_an_empty_certificate(new_desk: Desk) -> None:
    found = first_fires_picture(new_desk)
    assert (found.hills, found.done) == ((), 0)
    assert [line.day for line in found.certificate.lines] == ["", "", ""]
    assert not found.certificate.is_full


def test_a_try_that_does_not_count_keeps_its_hill_under_the_same_stage(new_desk: Desk, held_clock: HeldClock) -> None:
    fire(new_desk, held_clock.now - timedelta(hours=30), ((7, 170), (13, 150)))
    fire(new_desk, held_clock.now - timedelta(hours=26), KINDLING)
    found = first_fires_picture(new_desk)
    assert [(hill.place, bool(hill.missing)) for hill in found.hills] == [(0, True), (0, False)]
    assert found.done == 1


def test_rings_are_the_hottest_of_each_walk(new_desk: Desk, held_clock: HeldClock) -> None:
    fire(new_desk, held_clock.now - timedelta(hours=26), KINDLING)
    (hill,) = first_fires_picture(new_desk).hills
    assert [minute for minute, _ in hill.rings] == [8, 16, 25, 40]
    assert [round(heat, 3) for _, heat in hill.rings] == [round(kelvin(heat, "F"), 3) for _, heat in KINDLING]
    assert hill.hottest_spot == "top_front_left"
    assert hill.hottest == max(heat for _, heat in hill.rings)  # what stands beside the highest ring
    assert hill.counted == pytest.approx(kelvin(312, "F"))  # the next hottest of eight


def test_readings_within_six_minutes_are_of_one_walk(new_desk: Desk, held_clock: HeldClock) -> None:
    fire(new_desk, held_clock.now - timedelta(hours=26), ((8, 200), (14, 210), (22, 220), (29, 180)))
    (hill,) = first_fires_picture(new_desk).hills
    # The cooler spot is read a minute after each: 8, 9 and 14 are one walk, 15 begins the next, and so on.
    assert [minute for minute, _ in hill.rings] == [14, 15, 22, 29]


def test_the_certificate_fills_line_by_line_with_the_fire_that_counted(new_desk: Desk, held_clock: HeldClock) -> None:
    fire(new_desk, held_clock.now - timedelta(hours=72), KINDLING)
    lines = first_fires_picture(new_desk).certificate.lines
    assert [bool(line.day) for line in lines] == [True, False, False]
    assert lines[0].hottest == "312 °F"  # the hottest but one of eight readings, for one may be a slip
    began = (held_clock.now - timedelta(hours=72, minutes=300)).date()  # on a clock five hours behind
    assert lines[0].day == f"{began.day} {began:%B} {began.year}"


def test_it_is_full_when_the_last_is_done_and_goes_to_paper(
    new_desk: Desk, held_clock: HeldClock, tmp_path: Path
) -> None:
    all_three(new_desk, held_clock.now)
    found = first_fires_picture(new_desk)
    assert found.done == 3
    assert found.certificate.is_full
    write_certificate(new_desk, tmp_path / "first.html")
    page = (tmp_path / "first.html").read_text("utf-8")
    html5lib.HTMLParser(strict=True).parse(page)  # the HTML standard's own parser; it raises
    for line in found.certificate.lines:
        assert line.stage in page
        assert line.hottest in page
    assert "manual comes first" in page
    write_certificate(new_desk, tmp_path / "first.pdf")
    assert (tmp_path / "first.pdf").read_bytes().startswith(b"%PDF-")
    with pytest.raises(InputProblem, match="must end in"):
        write_certificate(new_desk, tmp_path / "first.txt")


def test_the_fire_in_hand_is_followed_until_it_is_cold(new_desk: Desk, held_clock: HeldClock) -> None:
    fire(new_desk, held_clock.now - timedelta(hours=72), KINDLING)
    number = fire(new_desk, held_clock.now - timedelta(minutes=127), MEDIUM, wood=(20, 50))
    new_desk.open_session(number)
    assert new_desk.show(stood(new_desk.inputs()))
    coming = first_fires_picture(new_desk).hills[-1].coming
    assert coming is not None
    assert new_desk.standing is not None
    projection = new_desk.standing.projection
    assert coming.minutes == tuple(projection.minutes)
    tops = [spot.name for spot in new_desk.stove.spots if spot.name.startswith("top_")]
    hottest = [max(float(projection.of(name)[future, 0]) for name in tops) for future in range(len(projection.kelvin))]
    assert coming.middle[0] == pytest.approx(statistics.median(hottest))
    assert coming.middle[0] > coming.middle[-1]
    assert all(low <= middle <= high for low, middle, high in zip(coming.low, coming.middle, coming.high, strict=True))
    assert coming.cold_min.p10 is None or coming.cold_min.p10 > 5.0
    assert all(hill.coming is None for hill in first_fires_picture(new_desk).hills[:-1])
    assert not first_fires_picture(new_desk).hills[-1].burns  # it has done its stage, and goes cold


def test_once_all_are_followed_only_the_fire_in_hand_goes_on(new_desk: Desk, held_clock: HeldClock) -> None:
    fire(new_desk, held_clock.now - timedelta(hours=80), ((7, 170), (13, 150)))
    fire(new_desk, held_clock.now - timedelta(hours=72), KINDLING)
    number = fire(new_desk, held_clock.now - timedelta(minutes=100), MEDIUM[:4], wood=(20, 50))
    new_desk.open_session(number)
    assert new_desk.show(stood(new_desk.inputs()))
    assert [hill.coming is not None for hill in first_fires_picture(new_desk).hills] == [False, False, True]
    assert [hill.burns for hill in first_fires_picture(new_desk).hills] == [False, False, True]
    held_clock.pass_minutes(24 * 60)
    assert [hill.coming for hill in first_fires_picture(new_desk).hills] == [None, None, None]


def test_the_name_on_the_certificate_goes_with_the_stoves_name_and_blank_takes_it_off(held_desk: Desk) -> None:
    sign(held_desk, "  Invented   Owner ")
    rename_stove(held_desk, "Kitchen stove")
    assert signed_by(held_desk) == "Invented Owner"
    assert first_fires_picture(held_desk).certificate.foot == "printed at the end, signed by Invented Owner"
    sign(held_desk, " ")
    assert signed_by(held_desk) == ""
    with pytest.raises(InputProblem, match="too long"):
        sign(held_desk, "x" * 61)
