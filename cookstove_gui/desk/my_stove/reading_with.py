"""What each spot shows to an infrared thermometer, and which thermometer reads it, as its owner says."""

from dataclasses import replace

from cookstove_gui.cooking.instruments.surface_readings import surface_at, surfaces
from cookstove_gui.desk.desk import Desk
from cookstove_gui.desk.my_stove.describing import change_spot
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.model.observation import instrument_at
from cookstove_gui.stove.stove import Spot, SpotKind, Stove


def surfaces_of(stove: Stove, spot: Spot) -> tuple[tuple[str, str], ...]:
    """What a spot may show: key and words, the usual of its part first; nothing to say of the air in the room."""
    if spot.kind is SpotKind.ROOM:
        return ()
    of_top = spot.kind is SpotKind.TOP
    usual = "the top’s own" if of_top else f"usual: {surface_at(stove, replace(spot, surface='')).name}"
    names = [surface.name for surface in surfaces()]
    own = [spot.surface] if spot.surface and spot.surface not in names else []
    return (("", usual), *((name, name) for name in (*own, *names)))


def instruments_of(stove: Stove, spot: Spot) -> tuple[tuple[str, str], ...]:
    """What may read a spot: key and words, the usual first; empty while no thermometer is described."""
    if not stove.instruments:
        return ()
    usual = instrument_at(stove, replace(spot, instrument="")).name
    names = [one.name for one in stove.instruments]
    own = [spot.instrument] if spot.instrument and spot.instrument not in names else []
    return (("", f"usual: {usual}" if usual else "the usual"), *((name, name) for name in (*own, *names)))


def keep_surface(desk: Desk, name: str, surface: str) -> None:
    """Say what a spot shows; empty for what its part usually shows."""
    change_spot(desk, name, lambda spot: replace(spot, surface=surface))


def keep_instrument(desk: Desk, name: str, instrument: str) -> None:
    """Say which thermometer reads a spot; empty for the usual one."""
    if instrument and desk.stove.instrument_named(instrument) is None:
        raise InputProblem(f"This stove has no thermometer “{instrument}”; describe it under Thermometers first.")
    change_spot(desk, name, lambda spot: replace(spot, instrument=instrument))
