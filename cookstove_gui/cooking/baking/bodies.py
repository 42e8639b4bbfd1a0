"""A bake as bodies that warm and dry, one for each member of an ensemble, and their cores in an oven."""

from functools import lru_cache

import numpy as np

from cookstove_gui.cooking.baking.catalogue import Bake
from cookstove_gui.cooking.baking.doubts import Doubt, Ensemble
from cookstove_gui.forecast.answers import FloatArray
from cookstove_gui.physics.bricks import EquivalentBody, equivalent_body, equivalent_ellipsoid
from cookstove_gui.physics.crumb import crumb_conductivity
from cookstove_gui.physics.eigenvalues import Shape
from cookstove_gui.physics.foods import conductivity, density, specific_heat
from cookstove_gui.physics.quantities import STANDARD_PRESSURE
from cookstove_gui.physics.radiation import radiation_coefficient
from cookstove_gui.physics.warming import Body, Exposure, Warming, warm_through
from cookstove_gui.physics.water import boiling_temperature
from cookstove_gui.resource_files import table
from cookstove_gui.units import kelvin

NODES = 16  # from its middle to its crust
COLDEST_OVEN, HOTTEST_OVEN = 240.0, 850.0  # K, an unheated shed in winter, and more than an iron oven bears
_USUAL_OVEN = kelvin(375.0, "F")
_TYPICAL = 340.0  # K, at which the shape is matched
_MEAN_OF = np.linspace(285.0, 365.0, 9)  # K, of the heat capacity
_SMALLEST_STEP, _LARGEST_STEP = 10.0, 60.0  # s
_FAT = 0.03  # m, half thickness from which the largest step will do


def step_of(bake: Bake) -> float:
    """Seconds [s] between two moments of its warming: a biscuit wants shorter ones than a roast."""
    share = body_of(bake, STANDARD_PRESSURE).half_thickness / _FAT
    return float(np.clip(_LARGEST_STEP * share**2, _SMALLEST_STEP, _LARGEST_STEP) // 5.0 * 5.0)


def warmed(
    bake: Bake,
    ensemble: Ensemble,
    oven: FloatArray,
    step: float,
    pressure: float = STANDARD_PRESSURE,
    until: tuple[float, int] | None = None,
) -> Warming:
    """Its members' warming in an oven [K], (instants,) or (instants, members), `step` seconds apart from going in.

    `until`: the core [K] from which no member need be followed, but for so many steps at least.
    """
    doubt = table("bakes.toml")["doubt"]
    air = np.clip(oven if oven.ndim == 2 else oven[:, None], COLDEST_OVEN, HOTTEST_OVEN)
    walls = np.clip(air + doubt["walls"] * ensemble.of(Doubt.WALLS), COLDEST_OVEN, HOTTEST_OVEN)
    body, exposure = _bodies(bake, ensemble, pressure)
    hottest = min(float(boiling_temperature(pressure)) - 2.0, 370.0)
    start = np.clip(bake.start + doubt["start"] * ensemble.of(Doubt.START), 230.0, hottest)
    return warm_through(body, exposure, start, air + np.zeros_like(walls), step, walls, NODES, until)


def body_of(bake: Bake, pressure: float) -> EquivalentBody:
    """The one-dimensional body that stands for it."""
    return _stands_for(bake, pressure)


def _bodies(bake: Bake, ensemble: Ensemble, pressure: float) -> tuple[Body, Exposure]:
    files = table("bakes.toml")
    oven, doubt, crust = files["oven"], files["doubt"], bake.crust
    stands_for, (levels, conducts) = _stands_for(bake, pressure), _conductivity(bake, pressure)
    dense = float(density(bake.composition, kelvin(68.0, "F"), bake.porosity))
    given = ensemble.factor(Doubt.HEAT, doubt["heat"])
    solid = ensemble.factor(Doubt.GAS, doubt["gas"] if bake.is_crumb else 0.0)  # more of it where it rose less
    body = Body(
        half_thickness=stands_for.half_thickness * ensemble.factor(Doubt.SIZE, doubt["size"]) * solid ** (-1 / 3),
        dimension=stands_for.dimension,
        conductivity=(levels, conducts),
        conduction=bake.conduction
        * ensemble.factor(Doubt.CONDUCTION, doubt["conduction"])
        * solid ** (_conduction_of_gas(bake, pressure) if bake.is_crumb else 0.0),
        heat_capacity=dense * solid * float(np.mean(np.asarray(specific_heat(bake.composition, _MEAN_OF)))),
        water=bake.composition.water * dense * solid,
    )
    exposure = Exposure(
        convection_coefficient=oven["convection"] * given,
        emissivity=np.minimum(oven["emissivity"] * np.sqrt(given), 1.0),
        openness=np.minimum(bake.openness * ensemble.factor(Doubt.OPENNESS, doubt["openness"]), 1.0),
        skin=crust.skin,
        crust_diffusivity=crust.diffusivity * ensemble.factor(Doubt.DRYING, doubt["drying"]),
        crust_conductivity=crust.conductivity * ensemble.factor(Doubt.CRUST, doubt["crust"]),
        water_activity=crust.activity,
        vapour_pressure=oven["vapour_pressure"],
        pressure=pressure,
    )
    return body, exposure


@lru_cache(maxsize=128)
def _conductivity(bake: Bake, pressure: float) -> tuple[FloatArray, FloatArray]:
    """Temperatures [K] and conductivities, to where its water boils."""
    boiling = float(boiling_temperature(pressure))
    levels: FloatArray = np.append(
        np.linspace(274.0, boiling - 12.0, 24), np.linspace(boiling - 11.0, boiling - 0.1, 24)
    )
    if bake.is_crumb:
        return levels, np.asarray(crumb_conductivity(bake.composition, levels, bake.porosity, pressure))
    return levels, np.asarray(conductivity(bake.composition, levels, bake.porosity))


@lru_cache(maxsize=128)
def _conduction_of_gas(bake: Bake, pressure: float) -> float:
    """The power of what is not gas with which a crumb's conductivity goes, at a typical temperature."""
    more = 1.1  # times what is not gas
    denser = 1.0 - more * (1.0 - bake.porosity)
    usual, dense = (
        float(crumb_conductivity(bake.composition, _TYPICAL, gas, pressure))
        for gas in (bake.porosity, max(denser, 0.0))
    )
    return float(np.log(dense / usual) / np.log(more))


@lru_cache(maxsize=128)
def _stands_for(bake: Bake, pressure: float) -> EquivalentBody:
    small, middle, large = (side / 2 for side in bake.sizes)
    if bake.form == "ellipsoid":
        return equivalent_ellipsoid((small, middle, large))
    oven = table("bakes.toml")["oven"]
    given = oven["convection"] + float(radiation_coefficient(oven["emissivity"], _USUAL_OVEN, 373.15))
    simple: tuple[tuple[Shape, float], ...] = (("wall", small), ("wall", middle), ("wall", large))
    if bake.form == "disc":  # flat or long: two of its sizes are its width
        flat = middle == large
        simple = (("wall", small if flat else large), ("cylinder", middle))
    conducts = bake.conduction * float(np.interp(_TYPICAL, *_conductivity(bake, pressure)))
    return equivalent_body(simple, given, conducts)
