"""Firewood: how long a load burns at the present air, the heat it gives, and the wood for a whole bake."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from math import exp, log

from cookstove_gui.cooking.fires.fires import Fire, fires
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.physics.burning import burn_time, mean_burning_rate
from cookstove_gui.physics.firewood import heat_output, heating_value_net
from cookstove_gui.resource_files import table
from cookstove_gui.stove.entries import USUAL_SPLIT, Entry, Kind, Session, wood_count, wood_mass
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import WATTS_PER_BTU_PER_HOUR

BURN_FACTOR = 1.5  # the burn model is right within this either way, taken as its tenth and ninetieth percentile
USUAL_RATE = 2.0  # kg/h of a cookstove at baking heat; common practice, no source
RATE_FACTOR = 1.6  # by which that may be off, one standard deviation of the logarithm
RATE_LOG_SD = 0.35  # of one logged fire: weather, wood and cook differ; common practice, no source
LEAST_FIRE_MIN = 60.0  # a shorter fire says little of a rate
_NORMAL_P90 = 1.2815515655446004


@dataclass(frozen=True, slots=True, kw_only=True)
class Wood:
    """A class of firewood."""

    name: str
    examples: str
    heating_value: float  # J/kg, net, dry
    charring_rate: float  # m/s
    char_share: float
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """Wood put on the fire."""

    wood: Wood
    mass: float  # kg
    thickness: float = 0.08  # m, the smaller side of a split
    moisture: float = 18.0  # %, of the whole mass


@dataclass(frozen=True, slots=True, kw_only=True)
class Heat:
    """Heat into room, oven and pots."""

    watts: Quantiles

    @property
    def kilowatts(self) -> Quantiles:
        """[kW]"""
        return _times(self.watts, 1e-3)

    @property
    def btu_per_hour(self) -> Quantiles:
        """[BTU/h]"""
        return _times(self.watts, 1.0 / WATTS_PER_BTU_PER_HOUR)


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadAnswer:
    """How a load burns at one setting of the air."""

    to_coals_min: Quantiles
    heat: Heat  # meanwhile


@dataclass(frozen=True, slots=True, kw_only=True)
class BurningRate:
    """What is believed of how fast this stove takes wood at baking heat: lognormal."""

    median: float  # kg/h
    log_sd: float
    fires: int  # logged ones behind it


@cache
def woods() -> tuple[Wood, ...]:
    """The classes of `resources/firewood.toml`."""
    return tuple(
        Wood(
            name=row["name"],
            examples=row["examples"],
            heating_value=row["heating_value"] * 1e6,
            charring_rate=row["charring_rate"] * 1e-3 / 60.0,
            char_share=row["char_share"],
            source=row["source"],
        )
        for row in table("firewood.toml")["wood"]
    )


def wood_of(name: str) -> Wood:
    """The class of that name, or the one that names it among its examples.

    Raises
    ------
    InputProblem
        If there is none.
    """
    wanted = name.strip().casefold()
    for wood in woods():
        if wanted == wood.name or wanted in [kind.strip() for kind in wood.examples.split(",")]:
            return wood
    kinds = "; ".join(f"{wood.name} ({wood.examples})" for wood in woods())
    raise InputProblem(f"“{name}” is not a known wood; choose one of {kinds}.")


def usual_moisture(name: str) -> float:
    """Moisture [% of the whole mass] of wood called dry, seasoned, half dry or green."""
    rows = table("firewood.toml")["moisture"]
    found = next((row for row in rows if row["name"] == name.strip().casefold()), None)
    if found is None:
        raise InputProblem(f"Wood is not called “{name}” here; choose one of {', '.join(row['name'] for row in rows)}.")
    return float(found["percent"][1])


def load_burn(load: Load, air_open: float) -> LoadAnswer:
    """How long a load burns to coals with the air so far open, and the heat it gives meanwhile.

    Parameters
    ----------
    load : Load
    air_open : float
        0 (shut) to 1 (wide open).

    Returns
    -------
    LoadAnswer

    Raises
    ------
    InputProblem
        If the load or the air is none.
    """
    if not 0.0 <= air_open <= 1.0:
        raise InputProblem(f"Air {air_open:g} open is none; write 0 (shut) to 1 (wide open).")
    if not 0.05 <= load.mass <= 60.0 or not 0.01 <= load.thickness <= 0.25 or not 0.0 <= load.moisture <= 60.0:
        raise InputProblem(
            "That load is none; write 0.05 to 60 kg of splits 1 to 25 cm thick with 0 to 60 % of water in them."
        )
    stove = table("firewood.toml")["stove"]
    middle = float(burn_time(load.thickness, air_open, load.wood.charring_rate, load.moisture, stove["air_shut_share"]))
    value = float(heating_value_net(load.wood.heating_value, load.moisture))
    worst, usual, best = stove["efficiency"]

    def watts(seconds: float, efficiency: float) -> float:
        rate = float(mean_burning_rate(load.mass, seconds, load.wood.char_share))
        return float(heat_output(rate, value, efficiency))

    return LoadAnswer(
        to_coals_min=Quantiles(p10=middle / BURN_FACTOR / 60, p50=middle / 60, p90=middle * BURN_FACTOR / 60),
        heat=Heat(
            watts=Quantiles(
                p10=watts(middle * BURN_FACTOR, worst), p50=watts(middle, usual), p90=watts(middle / BURN_FACTOR, best)
            )
        ),
    )


def burning_rate(stove: Stove, sessions: Iterable[Session]) -> BurningRate:
    """How fast this stove takes wood, after its logged fires; the usual rate where none says.

    The usual rate is updated in the logarithm, each fire of an hour or more whose wood is known being one reading. The
    last load is left out, for it burns on after the log.
    """
    precision = 1.0 / log(RATE_FACTOR) ** 2
    weighed, count = log(USUAL_RATE) * precision, 0
    for fire in fires(stove, sessions):
        rate = rate_of(fire)
        if rate is not None:
            weighed += log(rate) / RATE_LOG_SD**2
            precision += 1.0 / RATE_LOG_SD**2
            count += 1
    return BurningRate(median=exp(weighed / precision), log_sd=precision**-0.5, fires=count)


def rate_of(fire: Fire) -> float | None:
    """Mean rate [kg/h] at which one fire took its wood, up to its last load; None where the log does not say."""
    loads = [(row, kilograms_of(row)) for row in fire.rows if row.kind is Kind.WOOD]
    masses = [mass for _, mass in loads]
    if len(loads) < 2 or any(mass is None or mass <= 0 for mass in masses):
        return None
    minutes = (loads[-1][0].at - fire.began).total_seconds() / 60.0
    if minutes < LEAST_FIRE_MIN:
        return None
    return sum(mass for mass in masses[:-1] if mass is not None) / (minutes / 60.0)


def wood_for(minutes: float, rate: BurningRate) -> Quantiles:
    """Wood [kg] that keeps the stove at baking heat for so long: warming up and the whole bake."""
    hours = max(minutes, 0.0) / 60.0
    spread = exp(_NORMAL_P90 * rate.log_sd)
    return Quantiles(p10=hours * rate.median / spread, p50=hours * rate.median, p90=hours * rate.median * spread)


def heat_at(rate: BurningRate, wood: Wood, moisture: float) -> Heat:
    """Heat that the stove gives while it takes wood at a rate."""
    value = float(heating_value_net(wood.heating_value, moisture))
    spread = exp(_NORMAL_P90 * rate.log_sd)
    worst, usual, best = table("firewood.toml")["stove"]["efficiency"]
    per_second = rate.median / 3600.0
    return Heat(
        watts=Quantiles(
            p10=float(heat_output(per_second / spread, value, worst)),
            p50=float(heat_output(per_second, value, usual)),
            p90=float(heat_output(per_second * spread, value, best)),
        )
    )


def kilograms_of(row: Entry) -> float | None:
    """Mass [kg] of a wood row: as weighed, or by the count of splits in its note; None where it says neither."""
    try:
        mass = wood_mass(row)
    except InputProblem:
        return None
    if mass is not None:
        return mass
    count = wood_count(row)
    return None if count is None else count * USUAL_SPLIT


def _times(quantiles: Quantiles, factor: float) -> Quantiles:
    return Quantiles(
        p10=None if quantiles.p10 is None else quantiles.p10 * factor,
        p50=None if quantiles.p50 is None else quantiles.p50 * factor,
        p90=None if quantiles.p90 is None else quantiles.p90 * factor,
    )
