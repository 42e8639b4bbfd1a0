"""What goes into the oven is a row of the log, with what is not usual about it beside it."""

from datetime import timedelta

import pytest

from cookstove_gui.desk import Desk
from cookstove_gui.desk.plan.bake import BakeChoice, usual_mass, usual_start
from cookstove_gui.desk.plan.oven_rows import inside_now, look_at, probe, put_in, taken_out, turned
from cookstove_gui.errors import InputProblem
from cookstove_gui.stove.entries import Kind
from cookstove_gui.units import kelvin
from tests.held_clock import HeldClock

LOAF = "bread_loaf"
MINUTE = timedelta(minutes=1)


@pytest.fixture
def desk(held_desk: Desk, held_clock: HeldClock) -> Desk:
    held_desk.do(Kind.LIT, at_text="-90")
    return held_desk


def written(desk: Desk) -> list[tuple[Kind, str, str, str]]:
    return [(row.kind, row.value, row.unit, row.note) for row in desk.rows[1:]]


def test_a_usual_one_is_a_row_of_its_name(desk: Desk) -> None:
    put_in(desk, BakeChoice(key=LOAF, mass=usual_mass(LOAF), start=usual_start(LOAF)))
    assert written(desk) == [(Kind.OVEN_IN, "", "", "loaf of bread")]
    assert [one.went_in for one in inside_now(desk)] == [desk.clock()]


@pytest.mark.parametrize("minutes", [1, 25])
def test_one_that_went_in_before_is_written_at_its_clock(desk: Desk, minutes: int) -> None:
    at = desk.clock() - minutes * MINUTE
    put_in(desk, BakeChoice(key=LOAF, went_in=at, start=usual_start(LOAF) - 10))
    assert [row.at for row in desk.rows[1:]] == [at, at]
    assert [one.went_in for one in inside_now(desk)] == [at]


def test_less_than_a_minute_ago_or_ahead_is_now(desk: Desk) -> None:
    for seconds in (-59, 60):
        put_in(desk, BakeChoice(key=LOAF, went_in=desk.clock() + timedelta(seconds=seconds)))
        assert desk.rows[-1].at == desk.clock()


def test_what_goes_in_later_is_refused_with_its_clock(desk: Desk) -> None:
    with pytest.raises(InputProblem) as refused:
        put_in(desk, BakeChoice(key=LOAF, went_in=desk.clock() + 20 * MINUTE))
    assert refused.value.sentence == (
        f"It goes in at {desk.edge.clock(20)}, which is still to come; press this once it is in."
    )
    assert written(desk) == []


@pytest.mark.parametrize(("unit", "share", "value"), [("F", 1.5, "3.307"), ("C", 1.5, "1.5")])
def test_another_mass_is_written_in_the_unit_on_the_screen(desk: Desk, unit: str, share: float, value: str) -> None:
    desk.set_unit("C" if unit == "C" else "F")
    put_in(desk, BakeChoice(key=LOAF, mass=1.5))  # 3.307 lb by the international pound of 0.45359237 kg
    assert written(desk) == [(Kind.OVEN_IN, value, desk.mass_unit, "loaf of bread")]


@pytest.mark.parametrize(("share", "is_written"), [(1.009, False), (1.012, True), (0.985, True)])
def test_a_mass_within_one_in_a_hundred_is_the_usual(desk: Desk, share: float, is_written: bool) -> None:
    put_in(desk, BakeChoice(key=LOAF, mass=share * usual_mass(LOAF)))
    assert bool(desk.rows[-1].value) is is_written


@pytest.mark.parametrize(("more", "is_written"), [(0.4, False), (0.6, True), (-0.6, True)])
def test_another_start_is_a_probe_as_it_goes_in(desk: Desk, more: float, is_written: bool) -> None:
    start = usual_start(LOAF) + more
    put_in(desk, BakeChoice(key=LOAF, start=start))
    probes = [row for row in desk.rows if row.kind is Kind.PROBE]
    assert len(probes) == is_written
    if probes:
        (inside,) = inside_now(desk)
        assert inside.bake is not None
        assert inside.bake.start == pytest.approx(start, abs=0.05)
        assert probes[0].note == "loaf of bread"


def test_what_a_probe_shows_now_is_a_row_of_now(desk: Desk) -> None:
    desk.set_unit("C")
    put_in(desk, BakeChoice(key=LOAF, went_in=desk.clock() - 20 * MINUTE, core=kelvin(140.0, "F")))
    assert written(desk)[-1] == (Kind.PROBE, "60", "C", "loaf of bread")
    assert desk.rows[-1].at == desk.clock()
    (inside,) = inside_now(desk)
    assert [one.core for one in inside.probes] == [pytest.approx(333.15)]


@pytest.mark.parametrize(
    ("unit", "typed", "row"),
    [("F", "140", ("140", "F")), ("F", "60c", ("60", "C")), ("C", "60", ("60", "C")), ("C", "140f", ("140", "F"))],
)
def test_a_probe_is_written_as_it_was_typed(desk: Desk, unit: str, typed: str, row: tuple[str, str]) -> None:
    desk.set_unit("C" if unit == "C" else "F")
    put_in(desk, BakeChoice(key=LOAF, went_in=desk.clock() - 20 * MINUTE))
    (inside,) = inside_now(desk)
    probe(desk, inside, typed)
    assert written(desk)[-1] == (Kind.PROBE, *row, "loaf of bread")


@pytest.mark.parametrize("typed", ["300", "-20", "120c", "hot"])
def test_a_probe_that_is_no_food_is_refused(desk: Desk, typed: str) -> None:
    put_in(desk, BakeChoice(key=LOAF))
    (inside,) = inside_now(desk)
    before = desk.rows
    with pytest.raises(InputProblem):
        probe(desk, inside, typed)
    assert desk.rows == before


def test_each_thing_in_the_oven_has_its_own_rows(desk: Desk) -> None:
    put_in(desk, BakeChoice(key=LOAF))
    put_in(desk, BakeChoice(key="chicken"))
    loaf, chicken = inside_now(desk)
    turned(desk, loaf)
    look_at(desk, chicken, "+20")
    assert [(one.turned_at is not None, one.due_at) for one in inside_now(desk)] == [
        (True, None), (False, desk.clock() + 20 * MINUTE)
    ]  # fmt: skip
    taken_out(desk, loaf)
    assert [one.name for one in inside_now(desk)] == [chicken.name]


def test_a_look_at_a_clock_is_kept_as_minutes(desk: Desk) -> None:
    put_in(desk, BakeChoice(key=LOAF))
    (inside,) = inside_now(desk)
    look_at(desk, inside, desk.edge.clock(45))
    assert written(desk)[-1] == (Kind.DUE, "45", "min", "loaf of bread")
