"""The plot as a table: what is known, then what is projected, in the unit on the screen."""

from datetime import datetime

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.cook.axis_values import values_text
from cookstove_gui.units import degrees
from tests.desk.conftest import stand
from tests.held_clock import HeldClock


def table(desk: Desk) -> list[list[str]]:
    text = values_text(desk)
    assert text.endswith("\n")
    return [line.split("\t") for line in text.splitlines()]


@pytest.mark.parametrize("unit", ["F", "C"])
def test_before_anything_is_known_only_the_heading_stands(held_desk: Desk, unit: str) -> None:
    held_desk.set_unit("C" if unit == "C" else "F")
    assert table(held_desk) == [["clock", "what", f"p10 °{unit}", f"p50 °{unit}", f"p90 °{unit}"]]


@pytest.mark.parametrize("unit", ["F", "C"])
def test_known_and_projected_meet_at_now_and_go_on_in_time(burning_desk: Desk, unit: str) -> None:
    burning_desk.set_unit("C" if unit == "C" else "F")
    standing = stand(burning_desk).standing
    assert standing is not None
    rows = table(burning_desk)[1:]
    known = [row for row in rows if row[1] == "known"]
    projected = [row for row in rows if row[1] == "projected"]
    assert len(known) + len(projected) == len(rows)
    assert len(known) == len(standing.trace.at)
    clocks = [datetime.fromisoformat(row[0]) for row in rows]
    assert clocks == sorted(clocks)
    assert all(float(low) <= float(middle) <= float(high) for _, _, low, middle, high in rows)
    assert abs((clocks[0] - standing.trace.at[0]).total_seconds()) < 60.0
    assert float(known[-1][3]) == pytest.approx(float(degrees(standing.trace.p50[-1], burning_desk.unit)), abs=0.051)
    assert abs((datetime.fromisoformat(projected[0][0]) - standing.now).total_seconds()) < 6 * 60.0


def test_of_a_fire_that_is_over_nothing_is_projected(burning_desk: Desk, held_clock: HeldClock) -> None:
    stand(burning_desk)
    held_clock.pass_minutes(24 * 60)
    assert {row[1] for row in table(burning_desk)[1:]} == {"known"}
