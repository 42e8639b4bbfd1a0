"""The first fires of a new stove in words: which comes next, why one does not count, what applies to all of them."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from cookstove_gui.cooking.fires.first_fires import FirstFires, Lack, Shortfall, Stage, Try, stages
from cookstove_gui.cooking.fires.logged_fires import Fire
from cookstove_gui.forecast.answers import Quantiles
from cookstove_gui.phrases.edge import Edge, duration, full_date, local_day, measured_time, span
from cookstove_gui.resource_files import table
from cookstove_gui.stove.stove import Stove
from cookstove_gui.units import degrees


def next_fire_words(fires: FirstFires) -> str:
    """The one thing to do now, in a sentence; empty when done or waived."""
    following = fires.next
    if following is None:
        return ""
    place = fires.stages.index(following) + 1
    return f"First fire {place} of {len(fires.stages)}: {following.stage.line}. No food yet. The manual goes first."


def shortfall_words(found: Shortfall) -> str:
    """Why a fire does not count as its stage."""
    match found.lack:
        case Lack.TOO_SHORT:
            shown = measured_time(max(int(found.shown), 1))  # whole minutes: one too few is not said as enough
            return f"The log shows {shown} of fire; it takes about {measured_time(found.wanted)}."
        case Lack.NOT_READ:
            return "The cooktop was not read; read it at least once while it is hottest."
        case Lack.TOO_COOL:
            return f"The cooktop was read at {_heat(found.shown)} at most; it takes {_heat(found.wanted)}."
        case Lack.TOO_HOT:
            return (
                f"The cooktop went to {_heat(found.shown)}, hotter than this stage should be ({_heat(found.wanted)}); "
                "look in the manual whether to go on."
            )
        case Lack.TOO_LITTLE_WOOD:
            loads = {0.0: "no load", 1.0: "1 load"}.get(found.shown, f"{found.shown:.0f} loads")
            return f"The log shows {loads} of wood; it takes {found.wanted:.0f}."
        case Lack.AIR_NOT_SHUT:
            return "The air was not noted wide open and then mostly shut."


@dataclass(frozen=True, slots=True, kw_only=True)
class CertificateLine:
    """One stage on the certificate; day and heat are empty while it is still to come."""

    stage: str
    day: str
    hottest: str
    took: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Certificate:
    """What the log shows of the first fires, to be signed."""

    title: str
    lines: tuple[CertificateLine, ...]
    is_full: bool
    signed: str = ""  # by whom; empty leaves a line to sign on
    foot: str
    decides: str


def certificate(stove: Stove, tried: Iterable[Try], unit: str, signed: str = "") -> Certificate:
    """The certificate as far as the log fills it: for each stage the fire that counted."""
    counted = {one.place: one.fire for one in tried if not one.missing}
    lines = tuple(_certificate_line(stage, counted.get(place), unit) for place, stage in enumerate(stages()))
    is_full = len(counted) == len(lines)
    return Certificate(
        title=f"First fires of {stove.name}",
        lines=lines,
        is_full=is_full,
        signed=signed,
        foot=_foot(signed, is_full=is_full),
        decides=str(table("first_fires.toml")["decides"]),
    )


def _foot(signed: str, *, is_full: bool) -> str:
    if signed:
        return f"complete by the log, signed by {signed}" if is_full else f"printed at the end, signed by {signed}"
    return "complete by the log; print it and sign it" if is_full else "printed at the end; you sign it"


def _certificate_line(stage: Stage, fire: Fire | None, unit: str) -> CertificateLine:
    if fire is None or fire.hottest is None:
        return CertificateLine(stage=stage.title, day="", hottest="", took="")
    return CertificateLine(
        stage=stage.title,
        day=full_date(local_day(fire.began, fire.rows[0].offset_minutes)),
        hottest=f"{degrees(fire.hottest, unit):.0f} °{unit}",
        took=duration(fire.minutes),
    )


def hill_words(
    minutes: float,
    loads: int,
    hottest: float | None,
    counted: float | None,
    missing: Sequence[Shortfall],
    unit: str,
) -> str:
    """A fire in a line: how long, what was put on, how hot, what of that counts; what kept it from counting."""
    wood = {0: "kindling only", 1: "one load", 2: "two loads"}.get(loads, f"{loads} loads")
    heat = f", hottest {degrees(hottest, unit):.0f} °{unit}" if hottest is not None else ""
    if hottest is not None and counted is not None and counted < hottest:
        heat += f" ({degrees(counted, unit):.0f} counts: one may be a slip)"
    line = f"{duration(minutes)}, {wood}{heat}."
    return " ".join((line, *(shortfall_words(one) for one in missing)))


def cold_words(cold: Quantiles, edge: Edge) -> str:
    """When the stove has likely gone cold."""
    if cold.p50 is None:
        return "Let it burn down; it is not likely cold within three hours."
    if cold.p50 < 1.0:
        return "It is likely cold now; read the cooktop."
    return f"Let it burn down. Likely cold by {edge.clock(cold.p50)}; {span(cold, edge)}."


def always_words() -> str:
    """What applies to all of them, and who decides."""
    words = table("first_fires.toml")
    return f"{words['always']} {words['decides']}"


def _heat(temperature: float) -> str:
    return f"{degrees(temperature, 'F'):.0f} °F ({degrees(temperature, 'C'):.0f} °C)"
