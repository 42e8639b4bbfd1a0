"""Still air past hot faces: correlations agree with ht, hotter faces lose more."""

import numpy as np
import pytest
from ht import (
    Nu_horizontal_cylinder_Churchill_Chu,
    Nu_horizontal_plate_McAdams,
    Nu_sphere_Churchill,
    Nu_vertical_plate_Churchill,
)
from hypothesis import given
from hypothesis import strategies as st

from cookstove_gui.physics.convection import (
    convection_coefficient,
    horizontal_cylinder_nusselt,
    horizontal_plate_nusselt,
    rayleigh_number,
    sphere_nusselt,
    surface_heat_loss,
    vertical_plate_nusselt,
)
from cookstove_gui.physics.radiation import small_body_flux
from tests.physics.laws import law

grashofs = st.floats(1e5, 1e10)


@law
@given(grashofs, st.floats(0.65, 0.75))
def test_correlations_agree_with_ht(grashof: float, prandtl: float) -> None:
    rayleigh = grashof * prandtl
    for ours, theirs in (
        (vertical_plate_nusselt, Nu_vertical_plate_Churchill),
        (horizontal_cylinder_nusselt, Nu_horizontal_cylinder_Churchill_Chu),
        (sphere_nusselt, Nu_sphere_Churchill),
    ):
        assert ours(rayleigh, prandtl) == pytest.approx(theirs(prandtl, grashof), rel=1e-9)


@law
@given(st.floats(1e4, 1e10))
def test_level_plates_agree_with_ht(rayleigh: float) -> None:
    for facing_up in (True, False):
        theirs = Nu_horizontal_plate_McAdams(0.7, rayleigh / 0.7, buoyancy=facing_up)
        assert horizontal_plate_nusselt(rayleigh, facing_up) == pytest.approx(theirs, rel=1e-9)


@law
@given(st.sampled_from(["vertical", "up", "cylinder", "sphere"]), st.floats(310.0, 700.0), st.floats(5.0, 100.0))
def test_hotter_faces_lose_more(face, surface, hotter) -> None:  # type: ignore[no-untyped-def]
    usual, more = (
        float(convection_coefficient(face, 0.3, one, 293.15)) * (one - 293.15) for one in (surface, surface + hotter)
    )
    assert more > usual > 0.0


def test_a_face_down_loses_less_than_one_up() -> None:
    assert convection_coefficient("down", 0.18, 423.15, 293.15) < convection_coefficient("up", 0.18, 423.15, 293.15)


def test_thin_air_carries_less() -> None:
    assert convection_coefficient("vertical", 0.6, 423.15, 293.15, 75_000.0) < convection_coefficient(
        "vertical", 0.6, 423.15, 293.15
    )


def test_loss_is_convection_and_radiation() -> None:
    surfaces = np.array([350.0, 420.0, 520.0])
    carried = np.asarray(convection_coefficient("up", 0.18, surfaces, 293.15)) * (surfaces - 293.15)
    expected = carried + small_body_flux(0.9, surfaces, 293.15)
    np.testing.assert_allclose(surface_heat_loss("up", 0.18, surfaces, 293.15, 0.9), expected)


def test_rayleigh_grows_with_the_cube_of_length() -> None:
    small, large = (rayleigh_number(400.0, 300.0, length, 2e-5, 2.9e-5, 1 / 350) for length in (0.1, 0.2))
    assert large == pytest.approx(8 * small)


@pytest.mark.parametrize(
    ("arguments", "named"),
    [(("sideways", 0.3, 400.0, 293.0), "face"), (("vertical", 0.0, 400.0, 293.0), "length"),
     (("up", 0.3, 280.0, 293.0), "temperature_surface"), (("vertical", 0.3, 1500.0, 293.0), "temperature_surface"),
     (("vertical", 0.3, 400.0, 293.0, 1013.0), "pressure")],
)  # fmt: skip
def test_what_is_out_of_range_is_named(arguments, named) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=named):
        convection_coefficient(*arguments)
