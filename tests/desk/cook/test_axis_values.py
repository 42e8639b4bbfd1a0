"""The plot as a table: what is known, then what is projected, in the unit on the screen; in pan mode of its spots."""

from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np
import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.axis_values import values_text
from cookstove_gui.desk.cook.first_fire_course import first_fire_course
from cookstove_gui.desk.cook.good_rows import good_for
from cookstove_gui.desk.cook.pan_course import pan_course
from cookstove_gui.phrases.edge import spot_label
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import degrees
from tests.desk.conftest import Going, stand
from tests.held_clock import HeldClock


def table(desk: Desk) -> list[list[str]]:
    return [line.split("\t") for line in values_text(desk).splitlines()]


@pytest.mark.parametrize("unit", ["F", "C"])
def test_before_anything_is_known_only_the_heading_stands(held_desk: Desk, unit: str) -> None:
    held_desk.set_unit("C" if unit == "C" else "F")
    assert values_text(held_desk) == f"clock\tspot\twhat\tp10 °{unit}\tp50 °{unit}\tp90 °{unit}\n"


def test_the_table_holds_the_lines_of_the_plot_in_order_of_time(going: Going) -> None:
    desk = going((0, 300), (100, 500), spread=10)
    desk.set_unit("C")
    standing = desk.standing
    assert standing is not None
    rows = table(desk)[1:]
    known = [row for row in rows if row[2] == "known"]
    ahead = [row for row in rows if row[2] == "projected"]
    assert {row[1] for row in rows} == {"oven centre"}
    assert len(known) + len(ahead) == len(rows)
    for place, line in ((3, standing.trace.p10), (4, standing.trace.p50), (5, standing.trace.p90)):
        assert [float(row[place]) for row in known] == pytest.approx(line - 273.15, abs=0.06)
    middle = np.interp(standing.projection.minutes, (0, 100), (300, 500))
    assert [float(row[4]) for row in ahead] == pytest.approx((middle - 32) / 1.8, abs=0.06)
    assert all(float(row[3]) < float(row[4]) < float(row[5]) for row in ahead)
    clocks = [datetime.fromisoformat(row[0]) for row in rows]
    assert clocks == sorted(clocks)
    assert abs((clocks[0] - standing.trace.at[0]).total_seconds()) < 60.0


def test_the_clocks_of_the_table_are_local_and_say_so(burning_desk: Desk) -> None:
    shifted = replace(burning_desk.entries[-1], number=0, offset_minutes=-300, kind=Kind.NOTE, note="x", value="")
    burning_desk.play((shifted,))
    stand(burning_desk)
    rows = table(burning_desk)[1:]
    assert {row[0][-6:] for row in rows} == {"-05:00"}
    assert burning_desk.standing is not None
    times = [datetime.fromisoformat(row[0]) for row in rows if row[2] == "known"]
    for found, told in zip(times, burning_desk.standing.trace.at, strict=True):
        assert abs(found - told) < timedelta(seconds=1)


def test_of_a_fire_that_is_over_nothing_is_projected(burning_desk: Desk, held_clock: HeldClock) -> None:
    stand(burning_desk)
    held_clock.pass_minutes(24 * 60)
    assert {row[2] for row in table(burning_desk)[1:]} == {"known"}


def test_where_a_pan_goes_the_table_holds_the_plots_two_spots_and_not_the_oven(burning_desk: Desk) -> None:
    standing = stand(burning_desk).standing
    found = good_for(burning_desk, by_spot=False)
    assert standing is not None
    assert found is not None
    row = next(row for row in found.rows if not row.is_oven and len(row.spots) > 2)
    course = pan_course(burning_desk, row, "top_front_left")
    assert course is not None
    rows = [line.split("\t") for line in values_text(burning_desk, row, "top_front_left").splitlines()[1:]]
    labels = list(dict.fromkeys(one[1] for one in rows))
    assert labels == [f"top {one.name}" for one in course.spots]
    assert labels[0] == "top front left"
    read = [float(one[4]) for one in rows if one[1] == labels[0] and one[2] == "read"]
    assert read == [230.0, 410.0, 470.0]
    futures = degrees(np.median(standing.projection.of("top_front_left")[:, -1]), "F")
    last = [one for one in rows if one[1] == labels[0]][-1]
    assert last[2] == "projected"
    assert float(last[4]) == pytest.approx(float(futures), abs=0.06)


def test_while_first_fires_run_the_table_holds_the_hottest_spot(burning_desk: Desk) -> None:
    burning_desk.save_stove(replace(burning_desk.stove, is_new=True))
    stand(burning_desk)
    first = first_fire_course(burning_desk)
    assert first is not None
    assert {row[1] for row in table(burning_desk)[1:]} == {spot_label(burning_desk.stove, first.spot)}
