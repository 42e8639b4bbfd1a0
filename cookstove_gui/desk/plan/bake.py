"""In the oven: when a bake will be done in this oven, as read and as projected."""

from dataclasses import dataclass, replace
from datetime import datetime

from cookstove_gui.cooking.baking.catalogue import LARGEST, SMALLEST, Bake, bake_of, bakes, mass_of, scaled
from cookstove_gui.cooking.baking.in_oven import JUST_IN, InOven
from cookstove_gui.cooking.baking.probing import Probe
from cookstove_gui.cooking.baking.under_way import UnderWay, under_way
from cookstove_gui.errors import InputProblem
from cookstove_gui.situation import Standing
from cookstove_gui.stove.entries import Session
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import KILOGRAMS_PER_POUND


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeChoice:
    """What goes in, how heavy one is, when, and how warm."""

    key: str
    mass: float | None = None  # kg of one; the usual one if left out
    start: float | None = None  # K
    went_in: datetime | None = None  # or will go in; now if left out
    core: float | None = None  # K, what a probe shows now


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeInputs:
    """What goes in, and the stove as it stands."""

    standing: Standing
    stove: Stove
    pressure: float  # Pa, of the air at the stove
    choice: BakeChoice
    baked: tuple[Session, ...] = ()  # earlier sessions in which it was baked
    number: int = 0  # of the row by which it is in the oven already; the standing then has the answer


def bake_name(key: str) -> str:
    """What one is called in the log."""
    return bake_of(key).name


def kind_options() -> tuple[tuple[str, str], ...]:
    """The kinds of what can be baked: the key of the first form of each, and the kind's name."""
    firsts: dict[str, str] = {}
    for bake in bakes():
        firsts.setdefault(bake.kind, bake.key)
    return tuple((key, kind) for kind, key in firsts.items())


def cuts_of(key: str) -> tuple[tuple[str, str], ...]:
    """Key and word of every form of the same kind; none where there is only one, or for a key of no bake."""
    kinds = {bake.key: bake.kind for bake in bakes()}
    alike = [bake for bake in bakes() if bake.kind == kinds.get(key)]
    return tuple((bake.key, bake.cut) for bake in alike) if len(alike) > 1 else ()


def usual_mass(key: str) -> float:
    """Mass [kg] of one of the usual size."""
    return mass_of(bake_of(key))


def usual_start(key: str) -> float:
    """Temperature [K] at which it usually goes in."""
    return bake_of(key).start


def sized(choice: BakeChoice) -> Bake:
    """The bake as chosen; raises InputProblem for an implausible weight."""
    bake = bake_of(choice.key)
    if choice.mass is not None:
        usual = mass_of(bake)
        if not SMALLEST <= choice.mass / usual <= LARGEST:
            least, most = SMALLEST * usual, LARGEST * usual
            raise InputProblem(
                f"{choice.mass:.3g} kg ({choice.mass / KILOGRAMS_PER_POUND:.3g} lb) is not a plausible weight for one "
                f"{bake.name}; type {least:.2g} to {most:.2g} kg "
                f"({least / KILOGRAMS_PER_POUND:.2g} to {most / KILOGRAMS_PER_POUND:.2g} lb)."
            )
        bake = scaled(bake, choice.mass / usual)
    return bake if choice.start is None else replace(bake, start=choice.start)


def plan_bake(inputs: BakeInputs) -> UnderWay:
    """When it will be done."""
    choice, standing = inputs.choice, inputs.standing
    logged = next((one for one in standing.bakes if one.inside.number == inputs.number), None)
    if logged is not None:
        return logged
    bake = sized(choice)
    went_in = choice.went_in or standing.now
    probes: tuple[Probe, ...] = ()
    if choice.core is not None:
        if standing.now - went_in < JUST_IN:
            raise InputProblem(
                f"The {bake.name} must be in the oven before a probe tells anything; type when it went in."
            )
        probes = (Probe(at=standing.now, core=choice.core),)
    inside = InOven(number=0, name=bake.name, bake=bake, went_in=went_in, probes=probes)
    return under_way(inside, standing.projection, standing.trace, inputs.stove, inputs.pressure, inputs.baked)
