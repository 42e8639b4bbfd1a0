"""The pans of the file and a cook's own, and a pan of water as the physics takes it."""

from dataclasses import replace

import numpy as np
import pytest

from cookstove_gui.cooking.pans.catalogue import Contact, PanOfWater, pan, pans, usual_contact
from cookstove_gui.errors import InputProblem

PANS = {one.key: one for one in pans()}


POT = PANS["stock pot"]


def test_a_litre_is_measured_out_cold() -> None:
    # density at 15 °C 999.10 kg/m3: CoolProp 8.0.0
    assert PanOfWater(POT, 2.0).physical(100.0).water == pytest.approx(1.9982, abs=1e-4)


def test_a_lid_keeps_nine_tenths_of_the_steam_in() -> None:
    # common practice, no source: a tenth of the evaporation gets out
    assert PanOfWater(replace(POT, lid=True), 2.0).physical(100.0).openness == pytest.approx(0.1)
    assert PanOfWater(POT, 2.0).physical(100.0).openness == 1.0


def test_a_pans_water_stands_as_high_as_it_does() -> None:
    # 2 litres on a base 0.24 m across stand 44.2 mm high, and wet 0.0333 m2 of the side
    physical = PanOfWater(POT, 2.0).physical(100.0)
    assert physical.base_area == pytest.approx(0.04524, rel=1e-3)
    assert physical.side_area == pytest.approx(0.03333, rel=1e-3)


@pytest.mark.parametrize("litres", [0.0, 100.0, float("nan")])
def test_no_pan_holds_that(litres: float) -> None:
    with pytest.raises(InputProblem, match="litres"):
        PanOfWater(POT, litres)


def test_own_pans_are_checked() -> None:
    own = pan("mine", material="copper", base="flat and thin", diameter=0.2, mass=1.5)
    assert usual_contact(own).median > 0
    with pytest.raises(InputProblem, match="cast iron"):
        pan("mine", material="gold", base="flat and thin", diameter=0.2, mass=1.5)
    with pytest.raises(InputProblem, match="flat and heavy"):
        pan("mine", material="copper", base="round", diameter=0.2, mass=1.5)
    with pytest.raises(InputProblem, match="metres"):
        pan("mine", material="copper", base="flat and thin", diameter=20, mass=1.5)
    with pytest.raises(InputProblem, match="kilograms"):
        pan("mine", material="copper", base="flat and thin", diameter=0.2, mass=1500)


@pytest.mark.parametrize(("room", "possible"), [(273.15, True), (273.0, False), (325.0, True), (325.1, False)])
def test_a_kitchen_lies_between_freezing_and_52_degrees(room: float, possible: bool) -> None:
    if possible:
        assert PanOfWater(POT, 1.0, room=room).kitchen.temperature_room == room
    else:
        with pytest.raises(InputProblem, match="kitchen"):
            PanOfWater(POT, 1.0, room=room)


@pytest.mark.parametrize(
    ("key", "diameter", "mass", "contact", "factor"),
    [("stock pot", 0.24, 1.8, 150, 1.5), ("kettle", 0.20, 1.1, 130, 1.6)],
)
def test_usual_pans_are_those_of_the_file(
    key: str, diameter: float, mass: float, contact: float, factor: float
) -> None:
    found = PANS[key]
    assert (found.diameter, found.mass, found.lid) == (diameter, mass, False)
    assert usual_contact(found) == Contact(median=contact, log_sd=pytest.approx(np.log(factor)))


@pytest.mark.parametrize(
    ("diameter", "mass", "possible"),
    [(0.05, 1.0, True), (0.04, 1.0, False), (0.6, 1.0, True), (0.61, 1.0, False), (0.2, 0.05, True), (0.2, 0.04, False),
     (0.2, 30.0, True), (0.2, 31.0, False)],
)  # fmt: skip
def test_the_sizes_that_a_pan_may_have(diameter: float, mass: float, possible: bool) -> None:
    def made():  # type: ignore[no-untyped-def]
        return pan("mine", material="copper", base="flat and thin", diameter=diameter, mass=mass)

    if possible:
        assert made().mass == mass
    else:
        with pytest.raises(InputProblem):
            made()


@pytest.mark.parametrize(("litres", "possible"), [(0.06, True), (0.05, False), (40.0, True), (40.5, False)])
def test_a_pan_holds_a_glass_to_ten_gallons(litres: float, possible: bool) -> None:
    if possible:
        assert PanOfWater(POT, litres).litres == litres
    else:
        with pytest.raises(InputProblem, match="isn't a pan of water"):
            PanOfWater(POT, litres)
