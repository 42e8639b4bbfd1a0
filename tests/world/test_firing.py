"""The simulator itself: heat is conserved, gas gives it off as the textbooks say, and what should be hottest is."""

import numpy as np
import pytest
from ht import effectiveness_from_NTU
from scipy.constants import Stefan_Boltzmann

from tests.world import fire
from tests.world.cooks import Event
from tests.world.firing import BOILING, Firing, _exchange, advance, capacities, copy, put_on_top
from tests.world.parts import NODE
from tests.world.sessions import WorldSession, make_sessions
from tests.world.stoves import FAMILIES, make_stove


@pytest.fixture(scope="module")
def baked() -> list[WorldSession]:
    """One baking session of every family."""
    stoves = [make_stove(900 + number, family) for number, family in enumerate(FAMILIES)]
    return make_sessions([(stove, 1) for stove in stoves], purpose="bake", hours=4)


def stored_heat(session: WorldSession, firing: Firing) -> float:
    """Heat in the stove and its room above 0 K [J]."""
    heat = capacities(firing, session.world.parts) * firing.nodes
    heat[:, NODE["outdoors"]] = 0.0
    return float(heat.sum())


def test_heat_is_neither_made_nor_lost(baked: list[WorldSession]) -> None:
    for session in baked:
        first, last = session.moments[0][0], session.moments[-1][0]
        freed, left, brought = last.ledger[0]
        gained = stored_heat(session, last) - stored_heat(session, first)
        assert freed + brought - left - gained == pytest.approx(0.0, abs=1e-9 * freed)


def test_the_heat_set_free_is_that_of_the_wood_that_went(baked: list[WorldSession]) -> None:
    put_in = {"lit": 1.0, "wood": 1.0}
    for session in baked:
        last = session.moments[-1][0]
        burnt = [event for event in session.events if event.kind in put_in]
        lit = sum(event.kind == "lit" for event in burnt)
        wood = sum(_dry(session, event) for event in burnt if event.minute < len(session.moments) - 1)
        given = wood * (0.8 * fire.HEAT_OF_VOLATILES + 0.2 * fire.HEAT_OF_CHAR)
        given += lit * fire.PAPER_POWER * fire.PAPER_SECONDS
        assert last.ledger[0, 0] + last.bed.energy()[0] == pytest.approx(given, rel=1e-9)


def _dry(session: WorldSession, event: Event) -> float:
    moisture = session.world.moisture * (0.5 if event.kind == "lit" else 1.0)
    return event.value / (1.0 + moisture)


def test_net_heat_of_dry_wood_lies_in_the_published_range() -> None:
    # Technologie- und Foerderzentrum Straubing: net heat of dry oak 5.00, spruce 5.20, Scots pine 5.33 kWh/kg
    net = (1 - fire.CHAR_YIELD) * fire.HEAT_OF_VOLATILES + fire.CHAR_YIELD * fire.HEAT_OF_CHAR
    assert 5.00 <= net / 3.6e6 <= 5.33


def test_radiation_uses_the_codata_constant() -> None:
    assert pytest.approx(Stefan_Boltzmann, rel=1e-9) == fire.SIGMA


@pytest.mark.parametrize("transfer_units", [0.1, 0.7, 2.5])
def test_gas_cools_along_a_wall_as_effectiveness_says(transfer_units: float) -> None:
    # effectiveness for a wall at one temperature, Cr = 0 (Incropera, table 11.3), by the ht library
    carried = np.array([5.0])
    heat = _exchange(np.array([[transfer_units * 5.0]]), np.array([[400.0]]), np.array([900.0]), carried)
    effectiveness = effectiveness_from_NTU(transfer_units, Cr=0.0, subtype="counterflow")  # type: ignore[no-untyped-call]
    assert heat.sum() == pytest.approx(effectiveness * 5.0 * 500.0, rel=1e-6)


def test_the_side_where_hot_gas_rises_is_the_hottest(baked: list[WorldSession]) -> None:
    for session in baked:
        left, right = session.truth[60:240, 11].mean(), session.truth[60:240, 12].mean()
        assert session.world.hot_side == ("left" if left > right else "right")


def test_a_stove_left_alone_goes_back_to_its_room(baked: list[WorldSession]) -> None:
    session = baked[0]
    firing = copy(session.moments[-1][0])
    for _ in range(24 * 60):
        advance(firing, session.world.parts, 40.0)
    inside = firing.nodes[:, : NODE["outdoors"]]
    assert np.ptp(inside) < 25.0
    assert (inside > firing.nodes[:, NODE["outdoors"]].min() - 0.5).all()


def test_half_a_step_gives_nearly_the_same_stove(baked: list[WorldSession]) -> None:
    for session in baked[:3]:
        coarse, fine = copy(session.moments[90][0]), copy(session.moments[90][0])
        for _ in range(90):
            advance(coarse, session.world.parts, 20.0)
            for _ in range(2):
                advance(fine, session.world.parts, 10.0)
        # a step of half the length moves no part by more than a few kelvin in half an hour
        assert np.abs(coarse.nodes - fine.nodes).max() < 6.0


def test_water_boils_well_on_a_top_of_450_fahrenheit() -> None:
    # two litres in a thin pan; common practice, no source: about a quarter of an hour
    session = make_sessions([(make_stove(904, "cast left"), 1)], purpose="bake", hours=2)[0]
    firing = copy(session.moments[60][0])
    put_on_top(firing, 0, 0, 1, 2.0, 600.0, 10.0, 288.0)
    cooktop = (450.0 - 32.0) / 1.8 + 273.15
    minutes = 0
    while firing.nodes[0, NODE["pan_a"]] < BOILING - 0.5 and minutes < 90:
        for _ in range(3):
            firing.nodes[:, :18] = cooktop
            advance(firing, session.world.parts)
        minutes += 1
    assert 4 <= minutes <= 25
    for _ in range(30):
        firing.nodes[:, :18] = cooktop
        advance(firing, session.world.parts)
    assert firing.nodes[0, NODE["pan_a"]] == pytest.approx(BOILING, abs=0.01)
    assert firing.pan_water[0, 0] < 2.0
