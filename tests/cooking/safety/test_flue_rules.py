"""The flue's cautions: by what its reading is of, and carbon monoxide wherever coals get too little air or draught."""

from dataclasses import replace
from typing import Any

import pytest

from cookstove_gui.forecast.answers import TurnKind
from cookstove_gui.stove.stove import FlueReading
from tests.cooking.made import STOVE, log, zone
from tests.cooking.safety.asking import LIT, WARM_FLUE, cautions, estimated, noted, turn

BURNING = log(LIT, (60, "wood", "", "", ""))


def read_as(kind: FlueReading) -> Any:
    return replace(STOVE, flue_reading=kind)


def flue_read(*heats: float, start: float = 70) -> Any:
    """A fire that burns, and its flue read every ten minutes."""
    read = ((start + 10 * n, "reading", "flue", f"{heat}", "F") for n, heat in enumerate(heats))
    return log(LIT, (60, "wood", "", "", ""), *read)


def flue_cautions(heat: float, kind: FlueReading) -> set[str]:
    found = cautions(flue_read(heat, heat), [zone("flue", heat)], stove=read_as(kind))
    return set(found) & {"creosote", "over_fired_flue"}


@pytest.mark.parametrize(
    ("flue", "expected"),
    [(200, {"creosote"}), (249, {"creosote"}), (251, set()), (470, set()), (480, {"over_fired_flue"})],
)
@pytest.mark.parametrize("kind", [FlueReading.SINGLE, FlueReading.UNSAID])
def test_flue_bands(flue: float, expected: set[str], kind: FlueReading) -> None:
    """Rows "13.caution-cool" and "13.caution-hot" of tests/reference."""
    assert flue_cautions(flue, kind) == expected


@pytest.mark.parametrize(
    ("flue", "expected"),
    [(300, {"creosote"}), (395, {"creosote"}), (405, set()), (600, set()), (895, set()), (905, {"over_fired_flue"})],
)
def test_a_probe_in_the_gas_has_its_own_limits(flue: float, expected: set[str]) -> None:
    """Row "13.caution-gas" of tests/reference."""
    assert flue_cautions(flue, FlueReading.GAS) == expected


@pytest.mark.parametrize(("flue", "expected"), [(80, set()), (200, set()), (470, set()), (480, {"over_fired_flue"})])
def test_double_wall_pipe_is_never_called_too_cool(flue: float, expected: set[str]) -> None:
    assert flue_cautions(flue, FlueReading.DOUBLE) == expected


@pytest.mark.parametrize(("kind", "asks"), [(FlueReading.UNSAID, True), (FlueReading.SINGLE, False)])
@pytest.mark.parametrize("heat", [200, 600])
def test_who_has_not_said_what_the_flue_thermometer_reads_is_asked(kind: FlueReading, asks: bool, heat: float) -> None:
    found = cautions(flue_read(heat, heat), [zone("flue", heat)], stove=read_as(kind))
    (text,) = (found[key].text for key in ("creosote", "over_fired_flue") if key in found)
    assert ("choose what your flue thermometer reads" in text) is asks


def test_a_flue_still_warming_or_not_lately_read_is_not_called_too_cool() -> None:
    cool = [zone("flue", 200)]
    assert "creosote" in cautions(flue_read(200, 200), cool)
    assert "creosote" not in cautions(flue_read(200, 200, start=10), cool, after=44)
    assert "creosote" not in cautions(flue_read(200, 200), [zone("flue", 200, age=80)])
    assert "creosote" not in cautions(flue_read(200, 200), cool, [turn(TurnKind.FIRE_OUT)])


def test_one_cool_reading_or_one_while_it_warmed_is_not_yet_a_cool_flue() -> None:
    cool = [zone("flue", 200)]
    assert "creosote" not in cautions(flue_read(200), cool)
    assert "creosote" not in cautions(flue_read(300, 200), cool)
    assert "creosote" in cautions(flue_read(300, 200, 210), cool)
    assert "creosote" not in cautions(flue_read(200, 200, start=40), cool)  # the first within 45 minutes of lighting
    assert "creosote" in cautions(flue_read(200, 200, 200, start=40), cool)


@pytest.mark.parametrize(("after", "told"), [(119, True), (121, False)])
def test_a_cool_flue_over_coals_is_not_told_of(after: float, told: bool) -> None:
    assert ("creosote" in cautions(flue_read(200, 200), [zone("flue", 200, age=5)], after=after)) is told


@pytest.mark.parametrize(("age", "heeded"), [(2.0, True), (40.0, False)])
def test_a_number_just_read_is_heeded_even_where_the_belief_doubts_it(age: float, heeded: bool) -> None:
    doubted = replace(zone("flue", 380, age=age), last_reading=zone("flue", 900).p50)
    assert ("over_fired_flue" in cautions(log(LIT), [doubted])) is heeded


def test_before_the_fire_and_at_lighting_a_flue_not_known_to_be_warm_is_cold() -> None:
    assert "cold_flue" in cautions()
    assert "cold_flue" in cautions(log(LIT), [zone("flue", 70)])
    assert "cold_flue" in cautions(log(LIT), [estimated("flue", 350)])
    assert "cold_flue" not in cautions(log(LIT), [WARM_FLUE])
    assert "cold_flue" not in cautions(log(LIT), [zone("flue", 70)], after=20)


@pytest.mark.parametrize(
    ("kind", "heat", "cold"),
    [
        (FlueReading.SINGLE, 119, True),
        (FlueReading.SINGLE, 121, False),
        (FlueReading.GAS, 149, True),
        (FlueReading.GAS, 151, False),
        (FlueReading.DOUBLE, 300, True),  # its outer wall does not tell
    ],
)
def test_what_draws_is_judged_by_what_is_read(kind: FlueReading, heat: float, cold: bool) -> None:
    assert ("cold_flue" in cautions(log(LIT), [zone("flue", heat)], stove=read_as(kind))) is cold


def test_a_bypass_shut_on_a_cool_flue() -> None:
    rows = log(LIT, (20, "bypass", "", "0", ""))
    assert "bypass_early" in cautions(rows, [zone("flue", 90)])
    assert "bypass_early" not in cautions(rows, [WARM_FLUE])
    assert "bypass_early" not in cautions(rows)  # nothing tells of the flue
    assert "bypass_early" not in cautions(rows, [zone("flue", 90)], [turn(TurnKind.FIRE_OUT)])
    assert "bypass_early" not in cautions(log(LIT, (20, "bypass", "", "0.2", "")), [zone("flue", 90)])


def test_air_nearly_shut_on_a_fire() -> None:
    rows = log(LIT, (60, "wood", "", "", ""), (70, "air", "", "0.1", ""))
    assert "nearly shut" in cautions(rows)["carbon_monoxide"].text
    assert "carbon_monoxide" in cautions(rows, after=400)
    assert "carbon_monoxide" not in cautions(rows, after=600)  # the coals are gone
    assert "carbon_monoxide" not in cautions(rows, turns=[turn(TurnKind.FIRE_OUT)])


@pytest.mark.parametrize(
    ("air", "after", "told"),
    [("0.25", 125, True), ("0.25", 115, False), ("0.3", 125, False), ("0.5", 300, False)],
    ids=["coals at a quarter", "wood still burning", "more than a quarter", "half"],
)
def test_a_bed_of_coals_left_with_the_air_at_a_quarter(air: str, after: float, told: bool) -> None:
    rows = log(LIT, (60, "wood", "", "", ""), (90, "air", "", air, ""))
    found = cautions(rows, [WARM_FLUE], after=after)
    assert ("carbon_monoxide" in found) is told
    assert not told or "bed of coals" in found["carbon_monoxide"].text


def test_air_opened_again_ends_it() -> None:
    rows = log(LIT, (10, "air", "", "0", ""), (20, "air", "", "1", ""))
    assert "carbon_monoxide" not in cautions(rows)


@pytest.mark.parametrize(("flue", "room", "told"), [(60, 68, True), (75, 68, False)])
def test_a_flue_read_cooler_than_the_room_may_draw_backward(flue: float, room: float, told: bool) -> None:
    found = cautions(BURNING, [zone("flue", flue), zone("room", room)])
    assert ("carbon_monoxide" in found) is told
    assert not told or "turned back" in found["carbon_monoxide"].text


def test_a_cold_flue_without_a_fire_or_not_read_is_no_backward_draught() -> None:
    assert "carbon_monoxide" not in cautions((), [zone("flue", 60), zone("room", 68)])
    assert "carbon_monoxide" not in cautions(BURNING, [estimated("flue", 60), zone("room", 68)])
    assert "carbon_monoxide" not in cautions(BURNING, [zone("flue", 60)])


def test_smoke_noted_in_the_room_is_carbon_monoxide_too() -> None:
    rows = (*BURNING, noted(70, "Smoke came out at the door"))
    assert "Smoke in the room" in cautions(rows)["carbon_monoxide"].text
    assert "carbon_monoxide" not in cautions(rows, after=90)


def test_carbon_monoxide_says_air_everybody_out_call() -> None:
    """Row "13.monoxide" of tests/reference."""
    found = cautions(log(LIT, (10, "air", "", "0", "")))["carbon_monoxide"]
    assert found.urgent
    steps = [
        found.text.index(step) for step in ("Open the air and a window", "everyone out", "call the emergency number")
    ]
    assert steps == sorted(steps)
