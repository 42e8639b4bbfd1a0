"""Firewood: how long a load burns at a setting of the air, the heat it gives, and the wood for a whole bake."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from math import exp, log
from typing import Any

from cookstove_gui.cooking.belief import next_one
from cookstove_gui.cooking.by_name import by_name
from cookstove_gui.cooking.fires.logged_fires import Fire, fires, minutes_between
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import NORMAL_P90, Quantiles
from cookstove_gui.physics.burning import burn_time, flame_share
from cookstove_gui.physics.firewood import heat_output, heating_value_net
from cookstove_gui.resource_files import table
from cookstove_gui.stove.entries import USUAL_SPLIT, Entry, Kind, Session, stated_mass, wood_count
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import WATTS_PER_BTU_PER_HOUR

BURN_FACTOR = 1.5  # from the middle to the tenth and ninetieth percentile of a burn time; judgement
USUAL_RATE = 2.0  # kg/h of a cookstove at baking heat; common practice, no source
RATE_FACTOR = 1.6  # by which that may be off either way, one standard deviation of the logarithm; judgement
RATE_LOG_SD = 0.35  # of one logged fire: weather, wood and cook differ; judgement
LEAST_FIRE_MIN = 60.0  # a shorter fire says too little about a rate; judgement


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
        return self.watts.times(1e-3)

    @property
    def btu_per_hour(self) -> Quantiles:
        """[BTU/h]"""
        return self.watts.times(1.0 / WATTS_PER_BTU_PER_HOUR)


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadBurn:
    """How a load burns at one setting of the air."""

    to_coals_min: Quantiles
    heat: Heat  # meanwhile


@dataclass(frozen=True, slots=True, kw_only=True)
class BurningRate:
    """The belief about how fast this stove takes wood at baking heat in the next fire: lognormal."""

    median: float  # kg/h
    log_sd: float  # standard deviation of the logarithm
    fires: int  # how many logged fires it rests on


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
    """The class of that name, or the one that has it among its examples; raises InputProblem if there is none."""
    wanted = name.strip().casefold()
    for wood in woods():
        if wanted == wood.name or wanted in [kind.strip() for kind in wood.examples.split(",")]:
            return wood
    kinds = "; ".join(f"{wood.name} ({wood.examples})" for wood in woods())
    raise InputProblem(f"“{name}” is not a known wood; choose one of {kinds}.")


def usual_moisture(name: str) -> float:
    """Moisture [% of the whole mass] of wood called dry, seasoned, half dry or green."""
    rows: list[dict[str, Any]] = table("firewood.toml")["moisture"]
    found = by_name(rows, name.strip().casefold(), "word for how dry wood is", lambda row: str(row["name"]))
    return float(found["percent"][1])


def load_burn(load: Load, air_open: float) -> LoadBurn:
    """How long a load burns to coals with the air open from 0 (shut) to 1 (wide), and the heat it gives meanwhile.

    Raises
    ------
    InputProblem
        If the load or the air is out of range.
    """
    if not 0.0 <= air_open <= 1.0:
        raise InputProblem(f"The air cannot be {air_open:g} open; write 0 (shut) to 1 (wide open).")
    if not 0.05 <= load.mass <= 60.0 or not 0.01 <= load.thickness <= 0.25 or not 0.0 <= load.moisture <= 60.0:
        raise InputProblem(
            "That isn't a load a stove takes; write 0.05 to 60 kg of splits 1 to 25 cm thick, 0 to 60 % of it water."
        )
    stove = table("firewood.toml")["stove"]
    middle = float(burn_time(load.thickness, air_open, load.wood.charring_rate, load.moisture, stove["air_shut_share"]))
    value = float(heating_value_net(load.wood.heating_value, load.moisture))
    worst, usual, best = stove["efficiency"]

    flames = float(flame_share(value, load.wood.char_share, load.moisture))

    def watts(seconds: float, efficiency: float) -> float:
        return flames * float(heat_output(load.mass / seconds, value, efficiency))

    return LoadBurn(
        to_coals_min=Quantiles(p10=middle / BURN_FACTOR / 60, p50=middle / 60, p90=middle * BURN_FACTOR / 60),
        heat=Heat(
            watts=Quantiles(
                p10=watts(middle * BURN_FACTOR, worst), p50=watts(middle, usual), p90=watts(middle / BURN_FACTOR, best)
            )
        ),
    )


def burning_rate(stove: Stove, sessions: Iterable[Session]) -> BurningRate:
    """How fast the next fire takes wood: the usual rate, updated by each logged fire that shows one."""
    shown = [rate for fire in fires(stove, sessions) if (rate := rate_of(fire)) is not None]
    median, log_sd = next_one(USUAL_RATE, log(RATE_FACTOR), shown, RATE_LOG_SD)
    return BurningRate(median=median, log_sd=log_sd, fires=len(shown))


def rate_of(fire: Fire) -> float | None:
    """Mean rate [kg/h] at which one fire took its wood until its last load; None where the log does not say.

    The last load is left out: it burns on after the log.
    """
    rows = [row for row in fire.rows if row.kind is Kind.WOOD]
    masses = [mass for row in rows if (mass := kilograms_of(row)) is not None and mass > 0]
    if len(rows) < 2 or len(masses) < len(rows):
        return None
    minutes = minutes_between(fire.began, rows[-1].at)
    return sum(masses[:-1]) / (minutes / 60.0) if minutes >= LEAST_FIRE_MIN else None


def wood_for(minutes: float, rate: BurningRate) -> Quantiles:
    """Wood [kg] for so many minutes of fire: warming up and the whole bake."""
    return Quantiles.lognormal(rate.median, rate.log_sd).times(max(minutes, 0.0) / 60.0)


def heat_at(rate: BurningRate, wood: Wood, moisture: float) -> Heat:
    """Heat that the stove gives while it takes wood of so much moisture [% of the whole mass] at a rate."""
    value = float(heating_value_net(wood.heating_value, moisture))
    worst, usual, best = table("firewood.toml")["stove"]["efficiency"]
    spread = exp(NORMAL_P90 * rate.log_sd)
    per_second = rate.median / 3600.0
    return Heat(
        watts=Quantiles(
            p10=float(heat_output(per_second / spread, value, worst)),
            p50=float(heat_output(per_second, value, usual)),
            p90=float(heat_output(per_second * spread, value, best)),
        )
    )


def kilograms_of(row: Entry) -> float | None:
    """Mass [kg] of a wood row: as weighed, or by the number of splits in its note; None where it gives neither."""
    try:
        mass = stated_mass(row)
    except InputProblem:
        return None
    if mass is not None:
        return mass
    count = wood_count(row)
    return None if count is None else count * USUAL_SPLIT
