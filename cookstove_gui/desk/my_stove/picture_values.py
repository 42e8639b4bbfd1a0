"""The numbers behind the pictures of My stove, as tables for a spreadsheet, separated by tabs."""

from collections.abc import Iterable, Sequence

from cookstove_gui.desk.my_stove.abilities import Rise
from cookstove_gui.desk.my_stove.checks import CheckPicture
from cookstove_gui.desk.my_stove.first_fires import FirstFiresPicture
from cookstove_gui.desk.my_stove.hot_side import HotSide
from cookstove_gui.units import degrees, degrees_difference


def rises_values(rises: Iterable[Rise], unit: str) -> str:
    """Every reading of every rise."""
    return _table(
        ("day", "minutes since lit", f"oven °{unit}"),
        ((rise.day.isoformat(), f"{minute:.1f}", _heat(heat, unit)) for rise in rises for minute, heat in rise.curve),
    )


def hot_side_values(found: HotSide, unit: str) -> str:
    """How each spot runs, with the ends of its interval; a spot that was never read is blank."""
    rows = (
        (one.spot, *(_difference(value, unit) for value in (one.mean, one.p10, one.p90)), str(one.readings))
        if one.readings
        else (one.spot, "", "", "", "0")
        for one in (*found.pattern, *found.oven)
    )
    return _table(("spot", f"hotter by °{unit}", f"p10 °{unit}", f"p90 °{unit}", "readings"), rows)


def checks_values(found: CheckPicture, unit: str) -> str:
    """Each check of one thermometer, oldest first."""
    return _table(
        ("day", f"right °{unit}", f"shown too high °{unit}"),
        (
            (ring.on.isoformat(), _heat(ring.heat, unit), _difference(ring.error, unit))
            for ring in sorted(found.rings, key=lambda ring: ring.on)
        ),
    )


def hills_values(found: FirstFiresPicture, unit: str) -> str:
    """The hottest of each walk round the cooktop in each first fire."""
    return _table(
        ("first fire", "day", "minutes since lit", f"hottest of the top °{unit}"),
        (
            (found.stages[hill.place].title, hill.day.isoformat(), f"{minute:.1f}", _heat(heat, unit))
            for hill in found.hills
            for minute, heat in hill.rings
        ),
    )


def rings_values(rings: Sequence[float], unit: str) -> str:
    """One spot's readings as differences, oldest first."""
    return _table(
        ("reading", f"hotter by °{unit}"),
        ((str(place), _difference(value, unit)) for place, value in enumerate(rings, start=1)),
    )


def cells_values(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """Rows that are shown as words already."""
    return _table(heads, rows)


def _table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    return "".join("\t".join(row) + "\n" for row in (heads, *rows))


def _heat(kelvins: float, unit: str) -> str:
    return f"{float(degrees(kelvins, unit)):.0f}"


def _difference(kelvins: float, unit: str) -> str:
    return f"{float(degrees_difference(kelvins, unit)):.1f}"
