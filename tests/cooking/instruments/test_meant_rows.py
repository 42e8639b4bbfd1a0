"""Infrared readings are corrected only where the instrument is known to be set wrong; the log keeps what was typed.

The round trip goes through the band radiance after Planck (8 to 14 µm), itself checked by the infrared rows of
`tests/reference`.
"""

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from cookstove_gui.cooking.instruments.meant_rows import meant_kelvin, meant_rows, meant_sessions
from cookstove_gui.stove.entries import Entry, Kind, Session, reading_kelvin
from cookstove_gui.stove.stove import Stove, default_spots, unchecked


def stove(setting: float | None, surface: str = "stove paint", offset: float = 0.0) -> Stove:
    instruments = () if setting is None else (
        replace(unchecked("spot reader", "infrared"), emissivity=setting, offset=offset),
    )  # fmt: skip
    return Stove(name="Invented", spots=default_spots(), cooktop_surface=surface, instruments=instruments)


def reading(value: str, spot: str = "top_back_left", unit: str = "C") -> Entry:
    at = datetime(2026, 1, 10, 12, 0, tzinfo=UTC)
    return Entry(number=1, at=at, offset_minutes=0, kind=Kind.READING, spot=spot, value=value, unit=unit)


def test_reading_with_a_wrong_setting_is_corrected_back_to_the_surface() -> None:
    from cookstove_gui.physics.infrared import shown_temperature

    shown = float(shown_temperature(523.15, 0.94, 0.70, 293.15)) - 273.15
    meant = meant_rows(stove(0.70), [reading(f"{shown:.2f}")])[0]
    assert reading_kelvin(meant) == pytest.approx(523.15, abs=0.1)


@pytest.mark.parametrize(
    ("setting", "surface", "spot"),
    [
        (None, "stove paint", "top_back_left"),
        (0.95, "stove paint", "top_back_left"),
        (0.95, "oxidised cast iron", "top_back_left"),
        (0.95, "polished cast iron", "top_back_left"),
        (0.95, "a surface of ones own", "top_back_left"),
        (0.50, "stove paint", "oven_centre"),
        (0.50, "stove paint", "room"),
    ],
    ids=["no instrument", "right", "within the range", "shiny", "unknown surface", "oven thermometer", "room"],
)
def test_other_readings_stay_as_typed(setting: float | None, surface: str, spot: str) -> None:
    row = reading("240", spot)
    assert meant_rows(stove(setting, surface), [row]) == (row,)


@pytest.mark.parametrize(("setting", "corrected"), [(0.87, True), (0.88, False), (0.98, False), (0.99, True)])
def test_only_a_setting_outside_the_surfaces_range_is_known_to_be_wrong(setting: float, corrected: bool) -> None:
    # stove paint: 0.88 to 0.98 (surfaces.toml)
    row = reading("240")
    assert (meant_rows(stove(setting), [row])[0] is not row) is corrected


def test_half_a_degree_is_not_worth_a_correction() -> None:
    # near the room the correction is about the excess times 0.07 / 0.94: 5.5 K above it 0.4 K, 12 K above it 0.9 K
    low, high = reading("25.5"), reading("32")
    assert meant_rows(stove(0.87), [low])[0] is low
    assert reading_kelvin(meant_rows(stove(0.87), [high])[0]) == pytest.approx(305.15 - 0.9, abs=0.2)


@pytest.mark.parametrize("spot", ["top_front_left", "side_left", "door_glass"])
def test_the_cooktop_the_sides_and_the_glass_are_pointed_at(spot: str) -> None:
    row = reading("200", spot)
    assert meant_rows(stove(0.70), [row])[0] is not row


def test_the_unit_that_was_typed_stays() -> None:
    meant = meant_rows(stove(0.70), [reading("400", unit="F")])[0]
    assert meant.unit == "F"
    assert float(meant.value) < 400


def test_offset_is_left_for_the_forecast_to_take_off() -> None:
    plain = reading_kelvin(meant_rows(stove(0.70), [reading("200")])[0])
    offset = reading_kelvin(meant_rows(stove(0.70, offset=4.0), [reading("204")])[0])
    assert offset == pytest.approx(plain + 4.0, abs=0.05)


def test_what_was_typed_is_kept_beside() -> None:
    row = reading("200")
    assert meant_kelvin(stove(0.95), row) is None
    assert (meant_kelvin(stove(0.70), row) or 0.0) < reading_kelvin(row)


def test_sessions_are_corrected_row_by_row() -> None:
    session = Session(number=1, stove="Invented", title="x", entries=(reading("200"),))
    assert meant_sessions(stove(0.70), [session])[0].entries == meant_rows(stove(0.70), session.entries)


def test_a_wall_beside_the_stove_stays_as_typed() -> None:
    wall = replace(reading("50"), spot="wall_left")
    assert meant_rows(stove(0.50), [wall]) == (wall,)
    assert meant_kelvin(stove(0.50), wall) is None


def _with_spot(described: Stove, name: str, **changed: str) -> Stove:
    spots = tuple(replace(spot, **changed) if spot.name == name else spot for spot in described.spots)  # type: ignore[arg-type]
    return replace(described, spots=spots)


def test_a_spot_of_another_surface_is_corrected_for_that() -> None:
    described = stove(0.94)  # right for stove paint
    assert meant_kelvin(described, reading("250")) is None
    rusty = _with_spot(described, "top_back_left", surface="rust")
    corrected = meant_kelvin(rusty, reading("250"))
    assert corrected is not None
    assert corrected > 523.15  # rust gives off less than the thermometer takes it for
    assert meant_kelvin(rusty, reading("250", spot="top_back_right")) is None
    assert meant_kelvin(_with_spot(described, "top_back_left", surface="no such surface"), reading("250")) is None


def test_a_spot_that_a_probe_reads_is_never_corrected_for_its_looks() -> None:
    described = stove(0.70)
    assert meant_kelvin(described, reading("250")) is not None
    probe = replace(described, instruments=(*described.instruments, unchecked("long probe", "probe")))
    assert meant_kelvin(_with_spot(probe, "top_back_left", instrument="long probe"), reading("250")) is None


def test_each_spot_is_corrected_for_the_setting_of_its_own_infrared_thermometer() -> None:
    described = stove(0.94)
    second = replace(unchecked("second gun", "infrared"), emissivity=0.70)
    two = replace(described, instruments=(*described.instruments, second))
    assert meant_kelvin(two, reading("250")) is None
    assert meant_kelvin(_with_spot(two, "top_back_left", instrument="second gun"), reading("250")) is not None
    assert meant_kelvin(_with_spot(two, "oven_rear", instrument="second gun"), reading("250", "oven_rear")) is not None
