"""Wood for the bake: how much it takes, the heat it gives, and how long a load lasts at the present air."""

from collections.abc import Callable
from dataclasses import dataclass

from cookstove_gui.cooking.fires.burn_times import BurnSummary, burn_times, summary
from cookstove_gui.cooking.fires.rise_and_hold import USUAL_RISE, rise_and_hold, rise_quantiles
from cookstove_gui.cooking.fires.wood_needs import (
    BurningRate,
    Heat,
    Load,
    LoadBurn,
    Wood,
    burning_rate,
    heat_at,
    load_burn,
    usual_moisture,
    wood_for,
    wood_of,
    woods,
)
from cookstove_gui.errors import InputProblem
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.resource_files import table
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import Entry, HeatBand, Kind, Session, fraction_open
from cookstove_gui.stove.stove import Stove

LONGEST_BAKE_MIN = 12 * 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class WoodChoice:
    """What is burnt, and how long heat is wanted."""

    wood: str
    moisture: str  # dry, seasoned, half dry, green
    split: float  # kg of one
    thickness: float  # m, the smaller side of a split
    at_heat_min: float  # how long the oven is to stay at the heat
    air: float | None = None  # fraction open while it burns; as the log says if left out


@dataclass(frozen=True, slots=True, kw_only=True)
class WoodPlan:
    """How much wood it takes, what it gives, and where each number comes from."""

    choice: WoodChoice
    warm_up_min: float  # until the oven is at the heat
    warm_up_from: str  # "outlook", "past" or "common practice"
    mass: Quantiles  # kg, for the warm-up and the stay
    splits: Quantiles
    heat: Heat
    air: float
    load: LoadBurn  # of two splits
    rate: BurningRate
    measured: BurnSummary


@dataclass(frozen=True, slots=True, kw_only=True)
class WoodInputs:
    """The bake, the wood, and the stove as it stands."""

    stove: Stove
    band: HeatBand
    standing: Standing | None  # of a live session; none when nothing burns
    entries: tuple[Entry, ...]
    choice: WoodChoice
    past: Callable[[str], tuple[Session, ...]]


def wood_options() -> tuple[tuple[str, str], ...]:
    """Keys and names of the classes of wood."""
    return tuple((wood.name, wood.name) for wood in woods())


def wood_examples(name: str) -> str:
    """Kinds that belong to a class, as a sentence."""
    examples = wood_of(name).examples
    return f"{examples[:1].upper()}{examples[1:]}, and the like."


def moisture_options() -> tuple[tuple[str, str], ...]:
    """Words for how dry wood is, with the usual share of water."""
    rows = table("firewood.toml")["moisture"]
    return tuple((str(row["name"]), f"{row['name']} ({row['percent'][1]} %)") for row in rows)


def air_now(entries: tuple[Entry, ...]) -> float:
    """How far the air is open by the log; the usual opening where it does not say."""
    from cookstove_gui.forecast.model.heat import USUAL_INLET  # not before the window is painted

    for row in reversed(entries):
        if row.kind is Kind.AIR:
            return fraction_open(row)
    return USUAL_INLET


def plan_wood(inputs: WoodInputs) -> WoodPlan:
    """How much wood the warm-up and the bake take."""
    choice, stove = inputs.choice, inputs.stove
    if not 0.0 <= choice.at_heat_min <= LONGEST_BAKE_MIN:
        raise InputProblem("That is longer than a day of baking; type how many minutes at heat, such as 60.")
    sessions = inputs.past(stove.name)
    wood: Wood = wood_of(choice.wood)
    moisture = usual_moisture(choice.moisture)
    warm_up, source = _warm_up(inputs, sessions)
    rate = burning_rate(stove, sessions)
    mass = wood_for(warm_up + choice.at_heat_min, rate)
    air = air_now(inputs.entries) if choice.air is None else choice.air
    load = Load(wood=wood, mass=2 * choice.split, thickness=choice.thickness, moisture=moisture)
    return WoodPlan(
        choice=choice,
        warm_up_min=warm_up,
        warm_up_from=source,
        mass=mass,
        splits=mass.times(1.0 / choice.split),
        heat=heat_at(rate, wood, moisture),
        air=air,
        load=load_burn(load, air),
        rate=rate,
        measured=summary(burn_times(stove, sessions)),
    )


def _warm_up(inputs: WoodInputs, sessions: tuple[Session, ...]) -> tuple[float, str]:
    """Minutes until the oven is at the heat, and what says so."""
    standing = inputs.standing
    if standing is not None:
        if standing.outlook.oven.p50 is not None and standing.outlook.oven.p50 >= inputs.band.low:
            return 0.0, "outlook"
        if standing.band == inputs.band and standing.outlook.band.enters_min.p50 is not None:
            return standing.outlook.band.enters_min.p50, "outlook"
    rise = rise_quantiles(rise_and_hold(inputs.stove, sessions, inputs.band)).p50
    return (USUAL_RISE.p50 or 0.0, "common practice") if rise is None else (rise, "past")
