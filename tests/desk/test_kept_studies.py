"""What was learned is learned again once a reading means something else."""

from dataclasses import replace

import pytest

from cookstove_gui.desk.kept_studies import fingerprint
from cookstove_gui.stove.stove import stove_with_default_spots

STOVE = stove_with_default_spots("any")


@pytest.mark.parametrize("changed", [{"surface": "enamel"}, {"instrument": "long probe"}])
def test_a_spot_of_another_surface_or_thermometer_makes_another_past(changed: dict[str, str]) -> None:
    spots = tuple(replace(spot, **changed) if spot.name == "flue" else spot for spot in STOVE.spots)  # type: ignore[arg-type]
    assert fingerprint(replace(STOVE, spots=spots), [(1, 9)]) != fingerprint(STOVE, [(1, 9)])


def test_a_spot_drawn_elsewhere_leaves_the_past_as_it_was() -> None:
    moved = replace(STOVE, spots=(replace(STOVE.spots[0], label="mine"), *STOVE.spots[1:]))
    assert fingerprint(moved, [(1, 9)]) == fingerprint(STOVE, [(1, 9)])
